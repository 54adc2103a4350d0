import { createSignal, For, Show } from 'solid-js';
import type { DoubtRanking, Sensitivity, SensitivityRow } from '../../../shared/answers.ts';
import type { Dimension } from '../../../shared/design/fields.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { joinUnit, minus, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { fieldId } from '../parts/fieldId.ts';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { Asking, Picker } from './parts.tsx';

/** Bars shown; what matters less is not worth measuring. */
const mostBars = 12;
/** Half of the picture of one bar. */
const halfWidth = 50;

type By = 'change' | 'doubt';

const ways = [
  {
    label: 'Ranked by',
    choices: [
      { value: 'change', label: 'what a change does: what to improve' },
      { value: 'doubt', label: 'what is not known: what to measure' },
    ],
  },
] as const;

/** What a small change of each given value does to one result, or what its doubt does, ranked. */
export function Matters() {
  const sheet = useSheet();
  const changes = createAnswer('matters');
  const doubts = createAnswer('doubts');
  const [quantity, setQuantity] = createSignal('keyDown.junctionPeak');
  const [by, setBy] = createSignal<By>('change');
  const answer = () => (by() === 'change' ? changes : doubts);
  const found = <Result,>(result: Outcome<Result> | undefined) => (result?.ok ? result.value : null);
  const reason = () => {
    const result = answer().result();
    return result && !result.ok ? result.reason.sentence : null;
  };
  const groups = () => [
    {
      label: 'Results',
      choices: [
        ...(['ssb', 'cw', 'keyDown'] as const).map((service) => ({
          value: `${service}.junctionPeak`,
          label: `Junction in ${sheet.nameOf(service)}`,
        })),
        { value: 'inputVoltagePep', label: 'Voltage at the load, 12 V side' },
        { value: 'inputCurrentPep', label: 'Current from the source at PEP' },
        { value: 'touchTemperature', label: 'Metal a hand can touch' },
        { value: 'exposureDistance', label: 'Distance of people from the antenna' },
      ],
    },
  ];
  return (
    <section class="answer" aria-labelledby="answers-matters-title">
      <h3 class="answer-title" id="answers-matters-title">
        What matters most
      </h3>
      <Picker id="matters-quantity" label="For" value={quantity()} groups={groups()} onPick={setQuantity} />
      <Picker
        id="matters-by"
        label="Ranked by"
        value={by()}
        groups={ways}
        onPick={(way) => setBy(way as By)}
      />
      <Asking
        words="Show what matters"
        answer={answer()}
        onAsk={() => answer().ask({ quantity: quantity() })}
      >
        <Show when={reason()}>{(sentence) => <p class="answer-sentence">{sentence()}</p>}</Show>
        <Show when={by() === 'change' && found(changes.result())}>
          {(sensitivity) => (
            <div classList={{ older: changes.older() }}>
              <Bars sensitivity={sensitivity()} />
            </div>
          )}
        </Show>
        <Show when={by() === 'doubt' && found(doubts.result())}>
          {(ranking) => (
            <div classList={{ older: doubts.older() }}>
              <Doubts ranking={ranking()} />
            </div>
          )}
        </Show>
      </Asking>
    </section>
  );
}

/** Doubts by their share of the spread, with what would settle them. */
function Doubts(props: { ranking: DoubtRanking }) {
  const { measure } = props.ranking;
  const write = (value: number) => writeQuantity(value, measure.dimension);
  const moves = (effect: number) => writeChange(Math.abs(effect), measure.dimension).replace('+', '±');
  return (
    <>
      <p class="matters-words">
        {props.ranking.measure.label}: {write(props.ranking.value)}, in nine of ten cases{' '}
        {write(props.ranking.low)} to {write(props.ranking.high)}.
      </p>
      <section class="table-scroll matters" tabindex="0" aria-label="What is not known, ranked">
        <table class="doubts">
          <thead>
            <tr>
              <th scope="col">Not exactly known</th>
              <th scope="col" colspan="2">
                share of the spread
              </th>
              <th scope="col">moves it by</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.ranking.rows}>
              {(row) => (
                <tr>
                  <th scope="row">
                    <Show when={row.path} fallback={row.label}>
                      {(path) => <a href={`#${fieldId(path())}`}>{row.label}</a>}
                    </Show>
                    <span class="doubt-advice">{row.advice}</span>
                  </th>
                  <td>{writeQuantity(row.share, 'share', '%', 2)}</td>
                  <td class="matters-bar">
                    <svg
                      class="matters-svg"
                      viewBox="0 0 100 12"
                      preserveAspectRatio="none"
                      aria-hidden="true"
                    >
                      <rect class="matters-raised" y="2" height="8" width={Math.max(1, row.share * 100)} />
                    </svg>
                  </td>
                  <td>{moves(row.effect)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </>
  );
}

/** A change of a quantity with its sign; temperatures change in kelvins. */
function writeChange(value: number | null, dimension: Dimension): string {
  if (value === null) return '–';
  const sign = value < 0 ? minus : '+';
  const size = Math.abs(value);
  if (dimension === 'temperature') return `${sign}${joinUnit(writeNumber(size, 2, true), 'K')}`;
  return `${sign}${writeQuantity(size, dimension, undefined, 2)}`;
}

function Bars(props: { sensitivity: Sensitivity }) {
  const rows = () => props.sensitivity.rows.slice(0, mostBars);
  const greatest = () => rows()[0]?.size ?? 1;
  return (
    <>
      <p class="matters-words">
        {props.sensitivity.measure.label}: change when a value is lowered (hatched) and raised (solid).
      </p>
      <section class="table-scroll matters" tabindex="0" aria-label="What matters most, ranked">
        <table>
          <thead>
            <tr>
              <th scope="col">Value</th>
              <th scope="col">changed by</th>
              <th scope="col">lowered</th>
              <td class="matters-bar" />
              <th scope="col">raised</th>
            </tr>
          </thead>
          <tbody>
            <For each={rows()}>
              {(row) => (
                <tr>
                  <th scope="row">
                    <a href={`#${fieldId(row.path)}`}>{row.label}</a>
                  </th>
                  <td>{row.step}</td>
                  <td>{writeChange(row.lowered, props.sensitivity.measure.dimension)}</td>
                  <td class="matters-bar">
                    <Bar row={row} greatest={greatest()} />
                  </td>
                  <td>{writeChange(row.raised, props.sensitivity.measure.dimension)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </>
  );
}

/** Both ways from the middle: to the right is more of the quantity. */
function Bar(props: { row: SensitivityRow; greatest: number }) {
  const length = (value: number | null) => ((value ?? 0) / props.greatest) * (halfWidth - 1);
  const rect = (value: number | null) => {
    const long = length(value);
    return { x: halfWidth + Math.min(0, long), width: Math.abs(long) };
  };
  return (
    <svg class="matters-svg" viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <rect class="matters-raised" y="1" height="5" {...rect(props.row.raised)} />
      <rect class="matters-lowered" y="6" height="5" {...rect(props.row.lowered)} />
      <path class="matters-zero" d={`M${halfWidth} 0V12`} />
    </svg>
  );
}
