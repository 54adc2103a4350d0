import { Show } from 'solid-js';
import { ConverterDrawing, SupplyDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { PointList } from '../parts/PointList.tsx';
import { More, Station } from '../parts/Station.tsx';
import { WireTable } from '../parts/WireTable.tsx';
import { useSheet } from '../state/sheet.ts';

const sourceMore = [
  'source.continuousCurrent',
  'source.peakCurrent',
  'wiring.tinned',
  'wiring.insulationLimit',
  'wiring.otherResistance',
  'wiring.seriesDrop',
  'wiring.fuseRating',
  'wiring.fuseDistance',
  'wiring.ssbOnly',
  'boards.transmitPower',
  'boards.receivePower',
];

export function SourceStation(props: { number: number }) {
  return (
    <Station
      id="source"
      number={props.number}
      title="Source and wiring"
      given={
        <>
          <Fields
            paths={[
              'source.kind',
              'source.openVoltage',
              'source.internalResistance',
              'wiring.length',
              'wiring.size',
              'wiring.fuse',
            ]}
          />
          <More label="Limits, connectors, fuse place, other boards" paths={sourceMore}>
            <Fields paths={sourceMore} />
          </More>
        </>
      }
      sketch={<SupplyDrawing />}
      found={
        <FoundList
          station="source"
          main={['inputCurrentPep', 'fuseRating', 'inputVoltagePep']}
          figures={['pathDropShare']}
          byService={['inputCurrentMean', 'inputCurrentRms', 'cycleCurrentMean']}
        />
      }
      wide={<WireTable />}
    />
  );
}

const converterMore = [
  'converter.noLoadPower',
  'converter.minimumInput',
  'converter.inputCurrentLimit',
  'converter.outputCurrentLimit',
  'converter.powerLimit',
  'converter.powerShare',
  'converter.heatTo',
];

export function ConverterStation(props: { number: number }) {
  const sheet = useSheet();
  const raised = () => sheet.store.view.converter.kind === 'module';
  return (
    <Station
      id="converter"
      number={props.number}
      title="Converter"
      given={
        <>
          <Fields paths={['converter.kind', 'converter.outputVoltage']} />
          <Show when={raised()}>
            <EfficiencyPoints />
            <More label="Limits of the module, its heat" paths={converterMore}>
              <Fields paths={converterMore} />
            </More>
          </Show>
        </>
      }
      sketch={<ConverterDrawing />}
      found={
        <FoundList
          station="converter"
          main={raised() ? ['railVoltagePep', 'converterEfficiencyPep'] : ['railVoltagePep']}
          figures={raised() ? ['converterInputCurrentPep', 'converterLossPep'] : []}
          byService={raised() ? ['converterLossOver'] : []}
        />
      }
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
