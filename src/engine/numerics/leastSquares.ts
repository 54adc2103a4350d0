import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { linearSolve } from './linearSolve.ts';

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  /** Sum of squared residuals. */
  readonly sum: number;
  /** Inverse of J'J: times the variance of a residual it is the covariance of the parameters. */
  readonly covariance: readonly (readonly number[])[];
  readonly iterations: number;
}

const mostIterations = 60;
/** Step of the numerical derivative, in units of the parameter. */
const derivativeStep = 1e-5;

function sumOf(residuals: readonly number[]): number {
  return residuals.reduce((sum, r) => sum + r * r, 0);
}

/** Derivatives of all residuals by each parameter, one row a parameter. */
function derivatives(
  residualsOf: (parameters: readonly number[]) => readonly number[],
  parameters: readonly number[],
): number[][] {
  return parameters.map((value, k) => {
    const step = derivativeStep * Math.max(1, Math.abs(value));
    const at = (moved: number) => residualsOf(parameters.map((p, i) => (i === k ? moved : p)));
    const high = at(value + step);
    const low = at(value - step);
    return high.map((r, i) => (r - low[i]!) / (2 * step));
  });
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/**
 * Nonlinear least squares by the Levenberg-Marquardt method with numerical derivatives: for a handful of parameters of
 * order one (take logarithms of positive ones).
 *
 * @param residualsOf the same number of residuals for any parameters, all finite
 * @param start parameters near the answer
 * @returns failure `fitSingular` when the residuals cannot tell the parameters apart
 * @see J. Nocedal and S. Wright, Numerical Optimization (2006), section 10.3 (from memory)
 */
export function leastSquares(
  residualsOf: (parameters: readonly number[]) => readonly number[],
  start: readonly number[],
): Outcome<LeastSquaresFit> {
  let parameters = [...start];
  let residuals = residualsOf(parameters);
  let sum = sumOf(residuals);
  let damping = 1e-3;
  let iterations = 0;
  for (let settled = false; !settled && iterations < mostIterations; iterations++) {
    const rows = derivatives(residualsOf, parameters);
    const normal = rows.map((a) => rows.map((b) => dot(a, b)));
    const gradient = rows.map((a) => -dot(a, residuals));
    settled = true;
    for (let tries = 0; tries < 12; tries++) {
      const damped = normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value)));
      const step = linearSolve(damped, gradient);
      if (!step) return singular();
      const moved = parameters.map((p, i) => p + step[i]!);
      const next = residualsOf(moved);
      const nextSum = sumOf(next);
      if (nextSum < sum) {
        settled = sum - nextSum < 1e-12 * sum && Math.max(...step.map(Math.abs)) < 1e-6;
        parameters = moved;
        residuals = next;
        sum = nextSum;
        damping /= 5;
        break;
      }
      damping = Math.max(damping, 1e-9) * 5;
    }
  }
  const rows = derivatives(residualsOf, parameters);
  const normal = rows.map((a) => rows.map((b) => dot(a, b)));
  const columns = parameters.map((_, k) =>
    linearSolve(
      normal,
      parameters.map((__, i) => (i === k ? 1 : 0)),
    ),
  );
  if (columns.some((column) => column === null)) return singular();
  const covariance = columns.map((column) => column!);
  return success({ parameters, residuals, sum, covariance, iterations });
}

function singular(): Outcome<LeastSquaresFit> {
  return failure('fitSingular', 'The readings cannot tell the unknowns apart.');
}
