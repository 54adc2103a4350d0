import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { type PlatePart, plateParts } from '../../../shared/plateLayout.ts';
import { type FosterStage, ladderResistance, singleStage } from '../heat/deviceLadder.ts';
import type { HeatTable } from '../heat/heatTable.ts';
import { interfaceResistance, pressedShare } from '../heat/interface.ts';
import { metalOf } from '../heat/materials.ts';
import type { Plate } from '../heat/plateSeries.ts';
import { type PlateSpread, plateSpread } from '../heat/plateSpread.ts';
import type { Sink } from '../heat/sink.ts';
import { tabulateSink } from '../heat/sinkTable.ts';
import { spreaderResistance } from '../heat/spreader.ts';
import { keepLast } from '../numerics/keepLast.ts';
import { correctedSink } from './correctedSink.ts';
import { deviceStages } from './deviceStages.ts';

/** Rise at which ratings are quoted and the plate's film is taken for spreading, K. */
export const ratingRise = 50;

/** Specific heat of the copper flange or tab of a device, J/(kg K). Incropera, table A.1. */
const flangeSpecificHeat = 385;

/** From junction to plate, and the sink behind it, ready for any heat. */
export interface HeatPath {
  readonly sink: Sink;
  /** Heat against rise in air of the room's temperature. */
  readonly table: HeatTable;
  /** What stands on the plate: the devices first, then the converter or its parts if they are there. */
  readonly parts: readonly PlatePart[];
  /** Of the parts, in their order. */
  readonly spread: PlateSpread;
  /** Case to plate, one device, through pad and spreader plate, K/W. */
  readonly padResistance: number;
  /** Of it the spreader plate and the joint under it, K/W; 0 without one. */
  readonly spreaderResistance: number;
  /** Under the hottest device over the plate's mean, K per watt of one device, all devices equally hot, K/W. */
  readonly spreading: number;
  /** Part of the converter's heat into the plate that each of its parts there gives. */
  readonly converterShares: readonly number[];
  /** The same for each device, and per watt of the converter on the plate. */
  readonly rows: readonly PlateRow[];
  /** In which the plate under a device follows its heat, s. */
  readonly spreadingTime: number;
  /** Junction over case, one device, K/W. */
  readonly junctionToCase: number;
  /** Junction over plate's local temperature, one device: junction-to-case and pad. */
  readonly stages: readonly FosterStage[];
  readonly deviceCount: number;
  /** Heat the sink sheds at the rating rise, W. */
  readonly ratingHeat: number;
}

/** Plate under a device over the plate's mean, K/W: per watt of each device, and per watt of the converter on the plate. */
export interface PlateRow {
  readonly own: number;
  readonly converter: number;
}

/** Case to plate or spreader for one device, K/W. */
function padOf(design: Design): number {
  const { device } = design;
  if (device.pad === 'measured') return device.padResistance;
  const pressed = device.contactLength * device.contactWidth * pressedShare(device.package);
  return interfaceResistance(device.pad, pressed).typical;
}

function deviceRows(
  parts: readonly PlatePart[],
  spread: PlateSpread,
  converterShares: readonly number[],
): PlateRow[] {
  const devices = parts.length - converterShares.length;
  return spread.meanMatrix.slice(0, devices).map((row) => ({
    own: row.slice(0, devices).reduce((sum, value) => sum + value, 0),
    converter: converterShares.reduce((sum, share, k) => sum + share * row[devices + k]!, 0),
  }));
}

/** The same path with the heat of the converter on the plate divided among its parts. */
export function withConverterShares(path: HeatPath, converterShares: readonly number[]): HeatPath {
  if (converterShares.length !== path.converterShares.length) return path;
  return { ...path, converterShares, rows: deviceRows(path.parts, path.spread, converterShares) };
}

/** Plate under the parts of the converter over the plate's mean, K, in their order. Heats as in `localRise`. */
export function converterRises(path: HeatPath, deviceHeat: number, converterHeat: number): readonly number[] {
  const devices = path.parts.length - path.converterShares.length;
  return path.converterShares.map((_, k) =>
    path.spread.meanMatrix[devices + k]!.reduce((sum, perWatt, j) => {
      const heat = j < devices ? deviceHeat : path.converterShares[j - devices]! * converterHeat;
      return sum + perWatt * heat;
    }, 0),
  );
}

/** The plate under the hottest device over the plate's mean for a plate of another conductivity, W/(m K); in K/W. */
export function spreadingAt(design: Design, path: HeatPath, conductivity: number): Outcome<number> {
  const spread = plateSpread(
    { ...plateOf(design, path), conductivity },
    path.parts.map((part) => part.source),
  );
  if (!spread.ok) return spread;
  return success(greatestOwn(deviceRows(path.parts, spread.value, path.converterShares)));
}

function greatestOwn(rows: readonly PlateRow[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const row of rows) most = Math.max(most, row.own);
  return most;
}

/**
 * How much warmer the plate is under the hottest device than on the mean, K. Follows `spreading` where a path carries
 * another one than its rows.
 *
 * deviceHeat: into each device, W. converterHeat: of the converter into the plate at its place, W.
 */
