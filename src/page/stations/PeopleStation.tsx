import { PeopleDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { Found } from '../parts/Found.tsx';
import { More, MoreFigures, Station } from '../parts/Station.tsx';

const more = ['antenna.feedLineLoss', 'antenna.tier', 'antenna.groundFactor', 'limits.touchGoverns'];

export function PeopleStation(props: { number: number }) {
  return (
    <Station
      id="people"
      number={props.number}
      title="Antenna and people"
      given={
        <>
          <Fields
            paths={[
              'antenna.kind',
              'antenna.band',
              'antenna.gain',
              'antenna.exposureModeFactor',
              'antenna.exposureTransmitShare',
              'limits.touchedBy',
            ]}
          />
          <More label="Feed line, exposure limit, ground" paths={more}>
            <Fields paths={more} />
          </More>
        </>
      }
      sketch={<PeopleDrawing />}
      found={
        <>
          <Found name="exposureDistance" main />
          <Found name="touchTemperature" main />
          <Found name="touchThreshold" />
          <MoreFigures>
            <Found name="burnTime" />
            <Found name="exposurePower" />
            <Found name="exposureFrequency" />
            <Found name="exposureLimit" />
            <Found name="outputVoltagePeak" />
            <Found name="outputCurrent" />
          </MoreFigures>
        </>
      }
    />
  );
}
