import { For, Show } from 'solid-js';
import { mostStages } from '../../../shared/design/amplifierSchema.ts';
import { fieldAt } from '../../../shared/design/leaves.ts';
import { usualFace } from '../../engine/catalogue/packageFace.ts';
import { writeEcho, writeEntry } from '../../engine/quantity/write.ts';
import { CaseDrawing, HeatLadder, PlateMap, SinkDrawing, SinkStands } from '../later.tsx';
import { Fields } from '../parts/Fields.tsx';
import { FoundList } from '../parts/FoundList.tsx';
import { PointList } from '../parts/PointList.tsx';
import { ServicePicker } from '../parts/ServicePicker.tsx';
import { More, Station } from '../parts/Station.tsx';
import { ToldPlot } from '../parts/ToldPlot.tsx';
import { applies } from '../state/applies.ts';
import { useSheet } from '../state/sheet.ts';
import { DeratingPlot } from './AmplifierPlots.tsx';
import { ratingPlot } from './plots.ts';

const device = [
  'device.count',
  'device.package',
  'device.maximumJunction',
  'device.ladder',
  'device.junctionToCase',
  'device.junctionTime',
];

const mounting = ['device.pad', 'device.padResistance', 'device.spreader'];

const spreader = [
  'device.spreaderWidth',
  'device.spreaderLength',
  'device.spreaderThickness',
  'device.spreaderMetal',
  'device.spreaderPad',
];

const ratings = ['device.maximumVoltage', 'device.maximumHeat', 'device.flangeMass', 'limits.designJunction'];

const face = ['device.contactLength', 'device.contactWidth'];

/** The heat path inside the device, where the data sheet says more than one value. */
function DeviceLadder() {
  const { store } = useSheet();
  const kind = () => store.view.device.ladder;
  return (
    <>
      <Show when={kind() === 'points'}>
        <PointList
          legend="Transient thermal impedance"
          path="device.impedancePoints"
          noun="point"
          most={mostStages}
          columns={[
            { key: 'time', label: 'after' },
            { key: 'impedance', label: 'impedance' },
          ]}
        />
      </Show>
      <Show when={kind() === 'foster'}>
        <PointList
          legend="Stages of the curve fit"
          path="device.fosterStages"
          noun="stage"
          most={mostStages}
          columns={[
            { key: 'resistance', label: 'resistance' },
            { key: 'timeConstant', label: 'time constant' },
          ]}
        />
      </Show>
      <Show when={kind() === 'cauer'}>
        <PointList
          legend="Stages from the junction to the case"
          path="device.cauerStages"
          noun="stage"
          most={mostStages}
          columns={[
            { key: 'capacity', label: 'capacity' },
            { key: 'resistance', label: 'resistance' },
          ]}
        />
      </Show>
    </>
  );
}

/** Places on the plate; an empty list spreads the devices evenly. */
function DevicePlaces() {
  const { store } = useSheet();
  const middle = () => ({ x: store.view.sink.width / 2, y: store.view.sink.length / 2 });
  return (
    <PointList
      legend="Centres on the plate; without any the devices are spread evenly"
      path="device.places"
      noun="place"
      most={mostPlaces}
      mayBeEmpty
      blank={middle}
      columns={[
        { key: 'x', label: 'from the left' },
        { key: 'y', label: 'from below' },
      ]}
    />
  );
}

const mostPlaces = 16;

/** Offers the usual contact face of the chosen package where another one is entered; one step back takes it out again. */
function UsualFace() {
  const { store, preferences } = useSheet();
  const offered = () => {
    const { device } = store.view;
    const usual = usualFace(device.package);
    const same = usual?.contactLength === device.contactLength && usual.contactWidth === device.contactWidth;
    return same ? null : usual;
  };
  const spec = fieldAt('device.contactLength');
  const size = (length: number, width: number) => {
    const unit = spec?.kind === 'number' ? preferences.unitOf('device.contactLength', spec) : 'mm';
    return `${writeEntry(length, 'length', unit)} × ${writeEcho(width, 'length', unit)}`;
  };
  return (
    <Show when={offered()}>
      {(usual) => (
        <p class="path-moves">
          <span class="row-note">
            Contact face {size(store.view.device.contactLength, store.view.device.contactWidth)}
          </span>{' '}
          <button
            type="button"
            class="plain-button"
            onClick={() =>
              store.change(
                (design) => ({ ...design, device: { ...design.device, ...usual() } }),
                'device.contact',
              )
            }
          >
            usual face of this package: {size(usual().contactLength, usual().contactWidth)}
          </button>
        </p>
      )}
    </Show>
  );
}

