import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  divide,
  fromNumber,
  multiply,
  subtractShifted,
  toNumber,
} from '../../../src/engine/heat/rational.ts';

describe('exact fractions', () => {
  it('hold any double and give it back', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e30, max: 1e30, noNaN: true }), (value) => {
        fc.pre(Math.abs(value) > 1e-30 || value === 0);
        expect(Math.abs(toNumber(fromNumber(value)) - value)).toBeLessThanOrEqual(Math.abs(value) * 4e-16);
      }),
    );
  });

  it('divide without rounding', () => {
    expect(divide(fromNumber(1), fromNumber(-3))).toEqual({ top: -1n, bottom: 3n });
    expect(toNumber(divide(fromNumber(1), fromNumber(3)))).toBe(1 / 3);
  });

  it('multiply, add and cancel polynomials', () => {
    const x = [fromNumber(1), fromNumber(2)];
    expect(multiply(x, x).map(toNumber)).toEqual([1, 4, 4]);
    expect(add(x, [fromNumber(-1), fromNumber(-2)])).toEqual([]);
    // (1 + 4s + 4s²) - 2 s (1 + 2s) = 1 + 2s
    expect(subtractShifted(multiply(x, x), x, fromNumber(2)).map(toNumber)).toEqual([1, 2]);
  });
});
