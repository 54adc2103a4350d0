import { For, Show } from 'solid-js';
import { mostReadings } from '../../../shared/design/amplifierSchema.ts';
import { StageDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { PointList } from '../parts/PointList.tsx';
import { More, Station } from '../parts/Station.tsx';
import { useSheet } from '../state/sheet.ts';
import { AmplifierPlots } from './AmplifierPlots.tsx';

const calibrated = [
  'amplifier.class',
  'amplifier.pep',
  'amplifier.calibration',
  'amplifier.efficiency',
  'amplifier.efficiencyMeasured',
  'amplifier.saturationVoltage',
  'amplifier.onResistance',
  'amplifier.onResistanceCoefficient',
  'amplifier.outputCapacitance',
  'amplifier.otherLoss',
  'amplifier.ratedPep',
  'amplifier.ratedRail',
];

const output = [
  'amplifier.quiescentCurrent',
  'amplifier.conductionAngle',
  'amplifier.outputLoss',
  'amplifier.swr',
  'amplifier.foldbackSwr',
];

const network = [
  'amplifier.drivePower',
  'amplifier.networkHeatToSink',
  'amplifier.arrangement',
  'amplifier.turnsRatio',
];

const bias = [
  'amplifier.biasInReceive',
  'amplifier.biasKeyed',
  'amplifier.deviceKind',
  'amplifier.biasTracking',
  'amplifier.transconductance',
  'amplifier.thresholdDrift',
  'amplifier.biasResistance',
];

/** Remarks of the engine that belong at this station. */
const findingKeys = ['biasRunsAway', 'biasDrifts', 'drainVoltage', 'drainVoltageMismatched', 'derating'];

/** Readings of output and rail current: the surest way to know a final. */
function Readings() {
  const { store } = useSheet();
  return (
    <Show when={store.view.amplifier.calibration === 'readings'}>
      <PointList
        legend="Readings with a steady carrier"
        path="amplifier.readings"
        noun="reading"
        most={mostReadings}
        columns={[
          { key: 'power', label: 'output' },
          { key: 'current', label: 'rail current' },
        ]}
      />
    </Show>
  );
}

/** The nearest transformer to wind, and what is not fine about the final. */
function Advice() {
  const sheet = useSheet();
  const told = new Set(['turnsAdvice', ...findingKeys]);
  const notes = () => (sheet.results.solution()?.notes ?? []).filter((note) => told.has(note.key));
  return <For each={notes()}>{(note) => <p class="advice">{note.sentence}</p>}</For>;
}

export function AmplifierStation(props: { number: number }) {
  const sheet = useSheet();
  const biased = () => ['A', 'AB'].includes(sheet.store.view.amplifier.class);
  return (
    <Station
      id="amplifier"
      number={props.number}
      title="Amplifier"
      given={
        <>
          <Fields paths={calibrated} />
          <Readings />
          <Fields paths={output} />
          <More label="Drive, transformer, network heat" paths={network}>
            <Fields paths={network} />
          </More>
          <Show when={biased()}>
            <More label="Bias and how it drifts" paths={bias}>
              <Fields paths={bias} />
            </More>
          </Show>
        </>
      }
      sketch={<StageDrawing />}
      wide={<AmplifierPlots />}
      found={
        <>
          <FoundList
            station="amplifier"
            main={['deviceHeatPep', 'dcPowerPep']}
            figures={['railCurrentPep', 'pep', 'swingUsed', 'drainPeakVoltage', 'biasLoopGain']}
            byService={['averageRatio', 'dcPowerOver', 'deviceHeatOver', 'heatRatio']}
          />
          <Advice />
        </>
      }
    />
  );
}
