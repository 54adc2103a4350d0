/** 2 by 2 matrix, row by row. */
export type Matrix = readonly [number, number, number, number];

/** A matrix with its two real eigenvalues. */
export interface Spectrum {
  readonly low: number;
  readonly high: number;
  readonly matrix: Matrix;
}

/**
 * Eigenvalues of `factor` times a matrix whose off-diagonal product is not negative, as that of two bodies that exchange
 * heat: both are real.
 */
export function spectrum(matrix: Matrix, factor: number): Spectrum {
  const [a, b, c, d] = matrix;
  const middle = (a + d) / 2;
  const half = (a - d) / 2;
  const spread = Math.sqrt(Math.max(half * half + b * c, 0));
  return {
    low: factor * (middle - spread),
    high: factor * (middle + spread),
    matrix: [factor * a, factor * b, factor * c, factor * d],
  };
}

/** φ(M) v for a scalar function φ: φ(z1) v + [φ(z2) - φ(z1)]/(z2 - z1) (M - z1) v. */
export function apply(
  phi: (z: number) => number,
  of: Spectrum,
  x: number,
  y: number,
): readonly [number, number] {
  const { low, high, matrix } = of;
  const first = phi(low);
  const gap = high - low;
  const ratio = gap > 1e-12 * Math.abs(low) ? (phi(high) - first) / gap : 0;
  return [
    first * x + ratio * (matrix[0] * x + matrix[1] * y - low * x),
    first * y + ratio * (matrix[2] * x + matrix[3] * y - low * y),
  ];
}

export function multiply(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
  ];
}
