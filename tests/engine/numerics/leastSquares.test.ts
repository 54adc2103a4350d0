import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../src/engine/numerics/leastSquares.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

describe('nonlinear least squares', () => {
  // NIST Statistical Reference Datasets, Misra1a (from memory): b1 238.94212918, b2 5.5015643181e-4, residual sum 0.12455138894.
  it('has the certified answer of Misra1a', () => {
    const y = [
      10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78,
    ];
    const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
    const residualsOf = ([a, b]: readonly number[]) =>
      x.map((at, i) => Math.exp(a!) * -Math.expm1(-Math.exp(b!) * at) - y[i]!);
    const fit = resultOf(leastSquares(residualsOf, [Math.log(500), Math.log(1e-4)]));
    expectClose(Math.exp(fit.parameters[0]!), 238.94212918, 1e-6);
    expectClose(Math.exp(fit.parameters[1]!), 5.5015643181e-4, 1e-6);
    expectClose(fit.sum, 0.12455138894, 1e-8);
  });

  it('has the covariance of a straight line', () => {
    const xs = [0, 1, 2, 3, 4];
    const fit = resultOf(leastSquares(([a, b]) => xs.map((x) => a! + b! * x - 2 * x - 1), [0, 0]));
    expectClose(fit.parameters[0]!, 1, 1e-9);
    expectClose(fit.parameters[1]!, 2, 1e-9);
    // (J'J)^-1 for five even points: [[3/5, -1/5], [-1/5, 1/10]].
    expectClose(fit.covariance[0]![0]!, 0.6, 1e-6);
    expectClose(fit.covariance[0]![1]!, -0.2, 1e-6);
    expectClose(fit.covariance[1]![1]!, 0.1, 1e-6);
  });

  it('says when parameters cannot be told apart', () => {
    expect(leastSquares(([a, b]) => [a! + b! - 1, 2 * (a! + b!) - 2], [0, 0]).ok).toBe(false);
  });
});
