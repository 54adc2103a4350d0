import { type Component, createEffect, createSignal, For } from 'solid-js';
import { AnswersStation, BenchStation } from './later.tsx';
import { Place } from './parts/Place.tsx';
import { usePace } from './state/pace.ts';
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

/** The first stands at once; the others come one by one, so that its fields can be typed into meanwhile. */
export default function Stations(props: { onStanding: () => void }) {
  const pace = usePace();
  const [made, setMade] = createSignal(1);
  createEffect(() => {
    if (made() < bands.length) pace.later(() => setMade((now) => now + 1));
    else props.onStanding();
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
