import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { risingRoot } from '../../../src/engine/heat/monotoneRoot.ts';

describe('root of a rising function', () => {
  it('is found for steep, flat and kinked functions', () => {
    const root = fc.double({ min: 0.001, max: 900, noNaN: true });
    const power = fc.double({ min: 0.2, max: 8, noNaN: true });
    fc.assert(
      fc.property(root, power, (at, exponent) => {
        const rising = (x: number) => x ** exponent - at ** exponent + (x > at ? 5 * (x - at) : 0);
        expect(Math.abs(risingRoot(rising, 0, 3, 1e-9, 1000) - at)).toBeLessThan(2e-9);
      }),
    );
  });

  it('stays inside its range', () => {
    expect(risingRoot((x) => x - 5, 7, 1, 1e-9, 100)).toBe(7);
    expect(risingRoot((x) => x - 500, 0, 1, 1e-9, 100)).toBe(100);
  });
});
