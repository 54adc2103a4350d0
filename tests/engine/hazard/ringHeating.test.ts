import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  redHeatRise,
  ringBurnTime,
  ringHeating,
  ringMetals,
  ringSection,
} from '../../../src/engine/hazard/ringHeating.ts';
import { expectClose } from '../closeTo.ts';

describe('a metal ring across the supply (metal data from memory)', () => {
  it.each([
    ['gold', 89, 0.01],
    ['goldAlloy', 600, 0.05],
    ['stainlessSteel', 1900, 0.02],
  ] as const)('%s, 3 mm² at 300 A: about %i K/s', (metal, rate, tolerance) => {
    expectClose(ringHeating(metal, 300, 3e-6), rate, tolerance);
  });

  it('heats with the square of the current and the inverse square of its section', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ringMetals),
        fc.double({ min: 10, max: 3000, noNaN: true }),
        (metal, current) => {
          const base = ringHeating(metal, current, 3e-6);
          return (
            Math.abs(ringHeating(metal, 2 * current, 3e-6) / base - 4) < 1e-9 &&
            Math.abs(ringHeating(metal, current, 6e-6) / base - 0.25) < 1e-9
          );
        },
      ),
    );
  });

  it('burns long before it can be taken off', () => {
    for (const metal of ringMetals) expect(ringBurnTime(metal, 600, 3e-6, 35)).toBeLessThan(0.5);
  });

  it('a ring of low-carat gold across 600 A glows in tenths of a second', () => {
    const seconds = ringBurnTime('goldAlloy', 600, ringSection, redHeatRise);
    expect(seconds).toBeGreaterThan(0.1);
    expect(seconds).toBeLessThan(0.5);
  });
});
