import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import table from '../../../reference-data/ampacity.json';
import {
  ambientFactor,
  ampacity,
  ampacityTables,
  tabulatedAmpacity,
} from '../../../src/engine/supply/ampacity.ts';
import { conductorBySize, wireSizesByArea } from '../../../src/engine/supply/conductor.ts';
import { expectClose } from '../closeTo.ts';

const kelvin = (celsius: number) => celsius + 273.15;

describe('ambient factor', () => {
  // 33 CFR 183.425 table 5, note 1: conductors in a 50 °C space.
  it.each(
    table.boat.hotSpace.insulation.map(
      (column, index) => [column, table.boat.hotSpace.factor[index] ?? 0] as const,
    ),
  )('%i °C insulation in a 50 °C space: printed factor %f', (column, factor) => {
    // The printed 1.00 of the 200 °C column is a rounding up that the formula does not share.
    const tolerance = column === 200 ? 0.07 : 0.007;
    expect(Math.abs(ambientFactor(kelvin(column), kelvin(50), kelvin(30)) - factor)).toBeLessThanOrEqual(
      tolerance,
    );
  });

  // NFPA 70, printed factors of the 75 °C column, at the upper end of each range.
  it.each([
    [35, 0.94],
    [40, 0.88],
    [45, 0.82],
    [50, 0.75],
    [55, 0.67],
    [60, 0.58],
  ])('75 °C insulation at %i °C: printed factor %f', (air, factor) => {
    expect(Math.abs(ambientFactor(kelvin(75), kelvin(air), kelvin(30)) - factor)).toBeLessThanOrEqual(0.005);
  });

  it('leaves nothing when the air is as warm as the insulation may be', () => {
    expect(ambientFactor(kelvin(60), kelvin(60), kelvin(30))).toBe(0);
    expect(ambientFactor(kelvin(60), kelvin(70), kelvin(30))).toBe(0);
  });
});

describe('table of 33 CFR 183.425', () => {
  it.each([
    [18, 60, 10],
    [14, 105, 35],
    [10, 80, 50],
    [2, 75, 170],
  ])('AWG %i at %i °C carries %i A', (gauge, column, current) => {
    expect(tabulatedAmpacity(ampacityTables.boat, gauge, kelvin(column))?.current).toBe(current);
  });

  it('takes the next lower column and knows no column below 60 °C', () => {
    expect(tabulatedAmpacity(ampacityTables.boat, 14, kelvin(100))?.column).toBe(kelvin(90));
    expect(tabulatedAmpacity(ampacityTables.boat, 14, kelvin(50))).toBeNull();
    expect(tabulatedAmpacity(ampacityTables.boat, 15, kelvin(90))).toBeNull();
  });

  it('keeps the columns and rows in order, so that no cell is mistyped far', () => {
    const rows = Object.values(table.boat.rows);
    for (const row of rows) expect(row).toEqual([...row].sort((first, second) => first - second));
    for (let index = 0; index < table.boat.insulation.length; index++) {
      const column = rows.map((row) => row[index] ?? 0);
      const byGauge = Object.keys(table.boat.rows).map(Number);
      const sorted = byGauge
        .map((gauge, at) => [gauge, column[at] ?? 0] as const)
        .sort((a, b) => b[0] - a[0]);
      for (let at = 1; at < sorted.length; at++) {
        expect(sorted[at]?.[1]).toBeGreaterThanOrEqual(sorted[at - 1]?.[1] ?? 0);
      }
    }
  });
});

describe('allowed current of the supply pair', () => {
  it('is the smaller of table and model, with 0.87 for the pair', () => {
    const found = ampacity(conductorBySize('AWG 14'), kelvin(75), kelvin(30));
    expectClose(found.table ?? 0, 20 * 0.87, 1e-12);
    expect(found.limit).toBe(Math.min(found.table ?? 0, found.model));
  });

  it('of a metric size is the model alone, and says so', () => {
    const found = ampacity(conductorBySize('2.5 mm2'), kelvin(75), kelvin(30));
    expect(found.table).toBeNull();
    expect(found.limit).toBe(found.model);
    expect(found.notes.map((one) => one.key)).toEqual(['ampacityByModel']);
  });

  it('uses the printed factor from three wires on', () => {
    const wire = conductorBySize('AWG 10');
    const three = ampacity(wire, kelvin(60), kelvin(30), 3);
    expectClose(three.table ?? 0, 40 * 0.7, 1e-12);
  });

  it('is zero with a reason when the air is too warm', () => {
    const found = ampacity(conductorBySize('AWG 10'), kelvin(45), kelvin(50));
    expect(found.limit).toBe(0);
    expect(found.notes[0]?.key).toBe('ambientAboveInsulation');
  });

  it('never rises with ambient or falls with a better insulation, and is finite over the whole range', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...wireSizesByArea),
        fc.double({ min: 313.15, max: 473.15, noNaN: true }),
        fc.double({ min: 233.15, max: 343.15, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (name, limit, air, more) => {
          const wire = conductorBySize(name);
          const base = ampacity(wire, limit, air).limit;
          const warmer = ampacity(wire, limit, air + more).limit;
          return Number.isFinite(base) && base >= 0 && warmer <= base + 1e-3;
        },
      ),
    );
  });
});
