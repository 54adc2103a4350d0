import { describe, expect, it } from 'vitest';
import { finEfficiency, taperedThickness } from '../../../src/engine/heat/finEfficiency.ts';
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

describe('tapered fin', () => {
  // Triangular fin, exact: η = I1(2 mH)/(mH I0(2 mH)) (Cengel and Ghajar, table 3-3); I1/I0 at 0.6, 1, 2 from tables
  // (from memory): 0.28726, 0.44640, 0.69777.
  it.each([
    [0.3, 0.28726, 4e-4],
    [0.5, 0.4464, 2e-3],
    [1, 0.69777, 0.02],
  ])('is near the exact triangular fin at mH = %d', (mH, ratio, tolerance) => {
    const root = 2e-3;
    const film = ((mH / 0.03) ** 2 * 200 * root) / 2;
    const efficiency = finEfficiency(film, 200, taperedThickness(root, 0), 0.03);
    expectClose(efficiency, ratio / mH, tolerance);
  });

  it('lies between the mean and the root thickness', () => {
    expectClose(taperedThickness(0.002, 0.002), 0.002, 1e-12);
    expectClose(taperedThickness(0.003, 0), 0.002, 1e-9);
    expect(taperedThickness(0.003, 0.001)).toBeGreaterThan(0.002);
    expect(taperedThickness(0.003, 0.001)).toBeLessThan(0.003);
  });
});
