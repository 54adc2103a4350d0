import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearSolve } from '../../../src/engine/numerics/linearSolve.ts';

describe('linear system', () => {
  it('is solved, and needs pivoting', () => {
    const [x, y] = linearSolve(
      [
        [0, 2],
        [3, 1],
      ],
      [4, 5],
    )!;
    expect(x).toBeCloseTo(1, 14);
    expect(y).toBeCloseTo(2, 14);
  });

  it('has small residuals', () => {
    const entries = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 20, maxLength: 20 });
    fc.assert(
      fc.property(entries, (numbers) => {
        const matrix = [0, 1, 2, 3].map((i) =>
          [0, 1, 2, 3].map((j) => numbers[4 * i + j]! + (i === j ? 12 : 0)),
        );
        const right = numbers.slice(16);
        const x = linearSolve(matrix, right)!;
        matrix.forEach((row, i) => {
          const left = row.reduce((sum, value, j) => sum + value * x[j]!, 0);
          expect(Math.abs(left - right[i]!)).toBeLessThan(1e-11);
        });
      }),
    );
  });

  it('has no answer when singular', () => {
    expect(
      linearSolve(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toBeNull();
  });
});
