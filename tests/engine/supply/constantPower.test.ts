import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  constantPowerPoint,
  greatestPower,
  greatestPowerAbove,
} from '../../../src/engine/supply/constantPower.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const path = (openVoltage: number, resistance: number, seriesDrop = 0) => ({
  openVoltage,
  resistance,
  seriesDrop,
});
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('constant-power load behind a resistance', () => {
  it.each(cases.cpl.map((row) => [row.Vs, row.R, row.P, row.V, row.I, row.Pmax, row.Pmax_10V5] as const))(
    '%f V, %f Ω, %f W: %f V (independent implementation)',
    (source, resistance, power, voltage, current, most, mostAt10) => {
      const found = constantPowerPoint(path(source, resistance), [power]);
      expectClose(greatestPower(source, resistance) ?? 0, most, 1e-12);
      expectClose(greatestPowerAbove(source, resistance, 10.5) ?? 0, mostAt10, 1e-12);
      if (voltage === null || current === null) {
        expect(found.ok).toBe(false);
        if (!found.ok) expect(found.reason.key).toBe('collapse');
        return;
      }
      expectClose(resultOf(found).voltage, voltage, 1e-12);
      expectClose(resultOf(found).current, current, 1e-12);
    },
  );

  it('is stable in time: the slope of the load line is below that of the source', () => {
    fc.assert(
      fc.property(double(6, 60), double(1e-4, 2), double(0.01, 0.99), (source, resistance, share) => {
        const power = (share * (source * source)) / (4 * resistance);
        const { voltage } = resultOf(constantPowerPoint(path(source, resistance), [power]));
        return resistance < (voltage * voltage) / power;
      }),
    );
  });

  it('closes energy with several loads and a diode', () => {
    fc.assert(
      fc.property(
        double(8, 60),
        double(0, 1),
        double(0, 2),
        double(0, 3),
        double(0, 2),
        (source, resistance, drop, first, second) => {
          const { voltage, current } = resultOf(
            constantPowerPoint(path(source, resistance, drop), [first, second]),
          );
          const lost = current * current * resistance + current * drop;
          return (
            Math.abs(source * current - lost - first - second) < 1e-9 &&
            Math.abs(voltage * current - first - second) < 1e-9
          );
        },
      ),
    );
  });

  it('at the greatest power the voltage is half', () => {
    const most = greatestPower(12, 0.1) ?? 0;
    expectClose(resultOf(constantPowerPoint(path(12, 0.1), [most * (1 - 1e-12)])).voltage, 6, 1e-5);
  });

  it('without resistance has no greatest power and no drop', () => {
    const found = resultOf(constantPowerPoint(path(12, 0), [500]));
    expect(found.voltage).toBe(12);
    expect(found.greatestPower).toBeNull();
    expect(found.loading).toBe(0);
  });

  it('names a diode that takes everything', () => {
    const found = constantPowerPoint(path(3, 0.1, 3), [1]);
    expect(found.ok ? '' : found.reason.key).toBe('noDrive');
  });
});
