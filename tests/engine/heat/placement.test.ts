import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Part, suggestPlaces } from '../../../src/engine/heat/placement.ts';
import { plateSpread } from '../../../src/engine/heat/plateSpread.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const plate = { width: 0.16, length: 0.1, thickness: 0.006, conductivity: 200, film: 80 };
const part: Part = { width: 0.015, length: 0.01, power: 20, ownRise: 0 };
const rules = { edge: 0.005, apart: 0.005 };

describe('suggested places', () => {
  it('put one part in the middle', () => {
    const { places } = resultOf(suggestPlaces(plate, [part], { ...rules, present: [{ x: 0.03, y: 0.02 }] }));
    expect(places[0]!.x).toBeCloseTo(0.08, 3);
    expect(places[0]!.y).toBeCloseTo(0.05, 3);
  });

  it('put two alike parts at mirrored places about a quarter in', () => {
    const { places, rises } = resultOf(suggestPlaces(plate, [part, part], rules));
    const [a, b] = places as [{ x: number; y: number }, { x: number; y: number }];
    expect(Math.abs(a.x + b.x - 0.16)).toBeLessThan(0.002);
    expect(Math.abs(Math.min(a.x, b.x) - 0.04)).toBeLessThan(0.006);
    expect(Math.abs(a.y - 0.05)).toBeLessThan(0.002);
    expectClose(rises[0]!, rises[1]!, 0.01);
  });

  it('have the rises of the plate itself, and beat the present places and even rows', () => {
    const powers = fc.array(fc.double({ min: 5, max: 60, noNaN: true }), { minLength: 2, maxLength: 4 });
    fc.assert(
      fc.property(powers, (watts) => {
        const parts = watts.map((power) => ({ ...part, power }));
        const present = parts.map((_, i) => ({ x: 0.02 + 0.025 * i, y: 0.02 }));
        const found = resultOf(suggestPlaces(plate, parts, { ...rules, present }));
        const hottestAt = (places: readonly { x: number; y: number }[]) => {
          const sources = places.map((place) => ({ ...place, width: part.width, length: part.length }));
          const { meanMatrix } = resultOf(plateSpread(plate, sources));
          return Math.max(...meanMatrix.map((row) => row.reduce((sum, r, j) => sum + r * watts[j]!, 0)));
        };
        expectClose(hottestAt(found.places), found.hottest, 1e-9);
        expect(found.hottest).toBeLessThanOrEqual(hottestAt(present));
        const row = parts.map((_, i) => ({ x: (0.16 * (i + 0.5)) / parts.length, y: 0.05 }));
        expect(found.hottest).toBeLessThanOrEqual(hottestAt(row) * (1 + 1e-6));
        found.places.forEach((place, i) => {
          expect(place.x).toBeGreaterThan(part.width / 2 + rules.edge - 1e-9);
          expect(place.y).toBeLessThan(plate.length - part.length / 2 - rules.edge + 1e-9);
          for (const other of found.places.slice(0, i)) {
            const clear =
              Math.abs(place.x - other.x) >= part.width + rules.apart - 1e-9 ||
              Math.abs(place.y - other.y) >= part.length + rules.apart - 1e-9;
            expect(clear).toBe(true);
          }
        });
      }),
      { numRuns: 4 },
    );
  });

  it('give the part with the greatest own rise the best place', () => {
    const weak = { ...part, ownRise: 0 };
    const hot = { ...part, ownRise: 40 };
    const { places } = resultOf(suggestPlaces(plate, [weak, hot, weak], rules));
    const fromMiddle = (i: number) => Math.hypot(places[i]!.x - 0.08, places[i]!.y - 0.05);
    expect(fromMiddle(1)).toBeLessThan(Math.min(fromMiddle(0), fromMiddle(2)));
  });

  it('keep sixteen parts on the plate, apart and cooler than an even grid, within a small effort', () => {
    const many = Array.from({ length: 16 }, (_, k) => ({ ...part, power: k < 6 ? 24 : 4 }));
    const grid = many.map((_, k) => ({ x: 0.02 + 0.04 * (k % 4), y: 0.0125 + 0.025 * Math.floor(k / 4) }));
    const little = resultOf(suggestPlaces(plate, many, { ...rules, present: grid, effort: 5000 }));
    const none = resultOf(suggestPlaces(plate, many, { ...rules, present: grid, effort: 0 }));
    const usual = resultOf(suggestPlaces(plate, many, { ...rules, present: grid }));
    expect(little.hottest).toBeLessThan(none.hottest);
    expect(usual.hottest).toBeLessThanOrEqual(little.hottest * (1 + 1e-3));
    little.places.forEach(({ x, y }, i) => {
      expect(x).toBeGreaterThan(part.width / 2 + rules.edge - 1e-9);
      expect(y).toBeGreaterThan(part.length / 2 + rules.edge - 1e-9);
      for (const other of little.places.slice(0, i)) {
        const clearX = Math.abs(x - other.x) >= part.width + rules.apart - 1e-9;
        const clearY = Math.abs(y - other.y) >= part.length + rules.apart - 1e-9;
        expect(clearX || clearY).toBe(true);
      }
    });
  });

  it('are the same each time', () => {
    const parts = [part, { ...part, power: 35 }, part];
    expect(suggestPlaces(plate, parts, rules)).toEqual(suggestPlaces(plate, parts, rules));
  });

  it('are none when the parts do not fit', () => {
    const outcome = suggestPlaces(plate, [{ ...part, width: 0.2 }], rules);
    expect(outcome.ok ? '' : outcome.reason.key).toBe('partsDoNotFit');
  });
});
