import { onMount } from 'solid-js';
import { AnswersStation, BenchStation } from './later.tsx';
import { AmplifierStation } from './stations/AmplifierStation.tsx';
import { Cautions } from './stations/Cautions.tsx';
import { ConverterStation } from './stations/ConverterStation.tsx';
import { DeviceStation, SinkStation, SurroundingsStation } from './stations/HeatStations.tsx';
import { PeopleStation } from './stations/PeopleStation.tsx';
import { ServiceStation } from './stations/ServiceStation.tsx';
import { SourceStation } from './stations/SourceStation.tsx';

/** The stations in the order in which energy flows, the cautions last. */
export default function Stations(props: { onStanding: () => void }) {
  onMount(() => props.onStanding());
  return (
    <>
      <SourceStation number={1} />
      <ConverterStation number={2} />
      <AmplifierStation number={3} />
      <DeviceStation number={4} />
      <SinkStation number={5} />
      <div class="bench-place">
        <BenchStation number={6} />
      </div>
      <SurroundingsStation number={7} />
      <ServiceStation number={8} />
      <PeopleStation number={9} />
      <div class="answers-place">
        <AnswersStation number={10} />
      </div>
      <Cautions number={11} />
    </>
  );
}
