import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lawAt, tabulateHeat } from '../../../src/engine/heat/heatTable.ts';
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

describe('heat table', () => {
  it('is exact for a constant and for a laminar conductance', () => {
    const linear = tabulateHeat([(rise) => 2 * rise]);
    const laminar = tabulateHeat([(rise) => 0.5 * rise ** 1.25]);
    fc.assert(
      fc.property(between(0.0501, 399), (rise) => {
        expectClose(linear.heat(rise), 2 * rise, 1e-12);
        expectClose(linear.slope(rise), 2, 1e-12);
        expectClose(laminar.heat(rise), 0.5 * rise ** 1.25, 1e-12);
        expectClose(laminar.slope(rise), 0.625 * rise ** 0.25, 1e-10);
      }),
    );
  });

  it('keeps the kink between two laws', () => {
    const table = tabulateHeat([(rise) => rise, (rise) => 0.1 * rise ** 1.5]);
    fc.assert(
      fc.property(between(1, 400), (rise) => {
        expectClose(table.heat(rise), Math.min(rise, 0.1 * rise ** 1.5), 1e-5);
      }),
    );
    expectClose(table.slope(99), 0.15 * Math.sqrt(99), 1e-4);
    expectClose(table.slope(101), 1, 1e-9);
  });

  it('continues straight beyond its ends', () => {
    const table = tabulateHeat([(rise) => rise ** 1.25]);
    expectClose(table.heat(0.02), 0.4 * table.heat(0.05), 1e-12);
    expectClose(table.heat(500) - table.heat(450), 50 * table.slope(400), 1e-9);
    expect(table.rise(0)).toBe(0);
  });

  it('gives heat and slope at once as it gives them apart', () => {
    const table = tabulateHeat([(rise) => 2 * rise ** 1.25, (rise) => 3 * rise]);
    const point = { heat: 0, slope: 0 };
    for (const rise of [-450, -80, -0.01, 0, 0.03, 0.05, 1, 5, 60, 400, 700]) {
      lawAt(table, rise, point);
      expect(point).toEqual({ heat: table.heat(rise), slope: table.slope(rise) });
      lawAt({ heat: table.heat, slope: table.slope }, rise, point);
      expect(point).toEqual({ heat: table.heat(rise), slope: table.slope(rise) });
    }
  });

  it('is coarser with fewer nodes, not wrong', () => {
    const law = (rise: number) => rise ** 1.25 + 1e-8 * rise ** 4;
    expectClose(tabulateHeat([law], 12).heat(123), law(123), 1e-3);
    expectClose(tabulateHeat([law]).heat(123), law(123), 1e-6);
  });
});