export function DeviceStation(props: { number: number }) {
  return (
    <Station
      id="devices"
      number={props.number}
      title="Devices and mounting"
      given={
        <>
          <Fields paths={device} />
          <DeviceLadder />
          <Fields paths={[...mounting, ...spreader]} />
          <UsualFace />
          <More label="Contact face and places on the plate" paths={face}>
            <Fields paths={face} />
            <DevicePlaces />
          </More>
          <More label="Ratings, mass, design limit" paths={ratings}>
            <Fields paths={ratings} />
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
          byService={[
            'junctionPeak',
            'junctionMargin',
            'junctionMean',
            'junctionRipple',
            'junctionPeakStill',
            'holdTimeStill',
          ]}
        />
      }
      wide={<DeratingPlot />}
    />
  );
}

const sinkShape = [
  'sink.shape',
  'sink.position',
  'sink.tilt',
  'sink.width',
  'sink.length',
  'sink.baseThickness',
  'sink.finCount',
  'sink.finHeight',
  'sink.tapered',
  'sink.finThickness',
  'sink.finRoot',
  'sink.finTip',
  'sink.pinSection',
  'sink.pinThickness',
  'sink.pinHeight',
  'sink.pinColumns',
  'sink.pinRows',
  'sink.fan',
];

const fan = [
  'sink.fanFlow',
  'sink.fanPressure',
  'sink.fanMiddleFlow',
  'sink.fanMiddlePressure',
  'sink.fanVoltageShare',
  'sink.fanPath',
  'sink.bypassSection',
];

const sinkMore = [
  'sink.alloy',
  'sink.finish',
  'sink.emissivity',
  'sink.backExposed',
  'sink.backShare',
  'sink.mass',
  'sink.placement',
];

const partFields = ['width', 'length', 'x', 'y'];

/** Parts of the converter that may sit on this plate. */
const converterParts = [
  { key: 'converterPart', label: 'The converter on this plate' },
  { key: 'switchPart', label: 'The switch of the converter on this plate' },
  { key: 'rectifierPart', label: 'The rectifier of the converter on this plate' },
].map(({ key, label }) => ({ label, paths: partFields.map((field) => `sink.${key}.${field}`) }));

export function SinkStation(props: { number: number }) {
  const sheet = useSheet();
  const plot = () => {
    const rating = sheet.results.curves()?.rating;
    return rating?.ok ? ratingPlot(rating.value, sheet.results.band()) : undefined;
  };
  /** Corrections stand in sight where runs have made some. */
  const corrected = () =>
    sheet.results.solution()?.values.benchRunsCounted ? ['benchRunsCounted', 'filmFactor', 'filmDoubt'] : [];
  return (
    <Station
      id="sink"
      number={props.number}
      title="Sink"
      given={
        <>
          <Fields paths={sinkShape} />
          <Show when={fan.some((path) => applies(sheet.store.view, path))}>
            <More label="The fan and how its air is led" paths={fan}>
              <Fields paths={fan} />
            </More>
          </Show>
          <More label="Metal, finish, mass, place" paths={sinkMore}>
            <Fields paths={sinkMore} />
          </More>
          <For each={converterParts}>
            {({ label, paths }) => (
              <Show when={applies(sheet.store.view, paths[0]!)}>
                <More label={label} paths={paths}>
                  <Fields paths={paths} />
                </More>
              </Show>
            )}
          </For>
        </>
      }
      sketch={
        <>
          <SinkDrawing />
          <SinkStands />
        </>
      }
      found={
        <FoundList
          station="sink"
          main={['ratingResistance']}
          figures={['ratingResistanceStill', 'ratingHeat', 'finGap', 'massRatio', 'fanFlow', ...corrected()]}
          byService={[
            'plateHeat',
            'sinkResistance',
            'plateMean',
            'platePeak',
            'coolDownTime',
            'localRise',
            'sinkAir',
          ]}
        />
      }
      wide={
        <>
          <PlateMap />
          <ToldPlot told={plot()} title="Sink rating against heat" cursorLabel="Heat to read the rating at" />
        </>
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
            'surroundings.caseVents',
            'surroundings.ventArea',
          ]}
        />
      }
      sketch={<CaseDrawing />}
      found={<FoundList station="surroundings" main={[]} byService={['caseHeat', 'caseAir', 'sinkAir']} />}
    />
  );
}
