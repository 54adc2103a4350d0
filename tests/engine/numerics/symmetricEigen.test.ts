import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symmetricEigen } from '../../../src/engine/numerics/symmetricEigen.ts';
import { expectClose } from '../closeTo.ts';

describe('eigenvalues of a symmetric matrix', () => {
  it('are those of the second difference: 2 - 2 cos(kπ/(n + 1))', () => {
    const n = 7;
    const matrix = Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (_, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
    );
    const values = [...symmetricEigen(matrix).values].sort((a, b) => a - b);
    values.forEach((value, k) => {
      expectClose(value, 2 - 2 * Math.cos(((k + 1) * Math.PI) / (n + 1)), 1e-13);
    });
  });

  it('keep the small ones of a graded matrix', () => {
    const values = [
      ...symmetricEigen([
        [1e10, 1],
        [1, 1e-6],
      ]).values,
    ].sort((a, b) => a - b);
    expectClose(values[0]!, 1e-6 - 1e-10, 1e-9);
  });

  it('rebuild the matrix with their vectors', () => {
    const entries = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 15, maxLength: 15 });
    fc.assert(
      fc.property(entries, (numbers) => {
        const n = 5;
        const at = (i: number, j: number) =>
          numbers[(Math.max(i, j) * (Math.max(i, j) + 1)) / 2 + Math.min(i, j)]!;
        const matrix = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => at(i, j)));
        const { values, vectors } = symmetricEigen(matrix);
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) {
            const rebuilt = values.reduce(
              (sum, value, k) => sum + value * vectors[i]![k]! * vectors[j]![k]!,
              0,
            );
            expect(Math.abs(rebuilt - matrix[i]![j]!)).toBeLessThan(1e-11);
          }
        }
      }),
    );
  });
});
