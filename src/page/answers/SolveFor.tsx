import { createMemo, createSignal, For, Show } from 'solid-js';
import type { Edge, FoundValue, UnknownAnswer } from '../../../shared/answers.ts';
import { entryFor } from '../../engine/catalogue/index.ts';
import { findUnit, fromSI, toSI } from '../../engine/quantity/units.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { Plot } from '../later.tsx';
import { StateWord } from '../parts/StateWord.tsx';
import { fieldAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { createTarget, type TypedTarget } from './createTarget.ts';
import { type ChoiceGroup, targetGroups, unknownGroups } from './fieldChoices.ts';
import { Asking, Picker, solvedDesign, TakenNote, TypedValue } from './parts.tsx';
import { unknownPlot } from './plots.ts';
import { type Taken, takeEdits } from './taken.ts';

/** One given value as the unknown, one result or two as the target. */
export function SolveFor(props: { edge: Edge }) {
  const sheet = useSheet();
  const answer = createAnswer('unknown');
  const [path, setPath] = createSignal('sink.length');
  const first = createTarget('keyDown.safeDuty', '50 %');
  const second = createTarget('ssb.safeDuty', '100 %');
  const [withSecond, setWithSecond] = createSignal(false);
  const [taken, setTaken] = createSignal<Taken | null>(null);
  const [asked, setAsked] = createSignal({ path: 'sink.length', quantity: 'keyDown.safeDuty', value: 0.5 });
  const unknowns = createMemo(() => unknownGroups(solvedDesign(sheet)));
  const groups = createMemo(() => targetGroups(sheet.results.solution()?.values ?? {}, sheet.nameOf));
  const targets = () => {
    const all = withSecond() ? [first.target(), second.target()] : [first.target()];
    return all.flatMap((target) => target ?? []).length === all.length
      ? all.flatMap((one) => one ?? [])
      : null;
  };

  function ask(): void {
    const wanted = targets();
    if (wanted === null) return;
    setAsked({ path: path(), ...wanted[0]! });
    answer.ask({ path: path(), targets: wanted, edge: props.edge });
  }

  function take(found: FoundValue, answered: UnknownAnswer): void {
    setTaken(takeEdits(sheet.store, `${answered.label}, ${found.words}`, [found.edit]));
  }

  const reason = () => {
    const result = answer.result();
    return result && !result.ok ? result.reason.sentence : null;
  };
  const found = () => {
    const result = answer.result();
    return result?.ok ? result.value : null;
  };

  return (
    <section class="answer" aria-labelledby="unknown-title">
      <h3 class="answer-title" id="unknown-title">
        Any value as the unknown
      </h3>
      <Picker id="unknown-path" label="The unknown" value={path()} groups={unknowns()} onPick={setPath} />
      <TargetLines
        id="unknown"
        so="so that"
        becomes="becomes"
        groups={groups()}
        typed={first}
        onEnter={ask}
      />
      <Show when={withSecond()}>
        <TargetLines
          id="unknown-second"
          so="and also"
          becomes="keeps"
          groups={groups()}
          typed={second}
          onEnter={ask}
        />
      </Show>
      <p class="ask-more">
        <button type="button" class="plain-button" onClick={() => setWithSecond((now) => !now)}>
          {withSecond() ? 'without the second' : 'and also …'}
        </button>
      </p>
      <Asking words="Find the value" answer={answer} disabled={targets() === null} onAsk={ask}>
        <TakenNote taken={taken()} />
        <div role="status" classList={{ older: answer.older() }}>
          <Show when={reason()}>{(sentence) => <p class="answer-sentence">{sentence()}</p>}</Show>
          <Show when={found()}>
            {(answered) => (
              <>
                <p class="answer-sentence">{answered().sentence}</p>
                <ol class="remedies">
                  <For each={answered().found}>
                    {(one) => <FoundRow found={one} onTake={() => take(one, answered())} />}
                  </For>
                </ol>
                <p class="aside">{answered().figures.join(' ')}</p>
              </>
            )}
          </Show>
        </div>
        <Show when={found()}>{(answered) => <Curve answer={answered()} asked={asked()} />}</Show>
      </Asking>
    </section>
  );
}

/** A result to choose and what it should become. */
function TargetLines(props: {
  id: string;
  so: string;
  becomes: string;
  groups: readonly ChoiceGroup[];
  typed: TypedTarget;
  onEnter: () => void;
}) {
  return (
    <>
      <Picker
        id={`${props.id}-quantity`}
        label={props.so}
        value={props.typed.quantity()}
        groups={props.groups}
        onPick={props.typed.pick}
      />
      <TypedValue
        id={`${props.id}-target`}
        label={props.becomes}
        text={props.typed.text()}
        wrong={props.typed.wrong()}
        echo={props.typed.echo()}
        onType={props.typed.type}
        onEnter={props.onEnter}
      />
    </>
  );
}

function FoundRow(props: { found: FoundValue; onTake: () => void }) {
  return (
    <li class="remedy">
      <div class="remedy-what">
        <p class="remedy-title">
          {props.found.words}{' '}
          <span class="remedy-gain">
            gives {[props.found.reachedWords, ...props.found.others.map(({ words }) => words)].join(', ')}
          </span>
        </p>
        <ul class="remedy-effects">
          <For each={props.found.verdicts}>
            {(verdict) => (
              <li>
                <span class="effect-name">{verdict.name}</span> <StateWord state={verdict.state} />
              </li>
            )}
          </For>
        </ul>
      </div>
      <button
        type="button"
        class="ask-button"
        aria-label={`put it in: ${props.found.words}`}
        onClick={() => props.onTake()}
      >
        put it in
      </button>
    </li>
  );
}

function Curve(props: {
  answer: UnknownAnswer;
  asked: { readonly path: string; readonly quantity: string; readonly value: number };
}) {
  const sheet = useSheet();
  const told = createMemo(() => {
    const spec = fieldAt(props.asked.path);
    const entry = entryFor(props.asked.quantity);
    if (spec?.kind !== 'number' || !entry) return undefined;
    const unit = sheet.preferences.unitOf(props.asked.path, spec as NumberField);
    const shown = findUnit(spec.dimension, unit);
    return unknownPlot(props.answer, props.asked.value, entry, {
      label: `${spec.label}${shown.symbol ? `, ${shown.symbol}` : ''}`,
      toShown: (value) => fromSI(value, shown),
      fromShown: (value) => toSI(value, shown),
      write: (value) => writeQuantity(value, spec.dimension, unit),
    });
  });
  return (
    <Show when={told()}>
      {(plot) => (
        <Plot
          title={plot().title}
          finding={plot().finding}
          cursorLabel={`${props.answer.label} to read the curve at`}
          data={plot().data}
          start={plot().start}
        />
      )}
    </Show>
  );
}
