import './bench.css';
import { createMemo, For, Index, Show } from 'solid-js';
import type { Band } from '../../../shared/band.ts';
import type { BenchReport, BenchRunReport } from '../../../shared/bench.ts';
import { joinUnit, writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { BenchDrawing } from '../drawings/BenchDrawing.tsx';
import { BenchRuns } from '../parts/BenchRuns.tsx';
import { DoubtFields } from '../parts/DoubtFields.tsx';
import { Found } from '../parts/Found.tsx';
import { fieldId } from '../parts/fieldId.ts';
import { More, Station } from '../parts/Station.tsx';
import { ToldPlot } from '../parts/ToldPlot.tsx';
import { useSheet } from '../state/sheet.ts';
import { benchPlot } from './benchPlot.ts';

/** Standard deviations to the edge of nine in ten. */
const edge = 1.645;
const factor = (value: number) => `× ${writeNumber(value, 3)}`;
const range = (median: number, deviation: number, write: (value: number) => string) =>
  `${write(median * Math.exp(-edge * deviation))} to ${write(median * Math.exp(edge * deviation))}`;
/** The note that points to this station, where each run says itself why it does not count. */
const toldHere = 'benchLeftOut';
const capacity = (value: number) => writeQuantity(value, 'heatCapacity');

/** Runs with the real sink, what they correct, and which unknown matters most. */
export function BenchStation(props: { number: number }) {
  const sheet = useSheet();
  const report = createMemo(() => {
    const found = sheet.results.curves()?.bench;
    return found?.ok ? found.value : undefined;
  });
  const plots = createMemo(() =>
    (report()?.runs ?? []).map((run) => (run.curve ? benchPlot(run.curve) : undefined)),
  );
  return (
    <Station
      id="bench"
      number={props.number}
      title="Bench runs and doubt"
      given={
        <>
          <BenchRuns />
          <More label="How the entries were measured">
            <DoubtFields />
          </More>
        </>
      }
      sketch={<BenchDrawing />}
      found={
        <>
          <Show when={report()} fallback={<p>No run yet: the sink is an estimate from its drawing.</p>}>
            {(found) => <Correction report={found()} />}
          </Show>
          <Matters />
        </>
      }
      wide={
        <>
          <Index each={plots()}>
            {(plot, index) => (
              <ToldPlot
                told={plot()}
                title={`Run ${index + 1}, measured and computed`}
                cursorLabel={`Time to read run ${index + 1} at`}
              />
            )}
          </Index>
          <Steps />
        </>
      }
    />
  );
}

/** The correction of all runs together, then each run alone. */
function Correction(props: { report: BenchReport }) {
  return (
    <>
      <Found name="filmFactor" main />
      <Found name="filmDoubt" />
      <Found name="capacityFactor" />
      <Found name="capacityDoubt" />
      <Found name="sinkHeatCapacity" />
      <For each={props.report.notes.filter((note) => note.key !== toldHere)}>
        {(note) => <p class="advice">{note.sentence}</p>}
      </For>
      <ol class="bench-results">
        <For each={props.report.runs}>{(run) => <RunResult run={run} />}</For>
      </ol>
    </>
  );
}

function RunResult(props: { run: BenchRunReport }) {
  const words = () => {
    const { found } = props.run;
    if (!found.ok) return found.reason.sentence;
    const { value, notes } = found;
    const parts = [
      `Film coefficients ${factor(value.filmFactor)} (${range(value.filmFactor, value.uncertainty, factor)})`,
      ...(value.heatCapacity === null ? [] : [`heat capacity ${capacity(value.heatCapacity)}`]),
      ...(value.lengthOverTime === null
        ? []
        : [`${writeNumber(value.lengthOverTime, 2, true)} time constants long`]),
      ...(value.scatter === null
        ? []
        : [`${writeQuantity(value.scatter, 'temperatureDifference', 'K', 2)} of scatter`]),
    ];
    const state = value.counts ? '' : ' Not counted.';
    return `${parts.join(', ')}.${state} ${notes.map((note) => note.sentence).join(' ')}`;
  };
  return <li classList={{ 'bench-fault': !props.run.found.ok }}>{words()}</li>;
}

const mostUnknowns = 5;

/** Which unknowns the spread of the junction temperature comes from, and what would make them better known. */
function Matters() {
  const sheet = useSheet();
  // As with the bands: while a newer one is on its way the last one keeps its room.
  const band = createMemo<Band | undefined>((last) => sheet.results.band() ?? last);
  const ranking = () => band()?.ranking[sheet.service()]?.slice(0, mostUnknowns) ?? [];
  return (
    <section class="matters" aria-labelledby="matters-title">
      <h4 id="matters-title">What makes {sheet.nameOf(sheet.service())} unsure</h4>
      <Show
        when={ranking().length > 0}
        fallback={<p class="found-band">The shares come with the band, a moment after the figures.</p>}
      >
        <ol>
          <For each={ranking()}>
            {(unknown) => (
              <li>
                <span class="matters-share">{joinUnit(String(Math.round(unknown.share * 100)), '%')}</span>{' '}
                <Show when={unknown.path} fallback={unknown.label}>
                  {(path) => <a href={`#${fieldId(path())}`}>{unknown.label}</a>}
                </Show>
                , ±{writeQuantity(Math.abs(unknown.effect), 'temperatureDifference', 'K', 2)}.{' '}
                <span class="matters-advice">{unknown.advice}</span>
              </li>
            )}
          </For>
        </ol>
      </Show>
    </section>
  );
}

/** The test in steps, its cautions first. */
function Steps() {
  const sheet = useSheet();
  const settling = () => {
    const { ratingResistance, sinkHeatCapacity } = sheet.results.solution()?.values ?? {};
    return ratingResistance && sinkHeatCapacity ? writeDuration(ratingResistance * sinkHeatCapacity) : '';
  };
  /** What the plate gets in an unbroken carrier: near enough for its rise. */
  const power = () => {
    const heat = sheet.results.solution()?.values['keyDown.plateHeat'];
    return heat === undefined ? '' : writeQuantity(Number(heat.toPrecision(1)), 'power', 'W', 1);
  };
  const rise = () => {
    const values = sheet.results.solution()?.values ?? {};
    const plate = values[`${sheet.service()}.plateMean`];
    const air = values[`${sheet.service()}.sinkAir`];
    return plate === undefined || air === undefined
      ? ''
      : writeQuantity(Math.round(plate - air), 'temperatureDifference', 'K', 2);
  };
  return (
    <details class="more bench-steps" open={sheet.store.view.bench.length === 0}>
      <summary>How to run the test, and what to take care of</summary>
      <div class="bench-columns">
        <section>
          <h4>Take care</h4>
          <ul>
            <li>
              The resistor burns skin, and chars wood and paper, within a minute. Bolt it down before you
              switch on and let the sink cool before you touch it.
            </li>
            <li>
              Feed it from a DC supply that is isolated from the mains, with a fuse in the lead; never from
              the mains or through a variable transformer that does not isolate. Leave nothing bare that
              carries more than 50 V.
            </li>
            <li>
              Stand the sink on something that does not burn, away from solvents and curtains. Do not leave it
              alone while it is on, and switch off at smoke or smell.
            </li>
          </ul>
        </section>
        <section>
          <h4>Steps</h4>
          <ol>
            <li>
              Bolt a metal-cased or flanged resistor to the middle of the plate, with grease, its foot about
              as large as that of the device. Mount the sink as it will stand in use, without draught and sun.
            </li>
            <li>
              Choose the power so that the plate rises between half and twice its working rise
              <Show when={rise()}>, here about {rise()}</Show>
              <Show when={power()}>; about {power()} does it here</Show>. Measure volts and amperes at the
              resistor, hot: P = V × I.
            </li>
            <li>
              One thermometer on the plate, beside the resistor or near a corner, pressed on with a drop of
              grease; one in still air 0.3 m below, shaded. Cover the top of the resistor. If the room drifts,
              log both: “time [min]; plate [°C]; room [°C]”.
            </li>
            <li>
              Log the plate every minute. Go on for at least one time constant
              <Show when={settling()}>, about {settling()} for this sink</Show>; longer tells more. It need
              not become steady: the sheet fits the whole curve, not its end.
            </li>
            <li>
              For a cool-down weigh the sink first and enter its mass; switch off and log on. Without power
              only the ratio of cooling to heat capacity shows.
            </li>
            <li>Paste the log above. Undo takes a run back like any other entry.</li>
          </ol>
        </section>
      </div>
    </details>
  );
}