export function localRise(path: HeatPath, deviceHeat: number, converterHeat: number): number {
  let rise = Number.NEGATIVE_INFINITY;
  for (const row of path.rows) rise = Math.max(rise, row.own * deviceHeat + row.converter * converterHeat);
  const own = greatestOwn(path.rows);
  return own > 0 ? (rise * path.spreading) / own : rise;
}

/** A disk of the same face on a thick body follows with about A/(2 π α), s (own choice, rather quick: cautious). */
function spreadingTimeOf(sink: Sink, { source }: PlatePart): number {
  const diffusivity = (sink.conductivity * sink.mass) / (sink.heatCapacity * sink.density);
  return (source.width * source.length) / (2 * Math.PI * diffusivity);
}

/** From the face of a device through its spreader plate into the sink, K/W; 0 without one. */
function spreaderOf({ device }: Design, spread: PlateSpread): Outcome<number> {
  if (!device.spreader) return success(0);
  const { spreaderWidth: width, spreaderLength: length } = device;
  return spreaderResistance(
    {
      width,
      length,
      thickness: device.spreaderThickness,
      metal: metalOf(device.spreaderMetal),
      joint: interfaceResistance(device.spreaderPad, width * length).typical,
      faceWidth: device.contactWidth,
      faceLength: device.contactLength,
    },
    spread.meanMatrix[0]![0]!,
  );
}

/** The plate as the spreading series takes it: the fins folded into an even film on its cooled face. */
export function plateOf(design: Design, { sink, ratingHeat }: Pick<HeatPath, 'sink' | 'ratingHeat'>): Plate {
  return {
    width: design.sink.width,
    length: design.sink.length,
    thickness: design.sink.baseThickness,
    conductivity: sink.conductivity,
    film: ratingHeat / (ratingRise * sink.plateArea),
  };
}

function ventNotes({ surroundings }: Design): readonly Note[] {
  if (surroundings.caseVents !== 'vented') return [];
  return [
    note(
      'assumed',
      'ventGuess',
      'What the vents carry off is a guess: nothing stands between them and no mesh covers them. Measure the air inside.',
      { area: surroundings.ventArea },
    ),
  ];
}

/**
 * Prepares the heat path of a design: sink, spreading in the plate, pad and device.
 *
 * pressure: Pa. running: false counts a fan as stopped. Fails when the fins do not fit on the plate, or the parts do not
 * fit on it or overlap.
 */
export function prepareHeatPath(design: Design, pressure: number, running = true): Outcome<HeatPath> {
  return keptPath({ design, pressure, running });
}

interface PathQuestion {
  readonly design: Design;
  readonly pressure: number;
  readonly running: boolean;
}

/** What a heat path hangs on; the final, the source, the wire and the service do not touch it (tested). */
function sectionsOf({ design, pressure, running }: PathQuestion) {
  const { sink, device, surroundings, bench, converter } = design;
  const { kind, heatTo } = converter;
  const { phases } = converter.parts;
  return { sink, device, surroundings, bench, kind, heatTo, phases, pressure, running };
}

/** With and without its fan, and before the last edit. */
const pathsKept = 3;
const keptPath = keepLast(findHeatPath, sectionsOf, pathsKept);

function findHeatPath({ design, pressure, running }: PathQuestion): Outcome<HeatPath> {
  const { device, surroundings } = design;
  const sink = correctedSink(design, pressure, running);
  if (!sink.ok) return sink;
  const junction = deviceStages(device);
  if (!junction.ok) return junction;
  const parts = plateParts(design);
  if (!parts.ok) return parts;
  const ambient = surroundings.ambient;
  const ratingHeat = sink.value.heat(ambient + ratingRise, ambient);
  if (!(ratingHeat > 0)) return failure('noCooling', 'This sink sheds no heat at all; check its dimensions.');
  const spread = plateSpread(
    plateOf(design, { sink: sink.value, ratingHeat }),
    parts.value.map((part) => part.source),
  );
  if (!spread.ok) return spread;
  const spreader = spreaderOf(design, spread.value);
  if (!spreader.ok) return spreader;
  const others = parts.value.length - device.count;
  const converterShares = Array.from({ length: others }, () => 1 / others);
  const rows = deviceRows(parts.value, spread.value, converterShares);
  const pad = padOf(design);
  const padResistance = pad + spreader.value;
  const padTime = padResistance * device.flangeMass * flangeSpecificHeat;
  return success(
    {
      sink: sink.value,
      table: tabulateSink(sink.value, ambient),
      parts: parts.value,
      spread: spread.value,
      padResistance,
      spreaderResistance: spreader.value,
      junctionToCase: ladderResistance(junction.value),
      spreading: greatestOwn(rows),
      converterShares,
      rows,
      spreadingTime: spreadingTimeOf(sink.value, parts.value[0]!),
      stages: [...junction.value, ...singleStage(padResistance, padTime > 0 ? padTime : null)],
      deviceCount: device.count,
      ratingHeat,
    },
    [...sink.notes, ...junction.notes, ...parts.notes, ...ventNotes(design)],
  );
}
