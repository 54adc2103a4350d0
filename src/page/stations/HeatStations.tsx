import { Show } from 'solid-js';
import { CaseDrawing, HeatLadder, Plot, SinkDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { ServicePicker } from '../parts/ServicePicker.tsx';
import { More, Station } from '../parts/Station.tsx';
import { useSheet } from '../state/sheet.ts';
import { ratingPlot } from './plots.ts';

const deviceMore = [
  'device.maximumVoltage',
  'device.maximumHeat',
  'device.junctionTime',
  'device.flangeMass',
  'device.contactLength',
  'device.contactWidth',
  'limits.designJunction',
];

export function DeviceStation(props: { number: number }) {
  return (
    <Station
      id="devices"
      number={props.number}
      title="Devices and mounting"
      given={
        <>
          <Fields
            paths={[
              'device.count',
              'device.package',
              'device.maximumJunction',
              'device.junctionToCase',
              'device.pad',
              'device.padResistance',
            ]}
          />
          <More label="Ratings, contact face, time constant, design limit" paths={deviceMore}>
            <Fields paths={deviceMore} />
          </More>
        </>
      }
      sketch={
        <>
          <ServicePicker legend="Heat path in" />
          <HeatLadder />
        </>
      }
      found={
        <FoundList
          station="device"
          main={['designLimit']}
          byService={['junctionPeak', 'junctionMargin', 'junctionMean', 'junctionRipple']}
        />
      }
    />
  );
}

const sinkMore = [
  'sink.alloy',
  'sink.finish',
  'sink.emissivity',
  'sink.backExposed',
  'sink.mass',
  'sink.placement',
];

export function SinkStation(props: { number: number }) {
  const sheet = useSheet();
  const plot = () => {
    const rating = sheet.results.curves()?.rating;
    return rating?.ok ? ratingPlot(rating.value) : undefined;
  };
  return (
    <Station
      id="sink"
      number={props.number}
      title="Sink"
      given={
        <>
          <Fields
            paths={[
              'sink.shape',
              'sink.width',
              'sink.length',
              'sink.baseThickness',
              'sink.finCount',
              'sink.finHeight',
              'sink.finThickness',
            ]}
          />
          <More label="Metal, finish, mass, place" paths={sinkMore}>
            <Fields paths={sinkMore} />
          </More>
        </>
      }
      sketch={<SinkDrawing />}
      found={
        <FoundList
          station="sink"
          main={['ratingResistance']}
          figures={['ratingHeat', 'finGap']}
          byService={['plateHeat', 'sinkResistance', 'plateMean', 'platePeak', 'sinkAir']}
        />
      }
      wide={
        <Show when={plot()}>
          {(shown) => (
            <Plot
              title="Sink rating against heat"
              finding={shown().finding}
              cursorLabel="Heat to read the rating at"
              data={shown().data}
              start={shown().start}
            />
          )}
        </Show>
      }
    />
  );
}

export function SurroundingsStation(props: { number: number }) {
  return (
    <Station
      id="surroundings"
      number={props.number}
      title="Case and surroundings"
      given={
        <Fields
          paths={[
            'surroundings.ambient',
            'surroundings.altitude',
            'surroundings.caseWidth',
            'surroundings.caseHeight',
            'surroundings.caseDepth',
            'surroundings.caseFinish',
          ]}
        />
      }
      sketch={<CaseDrawing />}
      found={<FoundList station="surroundings" main={[]} byService={['caseHeat', 'caseAir', 'sinkAir']} />}
    />
  );
}
