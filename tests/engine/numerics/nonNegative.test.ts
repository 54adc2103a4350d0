import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nonNegativeLeastSquares } from '../../../src/engine/numerics/nonNegative.ts';

const product = (columns: number[][], x: number[]) =>
  columns[0]!.map((_, row) => columns.reduce((sum, column, k) => sum + column[row]! * x[k]!, 0));

describe('least squares without negative unknowns', () => {
  it('finds the exact answer when it is positive', () => {
    const columns = [
      [1, 1, 1, 1],
      [0, 1, 2, 3],
    ];
    const [a, b] = nonNegativeLeastSquares(columns, product(columns, [2, 0.5]));
    expect(a).toBeCloseTo(2, 12);
    expect(b).toBeCloseTo(0.5, 12);
  });

  it('leaves out what would be negative', () => {
    // A falling line: the best rising one is flat, at the mean.
    const x = nonNegativeLeastSquares(
      [
        [1, 1, 1],
        [0, 1, 2],
      ],
      [3, 2, 1],
    );
    expect(x[0]).toBeCloseTo(2, 12);
    expect(x[1]).toBe(0);
  });

  it('meets the conditions of the optimum: no unknown negative, no gradient upwards', () => {
    const column = fc.array(fc.double({ min: 0.01, max: 3, noNaN: true }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(column, { minLength: 1, maxLength: 8 }), column, (columns, right) => {
        const x = nonNegativeLeastSquares(columns, right);
        const rest = product(columns, x).map((value, i) => right[i]! - value);
        columns.forEach((a, k) => {
          const gradient = a.reduce((sum, value, i) => sum + value * rest[i]!, 0);
          expect(x[k]).toBeGreaterThanOrEqual(0);
          expect(gradient).toBeLessThan(1e-6);
          if (x[k]! > 1e-9) expect(Math.abs(gradient)).toBeLessThan(1e-6);
        });
      }),
    );
  });
});
