import type { Design } from './design/schema.ts';
import { failure, type Note, note, type Outcome, success } from './outcome.ts';
import type { PlatePlace } from './solution.ts';

/** What warms the plate at one place: a device, or the converter or its parts when they sit on the same sink. */
export interface PlatePart {
  readonly key: 'device' | ConverterPartKey;
  /** "device 2", "the converter" */
  readonly label: string;
  /** Face through which the heat enters the plate: contact face, or the spreader under it. */
  readonly source: PlatePlace;
  /** The part's own contact face. */
  readonly face: PlatePlace;
}

/** A bought module, or the silicon of a converter designed from parts. */
export type ConverterPartKey = 'converter' | 'switch' | 'rectifier';

/** Where the design keeps the face and the place of each. */
export const converterFields = {
  converter: 'converterPart',
  switch: 'switchPart',
  rectifier: 'rectifierPart',
} as const;

interface Size {
  readonly width: number;
  readonly length: number;
}

/** Lengths may overhang or overlap by this much, m, for rounding. */
const slack = 1e-9;

/** Whether the converter warms the amplifier's plate. */
export function converterOnPlate(design: Design): boolean {
  return design.converter.kind !== 'none' && design.converter.heatTo === 'amplifierSink';
}

/** Of the contact face or of the spreader under it, m. */
function footprintOf({ device }: Design): Size {
  return device.spreader
    ? { width: device.spreaderWidth, length: device.spreaderLength }
    : { width: device.contactWidth, length: device.contactLength };
}

const millimetres = (length: number) => Number((length * 1000).toPrecision(3));

/**
 * Evenly in as few rows as the width allows, centred. x across the fins, y along them, m from the lower left corner.
 *
 * Fails with `devicesDoNotFit` when their faces take more than the plate.
 */
function evenPlaces(design: Design, size: Size): Outcome<readonly PlatePlace[]> {
  const { sink } = design;
  const { count } = design.device;
  const columns = Math.min(count, Math.floor(sink.width / size.width + slack));
  const rows = columns > 0 ? Math.ceil(count / columns) : 0;
  if (columns < 1 || rows * size.length > sink.length * (1 + slack)) {
    return failure(
      'devicesDoNotFit',
      `${count} devices of ${millimetres(size.width)} × ${millimetres(size.length)} mm do not fit on a plate of ${millimetres(sink.width)} × ${millimetres(sink.length)} mm.`,
      { count },
    );
  }
  return success(
    Array.from({ length: count }, (_, i) => {
      const row = Math.floor(i / columns);
      const inRow = Math.min(columns, count - row * columns);
      return {
        x: (sink.width * ((i % columns) + 0.5)) / inRow,
        y: (sink.length * (row + 0.5)) / rows,
        ...size,
      };
    }),
  );
}

function deviceSources(design: Design, size: Size): Outcome<readonly PlatePlace[]> {
  const { places, count } = design.device;
  if (places.length === 0) return evenPlaces(design, size);
  if (places.length === count) return success(places.map(({ x, y }) => ({ x, y, ...size })));
  const even = evenPlaces(design, size);
  if (!even.ok) return even;
  return success(even.value, [placesNote(places.length, count)]);
}

function placesNote(stored: number, count: number): Note {
  return note(
    'assumed',
    'placesForOtherCount',
    `Places are stored for ${stored} ${stored === 1 ? 'device' : 'devices'}, there are ${count}: they stand evenly until they are placed anew.`,
    { stored, count },
  );
}

/** Gap between two rectangles along the axis in which they are further apart, m; negative when they overlap. */
function gapBetween(a: PlatePlace, b: PlatePlace): number {
  return Math.max(
    Math.abs(a.x - b.x) - (a.width + b.width) / 2,
    Math.abs(a.y - b.y) - (a.length + b.length) / 2,
  );
}

/** Places looked at along each side for a part that has none. */
const looked = 25;

