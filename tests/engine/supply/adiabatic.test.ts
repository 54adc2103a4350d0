import { describe, expect, it } from 'vitest';
import table from '../../../reference-data/adiabatic.json';
import {
  adiabaticConstant,
  adiabaticTime,
  adiabaticWithstand,
  shortTimeLimit,
} from '../../../src/engine/supply/adiabatic.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const perSquareMillimetre = 1e6;

describe('k of the adiabatic formula', () => {
  // IEC 60364-5-54: 143 for cross-linked polyethylene is secondary, the other rounded values are from memory.
  it.each(table.rows.map((row) => [row.insulation, row.initial, row.final, row.k] as const))(
    '%s, %i to %i °C: %i',
    (_, initial, final, k) => {
      expectClose(adiabaticConstant(kelvin(initial), kelvin(final)) / perSquareMillimetre, k, 3e-3);
    },
  );

  it.each(cases.k_adiabatic.map((row) => [row.Ti, row.Tf, row.k] as const))(
    '%i to %i °C: %f (independent implementation)',
    (initial, final, k) => {
      expectClose(adiabaticConstant(kelvin(initial), kelvin(final)) / perSquareMillimetre, k, 2e-5);
    },
  );

  it('is zero without room to warm up', () => {
    expect(adiabaticConstant(kelvin(160), kelvin(160))).toBe(0);
  });
});

describe('time that a wire bears a fault', () => {
  it.each(cases.fault.map((row) => [row.bat, row.Isc, row.mm2, row.t_wire_s] as const))(
    '%s, %f A through %f mm²: %f s from 70 to 160 °C (independent implementation, k = 115 rounded)',
    (_, current, mm2, seconds) => {
      const own = adiabaticTime(mm2 * 1e-6, current, kelvin(70), kelvin(160));
      expectClose(own, seconds, 3e-3);
      expectClose(own * current * current, adiabaticWithstand(mm2 * 1e-6, kelvin(70), kelvin(160)), 1e-12);
    },
  );
});

describe('insulation for a moment', () => {
  it.each([
    [60, 160],
    [105, 160],
    [125, 250],
    [180, 350],
    [200, 350],
  ])('rated %i °C bears %i °C', (limit, moment) => {
    expectClose(shortTimeLimit(kelvin(limit)), kelvin(moment), 1e-12);
  });
});
