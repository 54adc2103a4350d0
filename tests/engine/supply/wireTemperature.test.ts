import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import ampacity from '../../../reference-data/ampacity.json';
import type { WireSize } from '../../../shared/design/supplyChoices.ts';
import { conductorBySize, copperFactor, wireSizesByArea } from '../../../src/engine/supply/conductor.ts';
import {
  cylinderNusselt,
  modelAmpacity,
  togetherFactor,
  wireTemperature,
} from '../../../src/engine/supply/wireTemperature.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const size = fc.constantFrom(...wireSizesByArea);
const ambient = fc.double({ min: 233, max: 343, noNaN: true });

describe('convection from a horizontal cylinder (Churchill and Chu 1975)', () => {
  // Incropera, Introduction to Heat Transfer, 6th ed., example 9.2: Ra = 0.69 · 2.63e9, Pr = 0.69, through an open heat-transfer library.
  it('gives the Nusselt number of the textbook example', () => {
    expectClose(cylinderNusselt(0.69 * 2.63e9, 0.69), 139.13493970073597, 1e-9);
  });
});

describe('temperature of a single wire in still air at 25 °C', () => {
  it.each(cases.wire_temp.map((row) => [row.mm2, row.I, row.Tc, row.mV_per_m_pair] as const))(
    '%f mm² at %f A: %f °C (independent implementation)',
    (mm2, current, celsius, dropPerMetre) => {
      const wire = conductorBySize(`${mm2} mm2` as WireSize);
      const found = resultOf(wireTemperature(wire, current, { ambient: 298.15 }));
      // The reference takes a constant specific heat of air; the difference stays below 0.1 % of the rise.
      expectClose(found.conductor - 298.15, celsius - 25, 2e-3);
      const drop = 2 * wire.resistancePerLength * copperFactor(found.conductor) * current * 1000;
      expectClose(drop, dropPerMetre, 1e-3);
    },
  );

  it('balances heat made and heat given off', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.1, max: 1, noNaN: true }), ambient, (name, share, air) => {
        const wire = conductorBySize(name);
        const current = share * modelAmpacity(wire, 420, { ambient: air });
        const found = resultOf(wireTemperature(wire, current, { ambient: air }));
        const made = current ** 2 * wire.resistancePerLength * copperFactor(found.conductor);
        return Math.abs(made - found.heatPerLength) <= 1e-4 * made + 1e-5;
      }),
    );
  });

  it('is the inverse of the modelled ampacity', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 350, max: 470, noNaN: true }), ambient, (name, limit, air) => {
        const wire = conductorBySize(name);
        const current = modelAmpacity(wire, limit, { ambient: air, together: 2 });
        const found = resultOf(wireTemperature(wire, current, { ambient: air, together: 2 }));
        return Math.abs(found.conductor - limit) < 0.01;
      }),
    );
  });

  it('never falls with more current, and is lower on thicker wire of one kind', () => {
    const thin = conductorBySize('AWG 14');
    const thick = conductorBySize('AWG 12');
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 1.01, max: 2, noNaN: true }),
        (current, more) => {
          const base = resultOf(wireTemperature(thin, current, { ambient: 298.15 })).conductor;
          const hotter = resultOf(wireTemperature(thin, current * more, { ambient: 298.15 })).conductor;
          const cooler = resultOf(wireTemperature(thick, current, { ambient: 298.15 })).conductor;
          return hotter > base && cooler < base;
        },
      ),
    );
  });

  it('thin air makes it hotter', () => {
    const wire = conductorBySize('2.5 mm2');
    const low = resultOf(wireTemperature(wire, 25, { ambient: 298.15 })).conductor;
    const high = resultOf(wireTemperature(wire, 25, { ambient: 298.15, pressure: 70000 })).conductor;
    expect(high).toBeGreaterThan(low + 1);
    expect(high).toBeLessThan(low + 4);
  });

  it('names the current at which the copper would melt', () => {
    const outcome = wireTemperature(conductorBySize('AWG 20'), 500, { ambient: 298.15 });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.reason.key).toBe('wireMelts');
  });

  it('without current is that of the air', () => {
    expect(resultOf(wireTemperature(conductorBySize('AWG 20'), 0, { ambient: 300 })).conductor).toBe(300);
  });
});

describe('modelled ampacity against published tables', () => {
  const ratios = (
    table: { ambient: number; insulation: number[]; rows: Record<string, (number | null)[]> },
    columns: number[],
  ) => {
    const found: number[] = [];
    for (const [number, row] of Object.entries(table.rows)) {
      const name = `AWG ${number}` as WireSize;
      if (!wireSizesByArea.includes(name)) continue;
      for (const column of columns) {
        const printed = row[table.insulation.indexOf(column)];
        if (typeof printed !== 'number') continue;
        const wire = conductorBySize(name);
        found.push(modelAmpacity(wire, column + 273.15, { ambient: table.ambient + 273.15 }) / printed);
      }
    }
    return found;
  };
  const mean = (list: number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;

  // NFPA 70 table 310.17, from memory; outside diameters of the wires are assumed.
  it('stays within −5 to +16 % of the free-air table of NFPA 70, +5 % on average', () => {
    const found = ratios(ampacity.freeAir, [60, 75, 90]);
    expect(found.length).toBeGreaterThanOrEqual(21);
    expect(Math.min(...found)).toBeGreaterThan(0.95);
    expect(Math.max(...found)).toBeLessThan(1.16);
    expect(Math.abs(mean(found) - 1.055)).toBeLessThan(0.02);
  });

  it('never lies below the stepped table of 33 CFR 183.425', () => {
    const found = ratios(ampacity.boat, [60, 75, 80, 90, 105]);
    expect(found).toHaveLength(45);
    expect(Math.min(...found)).toBeGreaterThan(0.97);
    expect(mean(found)).toBeLessThan(1.25);
  });
});

describe('wires that lie together', () => {
  // Published: MIL-W-5088B (quoted) 0.94, 0.89, 0.83, 0.76 for 2 to 5; 33 CFR 183.425 note 2: 0.70 for 3, 0.60 for 4 to 6.
  it('lies between the two published sets', () => {
    const military = ampacity.militaryWire.bundle as Record<string, number>;
    const boat = [null, null, null, 0.7, 0.6, 0.6, 0.6];
    for (const count of [2, 3, 4, 5])
      expect(togetherFactor(count)).toBeLessThan(military[String(count)] ?? 0);
    for (const count of [3, 4, 5, 6]) expect(togetherFactor(count)).toBeGreaterThan(boat[count] ?? 1);
  });

  it('is 0.87 for the supply pair and holds beyond seven', () => {
    expect(togetherFactor(1)).toBe(1);
    expect(togetherFactor(2)).toBe(0.87);
    expect(togetherFactor(20)).toBe(togetherFactor(7));
  });
});
