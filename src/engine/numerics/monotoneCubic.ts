/** Piecewise cubic through given points that rises and falls only where the points do. */
export interface MonotoneCubic {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly slope: Float64Array;
}

/**
 * Slopes of a monotone piecewise cubic.
 *
 * @param points at least two, with rising x
 * @see F. N. Fritsch and R. E. Carlson, SIAM Journal on Numerical Analysis 17 (1980); harmonic-mean slopes of
 *   F. N. Fritsch and J. Butland (1984) (from memory)
 */
export function monotoneCubic(points: readonly (readonly [x: number, y: number])[]): MonotoneCubic {
  const count = points.length;
  const x = Float64Array.from(points, ([value]) => value);
  const y = Float64Array.from(points, ([, value]) => value);
  const chord = new Float64Array(count - 1);
  for (let i = 0; i < count - 1; i++) chord[i] = (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  const slope = new Float64Array(count);
  if (count === 2) {
    slope.fill(chord[0]!);
    return { x, y, slope };
  }
  for (let i = 1; i < count - 1; i++) {
    const before = chord[i - 1]!;
    const after = chord[i]!;
    if (before * after <= 0) continue;
    const left = x[i]! - x[i - 1]!;
    const right = x[i + 1]! - x[i]!;
    const weight = 2 * right + left;
    const other = right + 2 * left;
    slope[i] = (weight + other) / (weight / before + other / after);
  }
  slope[0] = endSlope(x[1]! - x[0]!, x[2]! - x[1]!, chord[0]!, chord[1]!);
  const last = count - 1;
  slope[last] = endSlope(
    x[last]! - x[last - 1]!,
    x[last - 1]! - x[last - 2]!,
    chord[last - 1]!,
    chord[last - 2]!,
  );
  return { x, y, slope };
}

/** Value of the cubic; beyond the ends it goes on as a straight line. */
export function evaluateCubic(cubic: MonotoneCubic, at: number): number {
  const { x, y, slope } = cubic;
  const last = x.length - 1;
  if (at <= x[0]!) return y[0]! + slope[0]! * (at - x[0]!);
  if (at >= x[last]!) return y[last]! + slope[last]! * (at - x[last]!);
  let i = 0;
  while (at > x[i + 1]!) i++;
  const width = x[i + 1]! - x[i]!;
  const t = (at - x[i]!) / width;
  const s = 1 - t;
  return (
    s * s * (1 + 2 * t) * y[i]! +
    t * t * (1 + 2 * s) * y[i + 1]! +
    width * s * t * (s * slope[i]! - t * slope[i + 1]!)
  );
}

/** Three-point slope at an end, cut so that the cubic stays monotone. */
function endSlope(near: number, far: number, chord: number, next: number): number {
  const slope = ((2 * near + far) * chord - near * next) / (near + far);
  if (slope * chord <= 0) return 0;
  return chord * next <= 0 || Math.abs(slope) > 3 * Math.abs(chord)
    ? Math.sign(chord) * Math.min(Math.abs(slope), 3 * Math.abs(chord))
    : slope;
}
