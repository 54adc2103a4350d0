import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ExposureRow } from '../../../shared/solution.ts';
import { exposurePlan, lengthFromAbove, plan } from '../../../src/page/drawings/exposurePlan.ts';

const bands = [
  '160 m',
  '80 m',
  '60 m',
  '40 m',
  '30 m',
  '20 m',
  '17 m',
  '15 m',
  '12 m',
  '10 m',
  '6 m',
] as const;
const rowsOf = (distances: readonly (number | null)[], chosen = 5) =>
  bands.map(
    (band, index): ExposureRow => ({
      band,
      frequency: 14.35e6,
      electric: 57,
      magnetic: 0.15,
      density: 8.7,
      averagePower: 100,
      distance: distances[index] ?? null,
      nearZone: 3.3,
      exemption: null,
      judgedAt: null,
      exemptFrom: 9,
      chosen: index === chosen,
    }),
  );
const dipole = [0.3, 0.6, 0.8, 1, 1.4, 2, 2.5, 3, 3.5, 4.1, 4.1];

describe('the antenna from above', () => {
  it('half a wave of wire, the width of a loop, a rod without length', () => {
    expect(lengthFromAbove('halfWaveWire', 14.35e6, 0.5)).toBeCloseTo(10.45, 2);
    expect(lengthFromAbove('smallLoop', 14.35e6, 0.5)).toBe(1);
    expect(lengthFromAbove('smallLoaded', 14.35e6, 0.5)).toBe(0);
  });

  it('is to scale: every contour runs its own distance round the antenna', () => {
    const found = exposurePlan(rowsOf(dipole), 1, null);
    expect(found.broken).toBe(false);
    expect((found.end - found.start) / found.scale).toBeCloseTo(1, 9);
    for (const contour of found.contours) {
      const radius = contour.distance * found.scale;
      const [x, y] = contour.from;
      expect(Math.hypot(x - found.end, y - plan.middle)).toBeCloseTo(radius, 9);
      expect(contour.path).toContain(`A${radius} ${radius}`);
      expect(contour.path.endsWith('z')).toBe(true);
    }
    expect(found.chosen?.name).toBe('20 m');
  });

  it('a wire longer than the sheet is broken off, its contours left open there', () => {
    const found = exposurePlan(rowsOf(dipole), 10.45, null);
    expect(found.broken).toBe(true);
    expect(found.start).toBe(plan.left);
    expect(found.contours.every((contour) => !contour.path.endsWith('z'))).toBe(true);
  });

  it('bands of one distance share a line', () => {
    const found = exposurePlan(rowsOf([0.2, 0.2, 0.2, ...dipole.slice(3)]), 0, null);
    expect(found.contours.map((contour) => contour.name)).toEqual([
      '160 to 60 m',
      '40 m',
      '30 m',
      '20 m',
      '17 m',
      '15 m',
      '12 m',
      '10, 6 m',
    ]);
  });

  it('bands that do not lie side by side are named one by one', () => {
    const found = exposurePlan(rowsOf([1.6, 2.1, 2.3, 2.5, 2.7, 2.8, 2.8, 2.8, 2.7, 2.7, 2.1]), 1, null);
    expect(found.contours.map((contour) => contour.name)).toEqual([
      '160 m',
      '80, 6 m',
      '60 m',
      '40 m',
      '30, 12, 10 m',
      '20 to 15 m',
    ]);
  });

  it('stays on the sheet with labels apart, for any distances', () => {
    const distance = fc.double({ min: 0.2, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(distance, { minLength: 11, maxLength: 11 }),
        fc.double({ min: 0, max: 160, noNaN: true }),
        fc.option(fc.double({ min: 0.05, max: 1000, noNaN: true })),
        (distances, length, nearest) => {
          const found = exposurePlan(rowsOf(distances), length, nearest);
          expect(found.start).toBeGreaterThanOrEqual(plan.left - 1e-9);
          expect(found.end).toBeLessThanOrEqual(plan.right);
          for (const contour of found.contours) {
            expect(contour.distance * found.scale).toBeLessThanOrEqual((plan.bottom - plan.top) / 2);
          }
          const heights = found.contours.map((contour) => contour.labelY);
          for (let i = 1; i < heights.length; i += 1) {
            expect((heights[i] ?? 0) - (heights[i - 1] ?? 0)).toBeGreaterThan(14);
          }
          if (found.person !== null) expect(found.person).toBeCloseTo((nearest ?? 0) * found.scale, 6);
          expect(found.bar * found.scale).toBeLessThanOrEqual(70.001);
        },
      ),
    );
  });
});
