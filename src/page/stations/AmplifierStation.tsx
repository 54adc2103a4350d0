import { StageDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { Found, FoundByService } from '../parts/Found.tsx';
import { More, MoreFigures, Station } from '../parts/Station.tsx';

const more = [
  'amplifier.drivePower',
  'amplifier.networkHeatToSink',
  'amplifier.biasInReceive',
  'amplifier.biasKeyed',
  'amplifier.onResistance',
  'amplifier.onResistanceCoefficient',
];

export function AmplifierStation(props: { number: number }) {
  return (
    <Station
      id="amplifier"
      number={props.number}
      title="Amplifier"
      given={
        <>
          <Fields
            paths={[
              'amplifier.class',
              'amplifier.pep',
              'amplifier.efficiency',
              'amplifier.ratedPep',
              'amplifier.ratedRail',
              'amplifier.quiescentCurrent',
              'amplifier.conductionAngle',
              'amplifier.outputLoss',
            ]}
          />
          <More label="Drive, bias, network heat" paths={more}>
            <Fields paths={more} />
          </More>
        </>
      }
      sketch={<StageDrawing />}
      found={
        <>
          <Found name="deviceHeatPep" main />
          <Found name="dcPowerPep" main />
          <Found name="railCurrentPep" />
          <Found name="pep" />
          <FoundByService names={['averageRatio', 'dcPowerOver', 'deviceHeatOver', 'heatRatio']} />
          <MoreFigures>
            <Found name="drainEfficiencyPep" />
            <Found name="loadPerDevice" />
            <Found name="kneeVoltage" />
            <Found name="hottestHeat" />
          </MoreFigures>
        </>
      }
    />
  );
}
