import { Show } from 'solid-js';
import { typicalSource } from '../../engine/catalogue/sourcePresets.ts';
import { FusePlot, SupplyDrawing } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { PathList } from '../parts/PathList.tsx';
import { PathTable } from '../parts/PathTable.tsx';
import { More, Station } from '../parts/Station.tsx';
import { WireTable } from '../parts/WireTable.tsx';
import { useSheet } from '../state/sheet.ts';

const sourceMore = [
  'source.continuousCurrent',
  'source.peakCurrent',
  'source.capacityTime',
  'source.peukertExponent',
  'source.emptyVoltage',
  'source.emptyResistanceFactor',
  'source.chargingVoltage',
  'boards.transmitPower',
  'boards.receivePower',
];

const wireMore = [
  'wiring.material',
  'wiring.together',
  'wiring.insulationLimit',
  'wiring.fuseRating',
  'wiring.fuseDistance',
  'wiring.ssbOnly',
];

export function SourceStation(props: { number: number }) {
  const sheet = useSheet();
  const raised = () => sheet.store.view.converter.kind !== 'none';
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
              'source.capacity',
              'wiring.length',
              'wiring.size',
              'wiring.fuse',
            ]}
          />
          <TypicalSource />
          <More label="Limits of the source, battery, other boards" paths={sourceMore}>
            <Fields paths={sourceMore} />
          </More>
          <More label="Wire and fuse" paths={wireMore}>
            <Fields paths={wireMore} />
          </More>
          <PathEditor />
        </>
      }
      sketch={<SupplyDrawing />}
      found={
        <FoundList
          station="source"
          main={['inputCurrentPep', 'fuseRating', 'inputVoltagePep']}
          figures={[
            'inputVoltageEmpty',
            'pathDropShare',
            'weakestRating',
            ...(raised() ? ['leastInputCapacitance', 'inrushPeak'] : []),
          ]}
          byService={['inputCurrentMean', 'inputCurrentRms', 'cycleCurrentMean', 'runTime']}
        />
      }
      wide={
        <>
          <FusePlot />
          <PathTable />
          <WireTable />
        </>
      }
    />
  );
}

/** Connectors, switch and the rest. */
function PathEditor() {
  const { store } = useSheet();
  return (
    <More label={`Parts of the path (${store.view.wiring.path.length})`} below="wiring.path.">
      <PathList />
    </More>
  );
}

/** Fills in what is usual for the chosen kind of source; one step back takes it out again. */
function TypicalSource() {
  const { store } = useSheet();
  const typical = () => typicalSource(store.view.source.kind, store.view.source.capacity);
  return (
    <Show when={typical()}>
      {(values) => (
        <p class="path-moves">
          <button
            type="button"
            class="plain-button"
            onClick={() =>
              store.change((design) => ({ ...design, source: { ...design.source, ...values() } }), 'source.')
            }
          >
            fill in typical figures of this source
          </button>
        </p>
      )}
    </Show>
  );
}
