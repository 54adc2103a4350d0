import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gravity } from '../../../src/engine/heat/constants.ts';
import {
  horizontalFaceDown,
  horizontalFaceUp,
  horizontalLength,
} from '../../../src/engine/heat/horizontalPlate.ts';
import { expectClose } from '../closeTo.ts';

describe('horizontal plate', () => {
  // Cengel and Ghajar, example 9-2: 0.6 m square at 90 °C in 30 °C air, Ra 1.195e7 on area over perimeter; Nu down 15.87.
  it('has the Nusselt number of the book facing down', () => {
    const length = horizontalLength(0.6, 0.6);
    const rayleigh = ((gravity / 333.15) * 60 * length ** 3 * 0.7202) / 1.896e-5 ** 2;
    expectClose(rayleigh, 1.195e7, 2e-3);
    expectClose(horizontalFaceDown(rayleigh), 15.87, 1e-3);
  });

  // ASHRAE Handbook Fundamentals, chapter 4, eq. T9.5 to T9.8, well inside each range.
  it.each([
    [50, 0.96, 1 / 6],
    [1000, 0.59, 1 / 4],
    [1e5, 0.54, 1 / 4],
    [1e6, 0.54, 1 / 4],
    [1e8, 0.15, 1 / 3],
  ])('follows the printed piece at Ra %d', (rayleigh, factor, exponent) => {
    expectClose(horizontalFaceUp(rayleigh), factor * rayleigh ** exponent, 1e-9);
  });

  it('joins the pieces without a fall and without a jump', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 21, noNaN: true }), (log) => {
        const rayleigh = Math.exp(log);
        const next = horizontalFaceUp(rayleigh * 1.0001);
        expect(next).toBeGreaterThanOrEqual(horizontalFaceUp(rayleigh));
        expect(next).toBeLessThan(horizontalFaceUp(rayleigh) * 1.0001);
      }),
    );
  });
});
