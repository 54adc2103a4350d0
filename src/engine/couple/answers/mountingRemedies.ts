import type { Edit } from '../../../../shared/answers.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import type { Service } from '../../../../shared/solution.ts';
import { interfaceResistance, pressedShare } from '../../heat/interface.ts';
import { suggestedPlaces } from '../plateMap.ts';
import { tidy } from './edits.ts';
import { type Change, listed, type Offer, type Offers, optionWords, said, single } from './offer.ts';

type Pad = Exclude<Design['device']['pad'], 'measured'>;

/** Pads that insulate, and those that leave the tab on the potential of the sink. */
const insulators: readonly Pad[] = ['siliconePad', 'polyimide', 'mica', 'alumina', 'aluminiumNitride'];

function padResistance({ device }: Design, pad: Pad): number {
  const pressed = device.contactLength * device.contactWidth * pressedShare(device.package);
  return interfaceResistance(pad, pressed).typical;
}

function presentPad(design: Design): number {
  const { pad, padResistance: own } = design.device;
  return pad === 'measured' ? own : padResistance(design, pad);
}

const padChange = (pad: Pad, sideEffects: readonly string[]): Change => ({
  title: `Mount the devices with ${optionWords('device.pad', pad)}`,
  edits: [{ path: 'device.pad', value: pad }],
  sideEffects,
});

function betterInsulator(design: Design): readonly Offer[] {
  const present = presentPad(design);
  const better = insulators
    .filter((pad) => padResistance(design, pad) < present)
    .sort((a, b) => padResistance(design, b) - padResistance(design, a));
  return listed(
    'pad',
    'parts',
    better.map((pad) =>
      padChange(
        pad,
        pad === 'alumina' || pad === 'aluminiumNitride' ? ['A ceramic plate needs a flat, clean seat.'] : [],
      ),
    ),
  );
}

/** What metal on metal does; two devices of a push-pull stage would be shorted by it. */
function bareTabs(count: number): string {
  const joined =
    count > 1
      ? ' It joins the tabs of all devices on it: in push-pull that shorts drain to drain or collector to collector, unless the tab is isolated or is the source or emitter.'
      : '';
  return `No insulator: the sink carries what the tab carries.${joined} Only where tab and sink may touch.`;
}

/** Grease instead of a pad or of nothing: metal on metal. */
function grease(design: Design): readonly Offer[] {
  const { pad } = design.device;
  if (pad === 'grease' || padResistance(design, 'grease') >= presentPad(design)) return [];
  const dry = pad === 'bare';
  return [
    single(dry ? 'greaseDry' : 'grease', 'bench', {
      ...padChange('grease', dry ? [] : [bareTabs(design.device.count)]),
    }),
  ];
}

/** A copper plate under each device: how far it reaches beyond the contact face on each side, m, and its thickness, m. */
const spreaderReach = [0.005, 0.008, 0.012, 0.018, 0.025];
const spreaderThickness = [0.003, 0.004, 0.005, 0.006, 0.008];
const wholeMillimetre = (length: number) => Math.ceil(length * 1000 - 1e-9) / 1000;

function spreader({ device }: Design): readonly Offer[] {
  if (device.spreader) return [];
  const changes = spreaderReach.map((reach, i) => {
    const width = wholeMillimetre(device.contactWidth + 2 * reach);
    const length = wholeMillimetre(device.contactLength + 2 * reach);
    const thickness = spreaderThickness[i]!;
    const edits: readonly Edit[] = [
      { path: 'device.spreader', value: true },
      { path: 'device.spreaderWidth', value: width },
      { path: 'device.spreaderLength', value: length },
      { path: 'device.spreaderThickness', value: thickness },
      { path: 'device.spreaderMetal', value: 'copper' },
      { path: 'device.spreaderPad', value: 'grease' },
    ];
    return {
      title: `Put a copper plate ${said(width, 'length', 'mm')} by ${said(length, 'length', 'mm')}, ${said(thickness, 'length', 'mm')} thick, under each device`,
      edits,
      sideEffects: ['One more joint: both faces flat and greased.'],
    };
  });
  return listed('spreader', 'metalwork', changes, false);
}

/** Work the search for places may take when it is one line among many; good enough for sixteen devices (tested). */
const placesEffort = 12_000;

function movedParts(design: Design, service: Service): readonly Offer[] {
  const found = suggestedPlaces(design, service, placesEffort);
  if (!found.ok || found.value.saved <= 0) return [];
  const { count } = design.device;
  const rounded = found.value.places.map(({ x, y }) => ({ x: tenth(x), y: tenth(y) }));
  const converter = rounded[count];
  return [
    single('places', 'metalwork', {
      title: 'Move the parts on the plate to where they warm each other least',
      edits: [
        { path: 'device.places', value: rounded.slice(0, count) },
        ...(converter
          ? [
              { path: 'sink.converterPart.x', value: converter.x },
              { path: 'sink.converterPart.y', value: converter.y },
            ]
          : []),
      ],
      sideEffects: ['New holes; leads of the devices must still reach the board.'],
    }),
  ];
}

/** Places are marked to a tenth of a millimetre. */
const tenth = (length: number) => tidy(Math.round(length * 1e4) / 1e4);

const mostDevices = 16;

function moreDevices({ device, amplifier }: Design): readonly Offer[] {
  const pairs = amplifier.arrangement === 'pushPull' && device.count % 2 === 0;
  const counts = [device.count + (pairs ? 2 : 1), device.count * 2].filter((count) => count <= mostDevices);
  return listed(
    'devices',
    'parts',
    [...new Set(counts)].map((count) => ({
      title: `Share the heat among ${count} devices instead of ${device.count}`,
      edits: [
        { path: 'device.count', value: count },
        ...(device.places.length > 0 ? [{ path: 'device.places', value: [] }] : []),
      ],
      sideEffects: [
        'Match them and balance their currents; more capacitance to drive. Bias and drive of the whole stage are taken to stay.',
      ],
    })),
  );
}

/** Between device and plate, and where the devices stand. */
export const mountingRemedies =
  (service: Service): Offers =>
  ({ design }) => [
    ...grease(design),
    ...betterInsulator(design),
    ...spreader(design),
    ...movedParts(design, service),
    ...moreDevices(design),
  ];