/** Where a part without a place is furthest from the others; the middle of the plate when it does not fit beside them. */
function roomiest(design: Design, size: Size, taken: readonly PlatePlace[]): PlatePlace {
  const { width, length } = design.sink;
  let best: PlatePlace = { x: width / 2, y: length / 2, ...size };
  let most = 0;
  for (let i = 0; i < looked; i += 1) {
    for (let j = 0; j < looked; j += 1) {
      const spot = {
        x: size.width / 2 + ((width - size.width) * i) / (looked - 1),
        y: size.length / 2 + ((length - size.length) * j) / (looked - 1),
        ...size,
      };
      const gap = Math.min(...taken.map((other) => gapBetween(spot, other)));
      if (gap <= most) continue;
      most = gap;
      best = spot;
    }
  }
  return best;
}

/** Parts of the converter on this plate, in their order. */
export function converterKeys(design: Design): readonly ConverterPartKey[] {
  if (!converterOnPlate(design)) return [];
  return design.converter.kind === 'designed' ? ['switch', 'rectifier'] : ['converter'];
}

function converterSource(design: Design, key: ConverterPartKey, taken: readonly PlatePlace[]): PlatePlace {
  const { x, y, width, length } = design.sink[converterFields[key]];
  if (x !== null && y !== null) return { x, y, width, length };
  return roomiest(design, { width, length }, taken);
}

function converterLabel(key: ConverterPartKey, phases: number): string {
  if (key === 'converter') return 'the converter';
  const name = key === 'switch' ? 'switch' : 'rectifier';
  if (phases === 1) return `the ${name}`;
  return key === 'switch' ? 'the switches' : 'the rectifiers';
}

/** How far a part reaches over the edge of the plate, m; 0 or less when it does not. */
function overhang(design: Design, { x, y, width, length }: PlatePlace): number {
  const { sink } = design;
  return Math.max(width / 2 - x, x + width / 2 - sink.width, length / 2 - y, y + length / 2 - sink.length);
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Names the first part that is off the plate or on another one. */
function faultOf(design: Design, parts: readonly PlatePart[]): Outcome<never> | null {
  for (const part of parts) {
    const over = overhang(design, part.source);
    if (over > slack) {
      return failure(
        'partOffPlate',
        `${capital(part.label)} reaches ${millimetres(over)} mm over the edge of the plate.`,
        { over },
      );
    }
  }
  for (let i = 1; i < parts.length; i += 1) {
    const other = parts.slice(0, i).find((each) => gapBetween(each.source, parts[i]!.source) < -slack);
    if (other)
      return failure('partsOverlap', `${capital(other.label)} and ${parts[i]!.label} overlap on the plate.`);
  }
  return null;
}

function spreaderFault({ device }: Design): Outcome<never> | null {
  const covers =
    device.spreaderWidth >= device.contactWidth - slack &&
    device.spreaderLength >= device.contactLength - slack;
  if (!device.spreader || covers) return null;
  return failure(
    'spreaderTooSmall',
    'The spreader plate is smaller than the contact face of the device on it.',
  );
}

/**
 * Where everything that warms the plate stands, right or wrong: each device, evenly placed or where the design says, and
 * the converter if its heat goes into this sink.
 *
 * Fails with `devicesDoNotFit` where there are no places and none can be given.
 */
export function partLayout(design: Design): Outcome<readonly PlatePart[]> {
  const { device } = design;
  const sources = deviceSources(design, footprintOf(design));
  if (!sources.ok) return sources;
  const parts: PlatePart[] = sources.value.map((source, i) => ({
    key: 'device',
    label: device.count === 1 ? 'the device' : `device ${i + 1}`,
    source,
    face: { ...source, width: device.contactWidth, length: device.contactLength },
  }));
  for (const key of converterKeys(design)) {
    const taken = parts.map((part) => part.source);
    const source = converterSource(design, key, taken);
    parts.push({ key, label: converterLabel(key, design.converter.parts.phases), source, face: source });
  }
  return success(parts, sources.notes);
}

/**
 * The same where nothing is wrong with it.
 *
 * Fails with `devicesDoNotFit`, `partOffPlate`, `partsOverlap` or `spreaderTooSmall`, naming the part.
 */
export function plateParts(design: Design): Outcome<readonly PlatePart[]> {
  const layout = partLayout(design);
  if (!layout.ok) return layout;
  return spreaderFault(design) ?? faultOf(design, layout.value) ?? layout;
}
