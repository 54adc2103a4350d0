import { createMemo, createSignal, For, Show } from 'solid-js';
import type { Edge, FoundValue, UnknownAnswer } from '../../../shared/answers.ts';
import { entryFor } from '../../engine/catalogue/index.ts';
import { readQuantity } from '../../engine/quantity/read.ts';
import { findUnit, fromSI, metricUnits, toSI } from '../../engine/quantity/units.ts';
import { writeEcho, writeQuantity } from '../../engine/quantity/write.ts';
import { Plot } from '../later.tsx';
import { StateWord } from '../parts/StateWord.tsx';
import { fieldAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { targetGroups, unknownGroups } from './fieldChoices.ts';
import { Asking, Picker, Taken, takeEdits } from './parts.tsx';
import { unknownPlot } from './plots.ts';

/** One given value as the unknown, one result as the target. */
export function SolveFor(props: { edge: Edge }) {
  const sheet = useSheet();
  const answer = createAnswer('unknown');
  const [path, setPath] = createSignal('sink.length');
  const [quantity, setQuantity] = createSignal('keyDown.safeDuty');
  const [text, setText] = createSignal('50 %');
  const [taken, setTaken] = createSignal<string | null>(null);
  const [asked, setAsked] = createSignal({ path: 'sink.length', quantity: 'keyDown.safeDuty', value: 0.5 });
  const values = () => sheet.results.solution()?.values ?? {};
  const unknowns = createMemo(() => unknownGroups(sheet.store.design()));
  const targets = createMemo(() => targetGroups(values(), sheet.nameOf));
  const dimension = () => entryFor(quantity())?.dimension ?? 'number';
  const read = createMemo(() => readQuantity(text(), dimension(), metricUnits[dimension()]));

  function pickQuantity(key: string): void {
    setQuantity(key);
    const entry = entryFor(key);
    const now = values()[key];
    if (entry && now !== undefined)
      setText(writeEcho(Number(now.toPrecision(3)), entry.dimension, metricUnits[entry.dimension]));
  }

  function ask(): void {
    const target = read();
    if (!target.ok) return;
    setAsked({ path: path(), quantity: quantity(), value: target.value.value });
    answer.ask({
      path: path(),
      targets: [{ quantity: quantity(), value: target.value.value }],
      edge: props.edge,
    });
  }

  function take(found: FoundValue, answered: UnknownAnswer): void {
    takeEdits(sheet.store, [found.edit]);
    setTaken(`${answered.label}, ${found.words}`);
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
      <Picker
        id="unknown-quantity"
        label="so that"
        value={quantity()}
        groups={targets()}
        onPick={pickQuantity}
      />
      <Target text={text()} reading={read()} onType={setText} onEnter={ask} />
      <Asking words="Find the value" answer={answer} disabled={!read().ok} onAsk={ask}>
        <Taken words={taken()} onUndone={() => setTaken(null)} />
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
              </>
            )}
          </Show>
        </div>
        <Show when={found()}>{(answered) => <Curve answer={answered()} asked={asked()} />}</Show>
      </Asking>
    </section>
  );
}

function Target(props: {
  text: string;
  reading: ReturnType<typeof readQuantity>;
  onType: (text: string) => void;
  onEnter: () => void;
}) {
  const wrong = () => (props.reading.ok ? null : props.reading.reason.sentence);
  return (
    <div class="field ask-field" classList={{ wrong: wrong() !== null }}>
      <label class="field-label" for="unknown-target">
        becomes
      </label>
      <span />
      <span class="field-line">
        <input
          id="unknown-target"
          class="field-input"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={props.text}
          aria-invalid={wrong() !== null}
          aria-describedby="unknown-target-note"
          onInput={(event) => props.onType(event.currentTarget.value)}
          onKeyDown={(event) => event.key === 'Enter' && props.onEnter()}
        />
      </span>
      <p id="unknown-target-note" class={wrong() === null ? 'field-echo' : 'field-error'}>
        {props.reading.ok ? `= ${props.reading.value.echo}` : wrong()}
      </p>
    </div>
  );
}

function FoundRow(props: { found: FoundValue; onTake: () => void }) {
  return (
    <li class="remedy">
      <div class="remedy-what">
        <p class="remedy-title">
          {props.found.words} <span class="remedy-gain">gives {props.found.reachedWords}</span>
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
