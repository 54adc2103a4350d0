import { createMemo, createSignal, Show } from 'solid-js';
import type { Edge } from '../../../shared/answers.ts';
import { Plot } from '../later.tsx';
import { fieldAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { axisGroups } from './fieldChoices.ts';
import { Asking, Picker } from './parts.tsx';
import { mapPlot } from './plots.ts';

/** Columns and rows of the map. */
const columns = 60;
const rows = 40;

/** Two given values against each other, with the limit line of each service. */
export function LimitMap(props: { edge: Edge }) {
  const sheet = useSheet();
  const answer = createAnswer('map');
  const [x, setX] = createSignal('surroundings.ambient');
  const [y, setY] = createSignal('amplifier.pep');
  const groups = createMemo(() => axisGroups(sheet.store.design()));
  const unitOf = (path: string) => sheet.preferences.unitOf(path, fieldAt(path) as NumberField);
  const drawn = createMemo(() => {
    const result = answer.result();
    return result?.ok ? { ...mapPlot(sheet.store.design(), result.value, unitOf), map: result.value } : null;
  });
  const reason = () => {
    const result = answer.result();
    return result && !result.ok ? result.reason.sentence : null;
  };
  return (
    <section class="answer" aria-labelledby="map-title">
      <h3 class="answer-title" id="map-title">
        Two values against each other
      </h3>
      <Picker id="map-y" label="Upwards" value={y()} groups={groups()} onPick={setY} />
      <Picker id="map-x" label="To the right" value={x()} groups={groups()} onPick={setX} />
      <Asking
        words="Draw the map"
        answer={answer}
        onAsk={() => answer.ask({ x: { path: x() }, y: { path: y() }, columns, rows, edge: props.edge })}
      >
        <Show when={reason()}>{(sentence) => <p class="answer-sentence">{sentence()}</p>}</Show>
        <Show when={drawn()}>
          {(plot) => (
            <div classList={{ older: answer.older() }}>
              <Plot
                title={plot().title}
                finding={plot().finding}
                cursorLabel={`${plot().map.x.label} to read the limits at`}
                data={plot().data}
                start={plot().start}
              />
              <p class="aside">{plot().map.sentence}</p>
            </div>
          )}
        </Show>
      </Asking>
    </section>
  );
}
