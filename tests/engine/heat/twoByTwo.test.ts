import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, multiply, spectrum } from '../../../src/engine/heat/twoByTwo.ts';
import { expectClose } from '../closeTo.ts';

describe('functions of a 2 by 2 matrix', () => {
  const entry = fc.double({ min: 0.01, max: 3, noNaN: true });

  it('have the exponential of the power series', () => {
    fc.assert(
      fc.property(entry, entry, entry, entry, (a, b, c, d) => {
        const matrix = [-a - b, b, c, -c - d] as const;
        let term = [1, 0.5];
        let sum = [1, 0.5];
        for (let k = 1; k < 60; k++) {
          const [x, y] = term as [number, number];
          term = [(matrix[0] * x + matrix[1] * y) / k, (matrix[2] * x + matrix[3] * y) / k];
          sum = [sum[0]! + term[0]!, sum[1]! + term[1]!];
        }
        const [x, y] = apply(Math.exp, spectrum(matrix, 1), 1, 0.5);
        expectClose(x, sum[0]!, 1e-9);
        expectClose(y, sum[1]!, 1e-9);
      }),
    );
  });

  it('take a multiple of the unit matrix as a number', () => {
    expect(apply(Math.exp, spectrum([-1, 0, 0, -1], 2), 3, 4)).toEqual([3 * Math.exp(-2), 4 * Math.exp(-2)]);
  });

  it('multiply', () => {
    expect(multiply([1, 2, 3, 4], [5, 6, 7, 8])).toEqual([19, 22, 43, 50]);
  });
});
