import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ClosedCase,
  caseAirHeat,
  caseHeatCapacity,
  outerWallHeat,
  steadyCaseAir,
  tabulateCase,
} from '../../../src/engine/heat/caseAir.ts';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

const box: ClosedCase = { width: 0.25, depth: 0.2, height: 0.1, emissivity: 0.85, bottomFree: true };

describe('closed case', () => {
  // Cengel, electronics cooling chapter (from memory): box 15 cm high, 30 x 40 cm, emissivity 0.85, wall 65 °C, room
  // 35 °C, on a stand: 112.7 W, with its simplified relations on 4A/P; radiation 64.5 W. The full ones give 5 % more.
  it('is near the book', () => {
    const heat = outerWallHeat(
      { width: 0.3, depth: 0.4, height: 0.15, emissivity: 0.85, bottomFree: false },
      338.15,
      308.15,
      standardPressure,
    );
    expectClose(heat.radiation, 64.5, 2e-3);
    expectClose(heat.sides, 33.6, 0.03);
    expectClose(heat.total, 112.7, 0.06);
    expectClose(heat.total, cases.box.textbook_like.full.Q, 1e-9);
  });

  it.each(cases.box.rows)('agrees with the reference at $Q W', (row) => {
    const painted = steadyCaseAir(box, row.Q, 298.15, standardPressure);
    expect(Math.abs(painted.wall - row.T_wall_eps085)).toBeLessThan(1e-5);
    expect(Math.abs(painted.air - row.T_air_eps085)).toBeLessThan(1e-5);
    const bare = steadyCaseAir({ ...box, emissivity: 0.1 }, row.Q, 298.15, standardPressure);
    expect(Math.abs(bare.wall - row.T_wall_eps01)).toBeLessThan(1e-5);
    expect(Math.abs(bare.air - row.T_air_eps01)).toBeLessThan(1e-5);
  });

  const boxes = fc.record({
    width: between(0.03, 2),
    depth: between(0.03, 2),
    height: between(0.02, 2),
    emissivity: between(0.05, 0.95),
    bottomFree: fc.boolean(),
  });

  it('gives off what is put in, at any size', () => {
    fc.assert(
      fc.property(boxes, between(0.01, 500), (any, heat) => {
        const { wall, air } = steadyCaseAir(any, heat, 300, standardPressure);
        expect(air).toBeGreaterThan(wall);
        expect(wall).toBeGreaterThan(300);
        expectClose(caseAirHeat(any, air, 300, standardPressure), heat, 1e-4);
      }),
    );
    expect(steadyCaseAir(box, 0, 300, standardPressure)).toEqual({ wall: 300, air: 300 });
  });

  it('loses more when hotter, blacker or larger', () => {
    fc.assert(
      fc.property(boxes, between(1, 150), (any, rise) => {
        const heat = (of: ClosedCase, dT: number) => caseAirHeat(of, 300 + dT, 300, standardPressure);
        expect(heat(any, 1.05 * rise)).toBeGreaterThan(heat(any, rise));
        expect(heat({ ...any, emissivity: any.emissivity + 0.04 }, rise)).toBeGreaterThan(heat(any, rise));
        expect(heat({ ...any, width: 1.2 * any.width }, rise)).toBeGreaterThan(heat(any, rise));
      }),
    );
  });

  it('is read from a table within 1 %', () => {
    const table = tabulateCase(box, 300, standardPressure);
    fc.assert(
      fc.property(between(0.1, 300), (rise) => {
        expectClose(table.heat(rise), caseAirHeat(box, 300 + rise, 300, standardPressure), 0.01);
      }),
    );
  });

  it('holds heat in air and sheet', () => {
    // 5 litres of air at 1.18 kg/m³ hold 5.9 J/K; 0.19 m² of 1 mm aluminium 462 J/K.
    expectClose(caseHeatCapacity(box, 0.001, 2.43e6, 298.15, standardPressure), 5.96 + 461.7, 2e-3);
  });
});
