import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plate, PlateSource } from '../../../src/engine/heat/plateSeries.ts';
import { plateSpread } from '../../../src/engine/heat/plateSpread.ts';
import cases from '../cases/plate.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

type PlateCase = (typeof cases.cases)[number];

function read(row: PlateCase) {
  const plate: Plate = {
    width: row.plate.a,
    length: row.plate.b,
    thickness: row.plate.t,
    conductivity: row.plate.k,
    film: row.plate.h,
  };
  const sources: PlateSource[] = row.sources.map((s) => ({ x: s.xc, y: s.yc, width: s.c, length: s.d }));
  return { spread: resultOf(plateSpread(plate, sources)), powers: row.sources.map((s) => s.Q) };
}

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

describe('plate with sources', () => {
  it.each(cases.cases)('has the mean rises of the long series and of finite volumes: $name', (row) => {
    const { spread, powers } = read(row);
    spread.meanMatrix.forEach((line, i) => {
      line.forEach((value, j) => {
        expectClose(value + spread.uniform, row.matrix[i]![j]!, 5e-5);
      });
      const mean = total(line.map((value, j) => (value + spread.uniform) * powers[j]!));
      expectClose(mean, row.mean[i]!, 5e-5);
      expectClose(mean, row.richardson[i]!, 7e-4);
    });
  });

  it.each(cases.cases)('has the rises at points: $name', (row) => {
    const { spread, powers } = read(row);
    for (const point of row.points) {
      const rise = spread.pointRise(point.x, point.y, powers) + spread.uniform * total(powers);
      expectClose(rise, point.theta_K, 5e-4);
    }
  });

  // Own computation with 800 terms: 120 x 80 x 6 mm, k 200, h 60, source 20 x 15 mm, centred and at quarter length.
  it.each([
    [0.06, 1.9357],
    [0.03, 2.0076],
  ])('grows off centre: x %d m', (x, resistance) => {
    const plate = { width: 0.12, length: 0.08, thickness: 0.006, conductivity: 200, film: 60 };
    const spread = resultOf(plateSpread(plate, [{ x, y: 0.04, width: 0.02, length: 0.015 }]));
    expectClose(spread.meanMatrix[0]![0]! + spread.uniform, resistance, 1e-4);
  });

  // Lee, Song, Au and Moran (1995), closed form for a disk on a disk (psi from memory), as a check of size: 3 % of the total.
  it('is near the closed form for a centred source', () => {
    const radius = Math.sqrt((0.02 * 0.015) / Math.PI);
    const outer = Math.sqrt((0.12 * 0.08) / Math.PI);
    const ratio = radius / outer;
    for (const thickness of [0.004, 0.008, 0.01]) {
      for (const film of [30, 60, 400]) {
        const tau = thickness / outer;
        const biot = (film * outer) / 200;
        const lambda = Math.PI + 1 / (Math.sqrt(Math.PI) * ratio);
        const phi =
          (Math.tanh(lambda * tau) + lambda / biot) / (1 + (lambda / biot) * Math.tanh(lambda * tau));
        const spreading = (0.5 * (1 - ratio) ** 1.5 * phi) / (200 * Math.sqrt(0.02 * 0.015));
        const total = spreading + thickness / (200 * 0.0096) + 1 / (film * 0.0096);
        const plate = { width: 0.12, length: 0.08, thickness, conductivity: 200, film };
        const spread = resultOf(plateSpread(plate, [{ x: 0.06, y: 0.04, width: 0.02, length: 0.015 }]));
        expectClose(spread.meanMatrix[0]![0]! + spread.uniform, total, 0.03);
      }
    }
  });

  // Cengel and Ghajar, example 3-5: a plate heated all over is the one-dimensional wall, here 10 mm of copper, h 25.
  it('is the plain wall when the source covers the plate', () => {
    const plate = { width: 0.1, length: 0.1, thickness: 0.01, conductivity: 386, film: 25 };
    const spread = resultOf(plateSpread(plate, [{ x: 0.05, y: 0.05, width: 0.1, length: 0.1 }]));
    expectClose(spread.meanMatrix[0]![0]!, 0.01 / 386 / 0.01, 1e-9);
    expectClose(spread.uniform, 4, 1e-12);
  });

  const plates = fc.record({
    width: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    length: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    thickness: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
    conductivity: fc.double({ min: 90, max: 401, noNaN: true }),
    film: fc.double({ min: 5, max: 500, noNaN: true }),
  });
  const places = fc.record({
    x: fc.double({ min: 0, max: 1, noNaN: true }),
    y: fc.double({ min: 0, max: 1, noNaN: true }),
    width: fc.double({ min: 0.008, max: 0.03, noNaN: true }),
    length: fc.double({ min: 0.008, max: 0.03, noNaN: true }),
  });
  const within = (plate: Plate, place: PlateSource): PlateSource => ({
    ...place,
    x: place.width / 2 + place.x * (plate.width - place.width),
    y: place.length / 2 + place.y * (plate.length - place.length),
  });

  it('is reciprocal, hottest at itself, and the map balances', () => {
    fc.assert(
      fc.property(plates, places, places, (plate, a, b) => {
        const sources = [within(plate, a), within(plate, b)];
        const spread = resultOf(plateSpread(plate, sources));
        const [[own, cross], [mirror]] = spread.meanMatrix as [[number, number], [number, number]];
        expectClose(cross, mirror, 1e-12);
        expect(own + spread.meanMatrix[1]![1]!).toBeGreaterThan(2 * cross - 1e-9);
        // All wave terms average out over cell centres: the map's mean is the drop through the plate.
        const field = spread.field([10, 5], 40, 30);
        const mean = field.reduce((sum, value) => sum + value, 0) / field.length;
        const through = (15 * plate.thickness) / (plate.conductivity * plate.width * plate.length);
        expect(Math.abs(mean - through)).toBeLessThan(0.05 * Math.max(...field));
      }),
      { numRuns: 20 },
    );
  });

  it('is symmetric under mirroring the plate', () => {
    fc.assert(
      fc.property(plates, places, (plate, place) => {
        const source = within(plate, place);
        const one = resultOf(plateSpread(plate, [source]));
        const other = resultOf(plateSpread(plate, [{ ...source, x: plate.width - source.x }]));
        expectClose(one.meanMatrix[0]![0]!, other.meanMatrix[0]![0]!, 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it('draws the map that the points have', () => {
    const { spread, powers } = read(cases.cases[1]!);
    const field = spread.field(powers, 16, 10);
    expectClose(field[3 * 16 + 5]!, spread.pointRise((5.5 / 16) * 0.16, (3.5 / 10) * 0.1, powers), 1e-9);
    expectClose(spread.centreRise(0, 1), spread.pointRise(0.05, 0.05, [0, 1]), 1e-9);
  });

  it('gives every cell its own point, in odd and even numbers of cells', () => {
    const { spread, powers } = read(cases.cases[1]!);
    for (const [columns, rows] of [
      [7, 5],
      [8, 4],
    ] as const) {
      const field = spread.field(powers, columns, rows);
      field.forEach((rise, k) => {
        const x = (((k % columns) + 0.5) / columns) * 0.16;
        const y = ((Math.floor(k / columns) + 0.5) / rows) * 0.1;
        expectClose(rise, spread.pointRise(x, y, powers), 1e-9);
      });
    }
  });

  it('refuses a part over the edge', () => {
    const plate = { width: 0.1, length: 0.1, thickness: 0.005, conductivity: 200, film: 50 };
    const good = { x: 0.05, y: 0.05, width: 0.02, length: 0.02 };
    const outcome = plateSpread(plate, [good, { ...good, x: 0.095 }]);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.reason.sentence).toBe('Part 2 reaches over the edge of the plate.');
  });
});
