import { Match, Show, Switch } from 'solid-js';
import { ConverterDrawing, ConverterPlots } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { PointList } from '../parts/PointList.tsx';
import { More, Station } from '../parts/Station.tsx';
import { useSheet } from '../state/sheet.ts';

const moduleMore = [
  'converter.noLoadPower',
  'converter.minimumInput',
  'converter.inputCurrentLimit',
  'converter.outputCurrentLimit',
  'converter.powerLimit',
  'converter.powerShare',
  'converter.heatTo',
];

const under = (names: string) => names.split(' ').map((name) => `converter.parts.${name}`);
const inductorMore = under(
  'inductance inductorResistance alternatingFactor saturationCurrent currentLimit core coreTurns coreArea coreLength',
);
const switchMore = under(
  'switchResistance hotFactor turnOnTime turnOffTime switchCapacitance gateCharge gateVoltage greatestDuty fixedPower',
);
const rectifierMore = under('rectifier rectifierDrop rectifierResistance recoveryCharge deadTime bodyDrop');
const capacitorMore = ['converter.outputCapacitance', ...under('outputCapacitorResistance')];
const heatMore = ['converter.heatTo', ...under('switchToSink rectifierToSink ownSink greatestJunction')];
const inputMore = [
  'converter.frequency',
  'converter.clockTolerance',
  'converter.region',
  'converter.inputCapacitance',
  'converter.inputCapacitorResistance',
  'converter.filterInductance',
  'converter.filterResistance',
  'converter.railFuse',
];

export function ConverterStation(props: { number: number }) {
  const sheet = useSheet();
  const kind = () => sheet.store.view.converter.kind;
  return (
    <Station
      id="converter"
      number={props.number}
      title="Converter"
      given={
        <>
          <Fields paths={['converter.kind', 'converter.outputVoltage']} />
          <Switch>
            <Match when={kind() === 'module'}>
              <EfficiencyPoints />
              <More label="Limits of the module, its heat" paths={moduleMore}>
                <Fields paths={moduleMore} />
              </More>
            </Match>
            <Match when={kind() === 'designed'}>
              <DesignFields />
            </Match>
          </Switch>
          <Show when={kind() !== 'none'}>
            <More label="Frequency, input capacitors and filter, rail fuse" paths={inputMore}>
              <Fields paths={inputMore} />
            </More>
          </Show>
        </>
      }
      sketch={<ConverterDrawing />}
      found={<ConverterFound />}
      wide={
        <Show when={kind() !== 'none'}>
          <ConverterPlots />
        </Show>
      }
    />
  );
}

/** What a converter from parts is given; an empty part takes the suggestion that stands among the figures. */
function DesignFields() {
  return (
    <>
      <Fields paths={['converter.minimumInput', 'converter.parts.phases']} />
      <More label="Inductor" paths={inductorMore}>
        <Fields paths={inductorMore} />
      </More>
      <More label="Switch and control" paths={switchMore}>
        <Fields paths={switchMore} />
      </More>
      <More label="Rectifier" paths={rectifierMore}>
        <Fields paths={rectifierMore} />
      </More>
      <More label="Output capacitors" paths={capacitorMore}>
        <Fields paths={capacitorMore} />
      </More>
      <More label="Its heat" paths={heatMore}>
        <Fields paths={heatMore} />
      </More>
    </>
  );
}

function ConverterFound() {
  const sheet = useSheet();
  const kind = () => sheet.store.view.converter.kind;
  const raised = () => kind() !== 'none';
  const designed = () => kind() === 'designed';
  return (
    <FoundList
      station="converter"
      main={[
        'railVoltagePep',
        ...(raised() ? ['converterEfficiencyPep'] : []),
        ...(designed() ? ['switchDuty'] : []),
      ]}
      figures={[
        ...(raised() ? ['converterInputCurrentPep', 'converterLossPep'] : []),
        ...(designed()
          ? [
              'inductance',
              'saturationCurrent',
              'inductorPeak',
              'saturationMargin',
              'outputRipple',
              'crossover',
              'railDroop',
            ]
          : []),
      ]}
      byService={[
        ...(raised() ? ['converterLossOver'] : []),
        ...(designed() ? ['switchJunction', 'rectifierJunction'] : []),
      ]}
    />
  );
}

const mostPoints = 3;

/** Up to three measured points of the module; more than one shows how the efficiency falls with load. */
function EfficiencyPoints() {
  return (
    <PointList
      legend="Efficiency, measured or from the data"
      path="converter.points"
      noun="point"
      most={mostPoints}
      columns={[
        { key: 'inputVoltage', label: 'at input' },
        { key: 'inputCurrent', label: 'and current' },
        { key: 'efficiency', label: 'efficiency' },
      ]}
    />
  );
}
