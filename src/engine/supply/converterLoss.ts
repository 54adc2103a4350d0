import { type Note, note } from '../../../shared/outcome.ts';

/** An efficiency that was measured or printed. */
export interface EfficiencyPoint {
  /** V */
  readonly inputVoltage: number;
  /** A */
  readonly inputCurrent: number;
  /** Output power over input power. */
  readonly efficiency: number;
}

/** Loss against input current at a fixed output voltage: fixed + proportional · I + square · I², W. */
export interface ConverterLoss {
  /** W */
  readonly fixed: number;
  /** W/A, never negative */
  readonly proportional: number;
  /** W/A², never negative */
  readonly square: number;
}

export interface FittedLoss {
  readonly loss: ConverterLoss;
  readonly notes: readonly Note[];
}

interface LossPoint {
  readonly current: number;
  readonly loss: number;
  readonly power: number;
}

/** Currents closer than this share are one point: two of them cannot tell a from b. */
const sameCurrent = 1e-3;

/** A fit that misses an entered efficiency by more than this is told. Own choice. */
const toldMismatch = 0.005;

/**
 * Loss curve of a bought converter from one to three efficiency points and its no-load power.
 *
 * Ploss = P0 + a I + b I², I the input current, P0 the no-load power.
 * Two points give a and b exactly, three by least squares; with one point the loss above P0 is scaled as I² and the
 * curve is marked as an estimate. a and b are kept from going negative, so the loss is positive and rises with the
 * current at every current: where the points ask for something else the curve is changed and a note says how.
 *
 * Never fails: one point suffices. Own choice of form.
 */
export function fitConverterLoss(points: readonly EfficiencyPoint[], noLoadPower: number): FittedLoss {
  const merged = mergePoints(points.map(lossPoint));
  const first = merged[0];
  if (!first) return { loss: { fixed: noLoadPower, proportional: 0, square: 0 }, notes: [onePointNote()] };
  const fitted = merged.length === 1 ? fromOnePoint(first, noLoadPower) : fromSeveral(merged, noLoadPower);
  const miss = greatestMismatch(fitted.loss, merged);
  if (miss <= toldMismatch) return fitted;
  return { loss: fitted.loss, notes: [...fitted.notes, mismatchNote(miss)] };
}

/** Loss at an input current, W. */
export function converterLossAt(loss: ConverterLoss, inputCurrent: number): number {
  return loss.fixed + inputCurrent * (loss.proportional + inputCurrent * loss.square);
}

function lossPoint(point: EfficiencyPoint): LossPoint {
  const power = point.inputVoltage * point.inputCurrent;
  return { current: point.inputCurrent, loss: power * (1 - point.efficiency), power };
}

function mergePoints(points: readonly LossPoint[]): LossPoint[] {
  const sorted = [...points].sort((first, second) => first.current - second.current);
  const merged: LossPoint[] = [];
  for (const point of sorted) {
    const last = merged.at(-1);
    if (last && point.current - last.current <= sameCurrent * point.current) {
      if (point.loss > last.loss) merged[merged.length - 1] = point;
    } else merged.push(point);
  }
  return merged;
}

function fromOnePoint(point: LossPoint, noLoadPower: number): FittedLoss {
  const above = point.loss - noLoadPower;
  if (above >= 0) {
    const square = above / (point.current * point.current);
    return { loss: { fixed: noLoadPower, proportional: 0, square }, notes: [onePointNote()] };
  }
  return {
    loss: { fixed: noLoadPower, proportional: 0, square: 0 },
    notes: [onePointNote(), belowNoLoadNote()],
  };
}

function fromSeveral(points: readonly LossPoint[], noLoadPower: number): FittedLoss {
  const { proportional, square } = leastSquares(points, noLoadPower);
  if (proportional >= 0 && square >= 0) {
    return { loss: { fixed: noLoadPower, proportional, square }, notes: [] };
  }
  if (square < 0) return flatterThanLine(points, noLoadPower);
  // Steeper than I²: keep I² and pass through the worst point, so that no entered loss is undercut.
  let steepest = 0;
  for (const point of points) {
    steepest = Math.max(steepest, (point.loss - noLoadPower) / (point.current * point.current));
  }
  return { loss: { fixed: noLoadPower, proportional: 0, square: steepest }, notes: [clippedNote()] };
}

/** Loss that grows slower than the current: the fixed part in work is larger than the no-load power. */
function flatterThanLine(points: readonly LossPoint[], noLoadPower: number): FittedLoss {
  let count = 0;
  let sumX = 0;
  let sumY = 0;
  let sumXX = 0;
  let sumXY = 0;
  let greatest = noLoadPower;
  for (const point of points) {
    const x = point.current * point.current;
    count += 1;
    sumX += x;
    sumY += point.loss;
    sumXX += x * x;
    sumXY += x * point.loss;
    greatest = Math.max(greatest, point.loss);
  }
  const square = (count * sumXY - sumX * sumY) / (count * sumXX - sumX * sumX);
  const fixed = (sumY - square * sumX) / count;
  if (square > 0 && fixed > 0) {
    return { loss: { fixed, proportional: 0, square }, notes: [fixedPartNote(fixed, noLoadPower)] };
  }
  return {
    loss: { fixed: greatest, proportional: 0, square: 0 },
    notes: [fixedPartNote(greatest, noLoadPower)],
  };
}

/** Least squares of loss − P0 = a I + b I² over the points. */
function leastSquares(points: readonly LossPoint[], fixed: number): { proportional: number; square: number } {
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let t1 = 0;
  let t2 = 0;
  for (const { current, loss } of points) {
    const above = loss - fixed;
    s2 += current ** 2;
    s3 += current ** 3;
    s4 += current ** 4;
    t1 += current * above;
    t2 += current ** 2 * above;
  }
  const determinant = s2 * s4 - s3 * s3;
  return { proportional: (t1 * s4 - t2 * s3) / determinant, square: (s2 * t2 - s3 * t1) / determinant };
}

function greatestMismatch(loss: ConverterLoss, points: readonly LossPoint[]): number {
  let greatest = 0;
  for (const point of points) {
    greatest = Math.max(greatest, Math.abs(converterLossAt(loss, point.current) - point.loss) / point.power);
  }
  return greatest;
}

function onePointNote(): Note {
  return note(
    'assumed',
    'oneEfficiencyPoint',
    'With one efficiency point the loss is scaled as the square of the input current: an estimate. A second point, at light load, makes it a curve.',
  );
}

function belowNoLoadNote(): Note {
  return note(
    'assumed',
    'efficiencyAboveNoLoad',
    'The efficiency point promises less loss than the module takes with no load: the no-load power is used as its loss at every current. Check both figures.',
  );
}

function clippedNote(): Note {
  return note(
    'assumed',
    'converterLossClipped',
    'The efficiency points rise more steeply than the square of the current: the loss curve is laid through the worst of them, the others come out with more loss than entered.',
  );
}

function fixedPartNote(fixed: number, noLoadPower: number): Note {
  return note(
    'assumed',
    'converterFixedLoss',
    `The efficiency points need a fixed loss of ${fixed.toPrecision(2)} W in work, while the no-load power is ${noLoadPower.toPrecision(2)} W: the fixed part from the points is used.`,
    { fixed, noLoadPower },
  );
}

function mismatchNote(miss: number): Note {
  return note(
    'information',
    'converterFitMisses',
    `The loss curve misses an entered efficiency by ${(100 * miss).toPrecision(2)} points.`,
    { mismatch: miss },
  );
}
