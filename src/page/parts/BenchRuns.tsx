import { createSignal, createUniqueId, For, Index, onCleanup, Show } from 'solid-js';
import { benchKinds, mostReadings, mostRuns } from '../../../shared/design/benchSchema.ts';
import { loggedSink } from '../../../shared/design/loggedSink.ts';
import type { BenchRunInput, Design, LoggedSink } from '../../../shared/design/schema.ts';
import { readLog, writeLog } from '../../engine/quantity/readLog.ts';
import { useSheet } from '../state/sheet.ts';
import { Fields } from './Fields.tsx';
import { fieldId } from './fieldId.ts';
import { LoggedOn, loggedOnPresent } from './LoggedOn.tsx';
import { More } from './Station.tsx';

/** Faults listed; a pasted file of another kind has hundreds. */
const mostFaults = 6;
/** Typing that rests this long is finished enough to speak of what is wrong, ms. */
const restBeforeFaults = 600;

/** What only a meter knows stays empty: a figure that stands there already is soon taken for the one measured. */
function newRun(kind: BenchRunInput['kind'], sink: LoggedSink): BenchRunInput {
  return {
    kind,
    power: null,
    powerDoubt: 0.02,
    air: null,
    sensorDoubt: 1,
    sensorPlace: 'beside',
    resistorWidth: 0.015,
    resistorLength: 0.02,
    sink,
    readings: [],
  };
}

const kindNames: Readonly<Record<BenchRunInput['kind'], string>> = {
  warmUp: 'a warm-up',
  coolDown: 'a cool-down',
  steady: 'steady readings',
};

/** All runs of the design, each with its log as a text; runs are added and taken away. */
export function BenchRuns() {
  const { store } = useSheet();
  const runs = () => store.view.bench;
  const setRuns = (next: readonly BenchRunInput[]) =>
    store.change((design) => ({ ...design, bench: [...next] }), 'bench.');
  return (
    <>
      <Index each={runs()}>
        {(_run, index) => (
          <fieldset class="bench-run">
            <legend>Run {index + 1}</legend>
            <Fields
              paths={['kind', 'power', 'air', 'sensorPlace'].map((field) => `bench.${index}.${field}`)}
            />
            <Log index={index} />
            <LoggedOn index={index} />
            <More label="Doubt of the instruments, foot of the resistor" paths={moreOf(index)}>
              <Fields paths={moreOf(index)} />
            </More>
            <button
              type="button"
              class="plain-button"
              onClick={() => setRuns(runs().filter((_each, at) => at !== index))}
            >
              take run {index + 1} away
            </button>
          </fieldset>
        )}
      </Index>
      <Show
        when={runs().length < mostRuns}
        fallback={<p class="help">More than {mostRuns} runs say nothing new.</p>}
      >
        <p class="bench-add">
          Add{' '}
          <For each={Object.keys(benchKinds) as BenchRunInput['kind'][]}>
            {(kind) => (
              <button
                type="button"
                class="plain-button"
                onClick={() => setRuns([...runs(), newRun(kind, loggedSink(store.design().sink))])}
              >
                {kindNames[kind]}
              </button>
            )}
          </For>
        </p>
      </Show>
    </>
  );
}

function moreOf(index: number): readonly string[] {
  return ['powerDoubt', 'sensorDoubt', 'resistorWidth', 'resistorLength'].map(
    (field) => `bench.${index}.${field}`,
  );
}

/** The sink of a run is the one at its first reading: until then it follows what is entered. */
function withReadings(given: Design, index: number, readings: BenchRunInput['readings']): Design {
  const design = given.bench[index]?.readings.length === 0 ? loggedOnPresent(given, index) : given;
  return {
    ...design,
    bench: design.bench.map((run, at) => (at === index ? { ...run, readings } : run)),
  };
}

/** The log of a run: typed or pasted rows, each fault named with its line; the text stays as typed. */
function Log(props: { index: number }) {
  const { store } = useSheet();
  const path = () => `bench.${props.index}.readings`;
  const notes = createUniqueId();
  const [rested, setRested] = createSignal(true);
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  const readings = () => store.view.bench[props.index]?.readings ?? [];
  const text = () => store.typed(path())?.text ?? writeLog(readings());
  const log = () => readLog(text(), mostReadings);
  const faults = () => (rested() ? log().faults : []);
  /** How many readings stand, which are not those of a text that cannot be read. */
  const counted = () => {
    const words = readings().length === 1 ? '1 reading' : `${readings().length} readings`;
    return log().faults.length === 0 ? words : `the last good log has ${words}`;
  };

  function type(typed: string): void {
    setRested(false);
    clearTimeout(timer);
    timer = setTimeout(() => setRested(true), restBeforeFaults);
    const read = readLog(typed, mostReadings);
    const said = { text: typed, unit: '' };
    if (read.faults.length > 0) {
      store.refuse(path(), { ...said, reason: `${read.faults.length} lines of the log cannot be read.` });
      return;
    }
    store.take(path(), (design) => withReadings(design, props.index, [...read.readings]), said);
  }

  return (
    <div class="field bench-log" classList={{ wrong: faults().length > 0 }}>
      <label class="field-label" for={fieldId(path())}>
        Readings, typed or pasted
      </label>
      <textarea
        id={fieldId(path())}
        class="log-input"
        rows={8}
        spellcheck={false}
        autocomplete="off"
        placeholder={'time [min]; plate [°C]; room [°C]\n0; 22.5; 21.5\n1; 24.1; 21.6'}
        value={text()}
        aria-invalid={faults().length > 0}
        aria-describedby={`${notes}-remark ${notes}-faults`}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={() => {
          setRested(true);
          store.commit();
        }}
      />
      <p id={`${notes}-remark`} class="field-echo">
        {counted()}
        {log().remark === '' ? '' : `; ${log().remark}`}
      </p>
      <ul id={`${notes}-faults`} class="field-error log-faults">
        <For each={faults().slice(0, mostFaults)}>
          {(fault) => (
            <li>
              line {fault.line}: {fault.message}
            </li>
          )}
        </For>
        <Show when={faults().length > mostFaults}>
          <li>and {faults().length - mostFaults} more</li>
        </Show>
        <Show when={faults().length > 0}>
          <li>The last good readings stay in use until every line can be read.</li>
        </Show>
      </ul>
    </div>
  );
}
