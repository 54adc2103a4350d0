import { createMemo, For, Show } from 'solid-js';
import type { Edge } from '../../../shared/answers.ts';
import { Plot } from '../later.tsx';
import { fieldAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { createAxis, type TypedAxis } from './createAxis.ts';
import { axisGroups, type ChoiceGroup } from './fieldChoices.ts';
import { Asking, Picker, solvedDesign, TypedValue } from './parts.tsx';
import { mapPlot } from './plots.ts';

/** Columns and rows of the map. */
const columns = 60;
const rows = 40;

/** Two given values against each other, with the limit line of each service. */
export function LimitMap(props: { edge: Edge }) {
  const sheet = useSheet();
  const answer = createAnswer('map');
  const x = createAxis('surroundings.ambient');
  const y = createAxis('amplifier.pep');
  const groups = createMemo(() => axisGroups(solvedDesign(sheet)));
  const unitOf = (path: string) => sheet.preferences.unitOf(path, fieldAt(path) as NumberField);
  const drawn = createMemo(() => {
    const result = answer.result();
    return result?.ok ? { ...mapPlot(sheet.store.design(), result.value, unitOf), map: result.value } : null;
  });
  const reason = () => {
    const result = answer.result();
    return result && !result.ok ? result.reason.sentence : null;
  };
  function ask(): void {
    const [right, up] = [x.axis(), y.axis()];
    if (right && up) answer.ask({ x: right, y: up, columns, rows, edge: props.edge });
  }
  return (
    <section class="answer" aria-labelledby="map-title">
      <h3 class="answer-title" id="map-title">
        Two values against each other
      </h3>
      <div class="map-axes">
        <AxisLines id="map-y" label="Upwards" groups={groups()} typed={y} onEnter={ask} />
        <AxisLines id="map-x" label="To the right" groups={groups()} typed={x} onEnter={ask} />
      </div>
      <Asking
        words="Draw the map"
        answer={answer}
        disabled={x.axis() === null || y.axis() === null}
        onAsk={ask}
      >
        <Show when={reason()}>{(sentence) => <p class="answer-sentence">{sentence()}</p>}</Show>
        <Show when={drawn()}>
          {(plot) => (
            <div classList={{ older: answer.older() }}>
              <Show
                when={plot().data.series.length > 0}
                fallback={
                  <p class="answer-sentence">{plot().finding} No line lies in this range: choose another.</p>
                }
              >
                <Plot
                  title={plot().title}
                  finding={plot().finding}
                  cursorLabel={`${plot().map.x.label} to read the limits at`}
                  data={plot().data}
                  start={plot().start}
                />
              </Show>
              <p class="aside">{plot().map.sentence}</p>
            </div>
          )}
        </Show>
      </Asking>
    </section>
  );
}

/** A value to choose and the range of its axis. */
function AxisLines(props: {
  id: string;
  label: string;
  groups: readonly ChoiceGroup[];
  typed: TypedAxis;
  onEnter: () => void;
}) {
  return (
    <div>
      <Picker
        id={props.id}
        label={props.label}
        value={props.typed.path()}
        groups={props.groups}
        onPick={props.typed.pick}
      />
      <For each={['from', 'to'] as const}>
        {(end) => (
          <TypedValue
            id={`${props.id}-${end}`}
            label={end}
            text={props.typed[end].text()}
            wrong={props.typed[end].wrong()}
            echo={props.typed[end].echo()}
            onType={props.typed[end].type}
            onEnter={props.onEnter}
          />
        )}
      </For>
    </div>
  );
}
