import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { type FosterStage, ladderResistance, singleStage } from '../heat/deviceLadder.ts';
import type { HeatTable } from '../heat/heatTable.ts';
import { interfaceResistance, pressedShare } from '../heat/interface.ts';
import type { PlateSource } from '../heat/plateSeries.ts';
import { type PlateSpread, plateSpread } from '../heat/plateSpread.ts';
import type { Sink } from '../heat/sink.ts';
import { tabulateSink } from '../heat/sinkTable.ts';
import { correctedSink } from './correctedSink.ts';
import { devicePlaces } from './devicePlaces.ts';
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
  readonly places: readonly PlateSource[];
  readonly spread: PlateSpread;
  /** Case to plate, one device, K/W. */
  readonly padResistance: number;
  /** Under the hottest device over the plate's mean, K per watt of one device, all devices equally hot, K/W. */
  readonly spreading: number;
  /** Junction over case, one device, K/W. */
  readonly junctionToCase: number;
  /** Junction over plate's local temperature, one device: junction-to-case and pad. */
  readonly stages: readonly FosterStage[];
  readonly deviceCount: number;
  /** Heat the sink sheds at the rating rise, W. */
  readonly ratingHeat: number;
}

/** Case to plate for one device, K/W. */
function padOf(design: Design): number {
  const { device } = design;
  if (device.pad === 'measured') return device.padResistance;
  const pressed = device.contactLength * device.contactWidth * pressedShare(device.package);
  return interfaceResistance(device.pad, pressed).typical;
}

/** The greatest local rise over the plate's mean when all devices give one watt each. */
function hottestSpread(spread: PlateSpread): number {
  const sums = spread.meanMatrix.map((row) => row.reduce((sum, value) => sum + value, 0));
  return Math.max(...sums);
}

/**
 * Prepares the heat path of a design: sink, spreading in the plate, pad and device.
 *
 * pressure: Pa. running: false counts a fan as stopped. Fails when the fins do not fit on the plate or the devices do not fit beside each other.
 */
export function prepareHeatPath(design: Design, pressure: number, running = true): Outcome<HeatPath> {
  const { device, surroundings } = design;
  const sink = correctedSink(design, pressure, running);
  if (!sink.ok) return sink;
  const junction = deviceStages(device);
  if (!junction.ok) return junction;
  const places = devicePlaces(design);
  if (!places.ok) return places;
  const ambient = surroundings.ambient;
  const ratingHeat = sink.value.heat(ambient + ratingRise, ambient);
  if (!(ratingHeat > 0)) return failure('noCooling', 'This sink sheds no heat at all; check its dimensions.');
  const spread = plateSpread(
    {
      width: design.sink.width,
      length: design.sink.length,
      thickness: design.sink.baseThickness,
      conductivity: sink.value.conductivity,
      film: ratingHeat / (ratingRise * sink.value.plateArea),
    },
    places.value,
  );
  if (!spread.ok) return spread;
  const padResistance = padOf(design);
  const padTime = padResistance * device.flangeMass * flangeSpecificHeat;
  return success(
    {
      sink: sink.value,
      table: tabulateSink(sink.value, ambient),
      places: places.value,
      spread: spread.value,
      padResistance,
      junctionToCase: ladderResistance(junction.value),
      spreading: hottestSpread(spread.value),
      stages: [...junction.value, ...singleStage(padResistance, padTime > 0 ? padTime : null)],
      deviceCount: device.count,
      ratingHeat,
    },
    [...sink.notes, ...junction.notes],
  );
}
