import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerRoot, risingRoot } from '../../../src/engine/heat/monotoneRoot.ts';

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

describe('root of a ratio that is nearly a power', () => {
  it('is found within a step for exponents near and far from the usual, bent upwards or down', () => {
    const root = fc.double({ min: 1e-3, max: 900, noNaN: true });
    const exponent = fc.double({ min: 0.8, max: 4, noNaN: true });
    const bend = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(root, exponent, bend, (at, power, share) => {
        const law = (x: number) => x ** power + share * x + 0.1 * share * x ** 2;
        const found = powerRoot((x) => law(x) / law(at), 10, 1e-4, 1000);
        expect(Math.abs(found - at)).toBeLessThan(1e-4);
      }),
    );
  });

  it('ends at the widest where the ratio stays below 1', () => {
    expect(powerRoot((x) => x / 500, 10, 1e-4, 100)).toBeCloseTo(100, 9);
    expect(powerRoot((x) => x / 5, 10, 1e-4, 3)).toBeCloseTo(3, 9);
  });

  it('does not follow a root down to nothing', () => {
    const found = powerRoot((x) => (1000 + x - 1000) / 1e-20, 10, 1e-4, 100);
    expect(found).toBeGreaterThan(0);
    expect(found).toBeLessThan(1.001e-4);
  });
});
