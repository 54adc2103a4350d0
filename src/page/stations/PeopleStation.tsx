import { ExposureTable, PeopleDrawing, PeopleTables } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { Folded, More, Station } from '../parts/Station.tsx';

const antenna = [
  'antenna.kind',
  'antenna.band',
  'antenna.loopRadius',
  'antenna.loopResistance',
  'antenna.exposureModeFactor',
  'antenna.exposureBy',
  'antenna.exposureOver',
  'antenna.exposurePause',
  'antenna.exposureTransmitShare',
  'antenna.limitSet',
  'antenna.tier',
  'antenna.nearestPerson',
  'limits.touchedBy',
  'limits.surface',
];

const more = [
  'antenna.gain',
  'antenna.efficiency',
  'antenna.feedLineLoss',
  'antenna.groundFactor',
  'hazards.railCapacitance',
  'hazards.bleederTime',
  'hazards.greatestRail',
  'limits.touchGoverns',
];

export function PeopleStation(props: { number: number }) {
  return (
    <Station
      id="people"
      number={props.number}
      title="Antenna and people"
      given={
        <>
          <Fields paths={antenna} />
          <More label="Gain, feed line, ground, capacitors on the rail" paths={more}>
            <Fields paths={more} />
          </More>
        </>
      }
      sketch={<PeopleDrawing />}
      found={
        <FoundList
          station="people"
          main={['exposureDistance', 'touchTemperature']}
          figures={['touchThreshold', 'burnTime', 'coolingTime', 'outputVoltagePeak', 'contactRatio']}
        />
      }
      wide={
        <>
          <ExposureTable />
          <Folded label="Burn thresholds and contact currents">
            <PeopleTables />
          </Folded>
        </>
      }
    />
  );
}
