import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { finArrayHeat, prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import {
  crossPermeability,
  levelCylinder,
  type PinGeometry,
  pinHeat,
  preparePins,
} from '../../../src/engine/heat/pins.ts';
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

const plain = { pressure: standardPressure, filmFactor: 1, channelFactor: 1 };
const field: PinGeometry = {
  width: 0.1,
  length: 0.1,
  baseThickness: 0.005,
  section: 'round',
  pinThickness: 0.003,
  pinHeight: 0.025,
  columns: 10,
  rows: 10,
  conductivity: 200,
  emissivity: 0.8,
  backExposed: false,
};
const heatOf = (change: Partial<PinGeometry>, rise = 50) =>
  pinHeat(preparePins({ ...field, ...change }), 298.15 + rise, 298.15, 298.15, plain);

describe('one cylinder', () => {
  // Incropera and DeWitt, example 9.4 (from memory): level pipe of 0.1 m at 165 °C in 23 °C air, Ra 5.07e6, Nu 23.3.
  it('has the Nusselt number of the book', () => {
    expectClose(levelCylinder(5.073e6, 0.697), 23.3, 0.012);
  });
});

describe('flow across cylinders', () => {
  it('stops when the field closes and is easy when it is sparse', () => {
    expect(crossPermeability(1, 0.999)).toBeLessThan(1e-6);
    // φ → 0: K = d²/(32 φ)(ln 1/φ - 1).
    expectClose(crossPermeability(1, 1e-6), (13.8155 - 1) / 32e-6, 1e-4);
  });
});

describe('pin field', () => {
  const fields = fc.record({
    width: between(0.03, 0.4),
    length: between(0.03, 0.4),
    pinHeight: between(0.005, 0.1),
    columns: fc.integer({ min: 2, max: 40 }),
    rows: fc.integer({ min: 2, max: 40 }),
    share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    section: fc.constantFrom('round' as const, 'square' as const),
    emissivity: between(0.03, 0.95),
  });

  it('cools more the hotter and the blacker, and stays below both limits', () => {
    fc.assert(
      fc.property(fields, between(0.05, 300), ({ share, ...rest }, rise) => {
        const pitch = Math.min(rest.width / rest.columns, rest.length / rest.rows);
        const change = { ...rest, pinThickness: share * pitch };
        const heat = heatOf(change, rise);
        expect(Number.isFinite(heat.total)).toBe(true);
        expect(heatOf(change, rise * 1.05).total).toBeGreaterThan(heat.total);
        expect(heatOf({ ...change, emissivity: change.emissivity * 0.9 }, rise).radiation).toBeLessThan(
          heat.radiation,
        );
        expect(heat.convection).toBeLessThan(
          Math.min(heat.alone, heat.carried) + heatOf(change, rise).convection,
        );
        expect(heatOf(change, -rise / 10).total).toBeLessThan(0);
      }),
    );
    expect(heatOf({}, 0).total).toBe(0);
  });

  it('has an optimum number of pins', () => {
    const heats = Array.from({ length: 27 }, (_, i) => heatOf({ columns: i + 4, rows: i + 4 }).convection);
    const best = heats.indexOf(Math.max(...heats)) + 4;
    expect(best).toBeGreaterThan(6);
    expect(best).toBeLessThan(14);
  });

  // Cautious by construction: no more than plate fins of the same outline and thickness at their common best.
  it('does not beat plate fins of the same outline', () => {
    const fins = prepareFinArray({ ...field, finCount: 10, finHeight: 0.025, finThickness: 0.003 });
    expect(heatOf({}).total).toBeLessThan(finArrayHeat(fins, 348.15, 298.15, 298.15, plain).total);
  });

  it('is the bare panel when the pins shrink away', () => {
    const sparse = heatOf({ columns: 2, rows: 2, pinThickness: 1e-4, pinHeight: 1e-3 });
    const flat = heatOf({ columns: 2, rows: 2, pinThickness: 1e-4, pinHeight: 0.1 });
    expect(flat.carried).toBeGreaterThan(sparse.carried);
    expectClose(flat.alone, sparse.alone, 0.02);
  });

  it('has more heat with higher and better conducting pins', () => {
    expect(heatOf({ pinHeight: 0.03 }).total).toBeGreaterThan(heatOf({}).total);
    expect(heatOf({ conductivity: 100 }).total).toBeLessThan(heatOf({}).total);
    expect(heatOf({ backExposed: true }).total).toBeGreaterThan(heatOf({}).total);
  });
});
