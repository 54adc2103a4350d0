import { describe, expect, it } from 'vitest';
import { finEfficiency } from '../../../src/engine/heat/finEfficiency.ts';
import { expectClose } from '../closeTo.ts';

describe('fin efficiency', () => {
  // Cengel and Ghajar, table 3-5: tanh mL = 0.762, 0.964, 0.995 at mL = 1, 2, 3.
  it.each([
    [1, 0.762],
    [2, 0.964],
    [3, 0.995],
  ])('follows the table at mL = %d', (mL, tanh) => {
    // h = 100, k t = 2e2 · 1e-3 · … : m = (2h/(k t))^(1/2) = 1000/m with k t = 2e-4.
    expectClose(finEfficiency(100, 0.2, 1e-3, mL / 1000), tanh / mL, 1e-3);
  });

  it('tends to 1 for short or cold fins', () => {
    expect(finEfficiency(0, 200, 0.002, 0.025)).toBe(1);
    expectClose(finEfficiency(10, 200, 0.002, 1e-6), 1, 1e-9);
  });
});
