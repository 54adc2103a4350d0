import type { ConverterLoss } from './converterLoss.ts';

/** A computed working point of a converter at its input. */
export interface LossSample {
  /** Input current, A. */
  readonly current: number;
  /** W */
  readonly loss: number;
}

export interface LossLaw {
  readonly loss: ConverterLoss;
  /** Greatest miss at the samples, W. */
  readonly error: number;
}

/**
 * A loss curve P0 + a I + b I² through computed points, for the inner loops of a coupled solve.
 *
 * Exact at the last sample (the peak of the envelope); the rest by least squares. b is kept from going negative, and
 * P0 too, so that the current stays a convex function of voltage and power; a may be negative. samples: currents
 * rising, at least one. Own choice of form; the miss is told in `error`.
 */
export function fitLossLaw(samples: readonly LossSample[]): LossLaw {
  const last = samples[samples.length - 1];
  if (!last) return { loss: { fixed: 0, proportional: 0, square: 0 }, error: 0 };
  const candidates = [quadratic(samples, last), straight(samples, last), squareOnly(samples, last)];
  let best: LossLaw | null = null;
  // A hair below nothing is rounding.
  const slack = 1e-9 * Math.max(...samples.map((one) => one.loss));
  for (const found of candidates) {
    if (found.square < 0 || found.fixed < -slack) continue;
    const loss = { ...found, fixed: Math.max(0, found.fixed) };
    const error = missOf(loss, samples);
    if (!best || error < best.error) best = { loss, error };
  }
  if (best) return best;
  const constant = { fixed: last.loss, proportional: 0, square: 0 };
  return { loss: constant, error: missOf(constant, samples) };
}

/** Least squares of loss − loss_last = a (I − I_last) + b (I² − I_last²). */
function quadratic(samples: readonly LossSample[], last: LossSample): ConverterLoss {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  for (const { current, loss } of samples) {
    const x = current - last.current;
    const y = current * current - last.current * last.current;
    const z = loss - last.loss;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const determinant = xx * yy - xy * xy;
  if (!(Math.abs(determinant) > 1e-12 * xx * yy)) return { fixed: -1, proportional: 0, square: 0 };
  return through(last, (xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant);
}

function straight(samples: readonly LossSample[], last: LossSample): ConverterLoss {
  let xx = 0;
  let xz = 0;
  for (const { current, loss } of samples) {
    xx += (current - last.current) ** 2;
    xz += (current - last.current) * (loss - last.loss);
  }
  return through(last, xx > 0 ? xz / xx : 0, 0);
}

/** No-load loss kept, the rest as I². */
function squareOnly(samples: readonly LossSample[], last: LossSample): ConverterLoss {
  const first = samples[0]!;
  const fixed = Math.min(first.loss, last.loss);
  const square = last.current > 0 ? (last.loss - fixed) / (last.current * last.current) : 0;
  return { fixed, proportional: 0, square };
}

function through(last: LossSample, proportional: number, square: number): ConverterLoss {
  const fixed = last.loss - last.current * (proportional + last.current * square);
  return { fixed, proportional, square };
}

function missOf({ fixed, proportional, square }: ConverterLoss, samples: readonly LossSample[]): number {
  let miss = 0;
  for (const { current, loss } of samples) {
    miss = Math.max(miss, Math.abs(fixed + current * (proportional + current * square) - loss));
  }
  return miss;
}
