import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  converterModule,
  exhaustionPower,
  greatestModulePower,
  moduleCurrent,
  moduleInputCurrent,
  moduleLimits,
  moduleOverloaded,
} from '../../../src/engine/supply/converterModule.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const points = cases.module.points.map(([inputCurrent, inputVoltage, efficiency]) => ({
  inputCurrent: inputCurrent ?? 0,
  inputVoltage: inputVoltage ?? 0,
  efficiency: efficiency ?? 0,
}));
const module = converterModule({
  outputVoltage: 36,
  points,
  noLoadPower: cases.module.P0,
  minimumInput: 10,
  inputCurrentLimit: 15,
  outputCurrentLimit: null,
  powerLimit: null,
  powerShare: 1,
});

describe('bought module', () => {
  it.each(
    cases.module.table.map((row) => [row.Vin, row.Iin_for_120W, row.eta_120W, row.Pmax_at_15A] as const),
  )('at %f V draws %f A for 120 W (independent implementation)', (voltage, current, efficiency, most) => {
    const found = resultOf(moduleInputCurrent(module, voltage, 120));
    expectClose(found.inputCurrent, current, 1e-9);
    expectClose(found.efficiency, efficiency, 1e-9);
    const greatest = greatestModulePower(module, voltage);
    expectClose(greatest.power, most, 1e-9);
    expect(greatest.governing).toBe('inputCurrent');
  });

  it('meets its efficiency points', () => {
    for (const one of points) {
      const power = one.inputVoltage * one.inputCurrent * one.efficiency;
      expectClose(
        resultOf(moduleInputCurrent(module, one.inputVoltage, power)).efficiency,
        one.efficiency,
        1e-9,
      );
    }
  });

  it('closes energy at every power it can give', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 35, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (voltage, share) => {
          const power = share * exhaustionPower(module.loss, voltage);
          const found = resultOf(moduleInputCurrent(module, voltage, power));
          return (
            Math.abs(voltage * found.inputCurrent - power - found.loss) < 1e-9 * voltage * found.inputCurrent
          );
        },
      ),
    );
  });

  it('draws less at a higher input voltage and more for more power', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (voltage, power) => {
          const current = moduleCurrent(module.loss, voltage, power);
          return (
            moduleCurrent(module.loss, voltage + 1, power) < current &&
            moduleCurrent(module.loss, voltage, power + 1) > current
          );
        },
      ),
    );
  });

  it.each([
    [9.9, 50, 'inputTooLow'],
    [36, 50, 'railBelowInput'],
    [12, 5000, 'moduleExhausted'],
  ])('at %f V and %f W has no answer: %s', (voltage, power, key) => {
    const found = moduleInputCurrent(module, voltage, power);
    expect(found.ok ? '' : found.reason.key).toBe(key);
  });

  it('just under its exhaustion still answers, just over it does not', () => {
    const most = exhaustionPower(module.loss, 12);
    expect(moduleCurrent(module.loss, 12, most * (1 - 1e-9))).toBeGreaterThan(0);
    expect(moduleCurrent(module.loss, 12, most * (1 + 1e-9))).toBe(-1);
  });
});

describe('ratings of a module', () => {
  const rated = converterModule({ ...module, outputCurrentLimit: 4, powerLimit: 200, powerShare: 0.6 });

  it('are judged by the most used one', () => {
    const limits = moduleLimits(rated, 12, 130);
    expect(limits.map((one) => one.key)).toEqual(['power', 'outputCurrent', 'inputCurrent']);
    expectClose(limits[0]?.loading ?? 0, 130 / 120, 1e-12);
  });

  it('are told as notes when passed, and the number-only question agrees', () => {
    const found = moduleInputCurrent(rated, 12, 130);
    expect(found.ok && found.notes.filter((one) => one.kind === 'limit').map((one) => one.key)).toEqual([
      'converterPower',
    ]);
    expect(moduleOverloaded(rated, 12, 130)).toBe(true);
    expect(moduleOverloaded(rated, 12, 119)).toBe(false);
    expect(moduleOverloaded(rated, 15.1, 100)).toBe(true);
    expect(moduleOverloaded(converterModule({ ...module, outputCurrentLimit: 3 }), 12, 109)).toBe(true);
  });

  it.each([
    [{ powerLimit: 100, powerShare: 0.5 }, 50, 'power'],
    [{ outputCurrentLimit: 2 }, 72, 'outputCurrent'],
    [{ inputCurrentLimit: null }, exhaustionPower(module.loss, 12), 'loss'],
  ] as const)('with %j the module gives %f W, ended by %s', (change, power, governing) => {
    const found = greatestModulePower(converterModule({ ...module, ...change }), 12);
    expectClose(found.power, power, 1e-12);
    expect(found.governing).toBe(governing);
  });

  it('a lower input or a larger current than the points is told', () => {
    const low = moduleInputCurrent(module, 10.5, 60);
    expect(low.ok && low.notes.map((one) => one.key)).toContain('converterRatioBeyondPoints');
    const high = moduleInputCurrent(converterModule({ ...module, inputCurrentLimit: null }), 12, 180);
    expect(high.ok && high.notes.map((one) => one.key)).toContain('converterCurrentBeyondPoints');
  });
});
