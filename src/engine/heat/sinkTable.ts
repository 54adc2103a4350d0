import { type HeatTable, tabulateHeat } from './heatTable.ts';
import {
  abscissa,
  abscissaSpan,
  highestRise,
  isNeeded,
  lowestAbscissa,
  lowestRise,
  margin,
  type RiseNodes,
  tabulateNodes,
} from './riseNodes.ts';
import type { Sink } from './sink.ts';

/**
 * Heat of a sink against the rise of its plate, for one temperature of air and surroundings, as a fast table.
 *
 * @param air K
 */
export function tabulateSink(sink: Pick<Sink, 'branches'>, air: number): HeatTable {
  return tabulateHeat(sink.branches.map((law) => (rise: number) => law(air + rise, air)));
}

/** What a look-up over rise and air finds. */
export interface SinkReading {
  /** W */
  heat: number;
  /** ∂Q/∂(rise) at constant air, W/K. */
  riseSlope: number;
  /** ∂Q/∂(air) at constant rise, W/K. */
  airSlope: number;
}

/** Heat of a sink against rise and air temperature: for a sink that breathes the air of a closed case. */
export interface SinkAirTable {
  /** Reads heat and slopes at a rise of the plate over the air, K, and an air temperature, K, into `reading`. */
  readonly read: (rise: number, air: number, reading: SinkReading) => void;
  /** Heat alone, W. */
  readonly heat: (rise: number, air: number) => number;
}

/** Distance between tabulated air temperatures, K. */
const airStep = 25;
/** Nodes in the rise; less than for one air temperature, since the join over air is no better. */
const riseNodeCount = 40;
/** Air temperatures a reading is made of. */
const rowsRead = 4;

/**
 * Tables at even air temperatures, joined by cubic interpolation between them; within 3e-4 of the heat from 1 to 300 K
 * (tested). Air outside the range reads the end of the range. Odd in the rise.
 *
 * Near the change from one channel correlation to the other the tables of neighbouring air temperatures change over at
 * different rises; each correlation is therefore interpolated over air on its own and the smaller taken after.
 *
 * @param airLow K, coolest air
 * @param airHigh K, warmest air
 */
export function tabulateSinkOverAir(
  sink: Pick<Sink, 'branches'>,
  airLow: number,
  airHigh: number,
): SinkAirTable {
  const intervals = Math.max(rowsRead - 1, Math.ceil((airHigh - airLow) / airStep));
  const step = Math.max((airHigh - airLow) / intervals, 1);
  const rows = Array.from({ length: intervals + 1 }, (_, k) => {
    const air = airLow + k * step;
    return sink.branches.map((law) => tabulateNodes((rise) => law(air + rise, air), riseNodeCount));
  });
  const branches = sink.branches
    .map((_, b) => rows.map((row) => row[b]!))
    .filter((_, b) => rows.some((row) => isNeeded(row[b]!, row)));

  const read = (rise: number, air: number, reading: SinkReading): void => {
    const size = Math.min(Math.max(Math.abs(rise), lowestRise), highestRise);
    const position = Math.min(Math.max((air - airLow) / step, 0), intervals);
    const first = Math.min(Math.max(Math.floor(position) - 1, 0), intervals - rowsRead + 1);
    readBranches(branches, size, first, position - first, reading);
    finishReading(Math.abs(rise), size, reading);
    if (rise < 0) {
      reading.heat = -reading.heat;
      reading.airSlope = -reading.airSlope;
    }
    reading.airSlope /= step;
  };
  const own: SinkReading = { heat: 0, riseSlope: 0, airSlope: 0 };
  return {
    read,
    heat: (rise, air) => {
      read(rise, air, own);
      return own.heat;
    },
  };
}

/** From the conductance, its slope in ln(rise) and its slope over air to the heat, also outside the tabulated rises. */
function finishReading(rise: number, size: number, reading: SinkReading): void {
  const conductance = reading.heat;
  if (rise < lowestRise) {
    reading.heat = conductance * rise;
    reading.riseSlope = conductance;
    reading.airSlope *= rise;
    return;
  }
  reading.riseSlope += conductance;
  reading.heat = conductance * size + reading.riseSlope * (rise - size);
  reading.airSlope *= size;
}

/** Conductance (as `heat`), its slope in ln(rise) and per row of air; of the branch whose conductance is the smallest. */
function readBranches(
  branches: readonly (readonly RiseNodes[])[],
  size: number,
  first: number,
  s: number,
  reading: SinkReading,
): void {
  const perNode = (riseNodeCount - 1) / abscissaSpan;
  const x = abscissa(size);
  const place = (x - lowestAbscissa) * perNode + margin;
  const i = Math.min(Math.max(Math.floor(place), margin), margin + riseNodeCount - 2);
  const t = place - i;
  // Hermite weights in the rise and their derivatives.
  const right = t * t * (3 - 2 * t);
  const leftSlope = t * (1 - t) * (1 - t);
  const rightSlope = t * t * (t - 1);
  const rightD = 6 * t * (1 - t);
  const leftSlopeD = (1 - t) * (1 - 3 * t);
  const rightSlopeD = t * (3 * t - 2);

  // Lagrange weights of the four rows at s = 0 … 3 and their derivatives.
  const s1 = s - 1;
  const s2 = s - 2;
  const s3 = s - 3;
  const w0 = (s1 * s2 * s3) / -6;
  const w1 = (s * s2 * s3) / 2;
  const w2 = (s * s1 * s3) / -2;
  const w3 = (s * s1 * s2) / 6;
  const d0 = (s * (3 * s - 12) + 11) / -6;
  const d1 = (s * (3 * s - 10) + 6) / 2;
  const d2 = (s * (3 * s - 8) + 3) / -2;
  const d3 = (s * (3 * s - 6) + 2) / 6;

  let least = Number.POSITIVE_INFINITY;
  for (let b = 0; b < branches.length; b++) {
    const tables = branches[b]!;
    let value = 0;
    let inRise = 0;
    let inAir = 0;
    for (let k = 0; k < rowsRead; k++) {
      const { values, slopes } = tables[first + k]!;
      const weight = k === 0 ? w0 : k === 1 ? w1 : k === 2 ? w2 : w3;
      const slopeWeight = k === 0 ? d0 : k === 1 ? d1 : k === 2 ? d2 : d3;
      const low = values[i]!;
      const step = values[i + 1]! - low;
      const slopeLow = slopes[i]!;
      const slopeHigh = slopes[i + 1]!;
      const at = low + right * step + leftSlope * slopeLow + rightSlope * slopeHigh;
      value += weight * at;
      inRise += weight * (rightD * step + leftSlopeD * slopeLow + rightSlopeD * slopeHigh);
      inAir += slopeWeight * at;
    }
    if (value >= least) continue;
    least = value;
    reading.heat = value;
    // d/d ln(rise) of a function of rise^(1/4).
    reading.riseSlope = (x * inRise * perNode) / 4;
    reading.airSlope = inAir;
  }
}
