import { type Component, createEffect, createMemo, createSignal, For } from 'solid-js';
import { AnswersStation, BenchStation } from './later.tsx';
import { Place } from './parts/Place.tsx';
import { usePace } from './state/pace.ts';
import { useSheet } from './state/sheet.ts';
import { AmplifierStation } from './stations/AmplifierStation.tsx';
import { Cautions } from './stations/Cautions.tsx';
import { ConverterStation } from './stations/ConverterStation.tsx';
import { DeviceStation, SinkStation, SurroundingsStation } from './stations/HeatStations.tsx';
import { PeopleStation } from './stations/PeopleStation.tsx';
import { ServiceStation } from './stations/ServiceStation.tsx';
import { SourceStation } from './stations/SourceStation.tsx';

interface Band {
  readonly part: Component<{ number: number }>;
  /** A place that is kept while its part arrives. */
  readonly place?: string;
}

/** The stations in the order in which energy flows, the cautions last. */
const bands: readonly Band[] = [
  { part: SourceStation },
  { part: ConverterStation },
  { part: AmplifierStation },
  { part: DeviceStation },
  { part: SinkStation },
  { part: BenchStation, place: 'bench-place' },
  { part: SurroundingsStation },
  { part: ServiceStation },
  { part: PeopleStation },
  { part: AnswersStation, place: 'answers-place' },
  { part: Cautions },
];

/** How many stand after each step: a step paints the page once more, so they are few. */
const steps = [1, 4, bands.length];

/**
 * The first stands at once, and is painted before there is more, so that its fields can be typed into; the others come
 * in two steps after it.
 */
export default function Stations(props: { onStanding: () => void }) {
  const pace = usePace();
  const { results } = useSheet();
  const [step, setStep] = createSignal(0);
  const made = () => steps[step()] ?? bands.length;
  // The verdicts go first; without an engine there are none to wait for.
  const begun = createMemo(() => results.solution() !== undefined || results.fault() !== null);
  createEffect(() => {
    if (!begun()) return;
    const goOn = () => setStep((now) => now + 1);
    if (made() === bands.length) props.onStanding();
    else if (step() === 0) pace.afterPaint(goOn);
    else pace.later(goOn);
  });
  return (
    <For each={bands.slice(0, made())}>
      {({ part: Part, place }, index) => (
        <Place {...(place === undefined ? {} : { class: place })}>
          <Part number={index() + 1} />
        </Place>
      )}
    </For>
  );
}
