import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  converterLossAt,
  type EfficiencyPoint,
  fitConverterLoss,
} from '../../../src/engine/supply/converterLoss.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';

const point = (inputVoltage: number, inputCurrent: number, efficiency: number): EfficiencyPoint => ({
  inputVoltage,
  inputCurrent,
  efficiency,
});
const keys = (fitted: ReturnType<typeof fitConverterLoss>) => fitted.notes.map((one) => one.key);
const efficiencyAt = (fitted: ReturnType<typeof fitConverterLoss>, voltage: number, current: number) =>
  1 - converterLossAt(fitted.loss, current) / (voltage * current);

describe('two points', () => {
  it('give the coefficients of the independent implementation', () => {
    const points = cases.module.points.map(([current, voltage, efficiency]) =>
      point(voltage ?? 0, current ?? 0, efficiency ?? 0),
    );
    const { loss, notes } = fitConverterLoss(points, cases.module.P0);
    expectClose(loss.proportional, cases.module.a, 1e-9);
    expectClose(loss.square, cases.module.b, 1e-9);
    expect(notes).toEqual([]);
  });

  it('that rise more steeply than the square keep every entered loss or more, with a note', () => {
    const points = [point(12, 3, 0.98), point(12, 12, 0.91)];
    const fitted = fitConverterLoss(points, 0.6);
    expect(keys(fitted)).toContain('converterLossClipped');
    for (const one of points) {
      expect(efficiencyAt(fitted, one.inputVoltage, one.inputCurrent)).toBeLessThanOrEqual(
        one.efficiency + 1e-12,
      );
    }
  });

  it('that rise more slowly than the current pass through both points with a larger fixed part', () => {
    const points = [point(12, 1, 0.8), point(12, 10, 0.92)];
    const fitted = fitConverterLoss(points, 0.6);
    expect(keys(fitted)).toEqual(['converterFixedLoss']);
    for (const one of points) {
      expectClose(efficiencyAt(fitted, one.inputVoltage, one.inputCurrent), one.efficiency, 1e-12);
    }
    expect(fitted.loss.fixed).toBeGreaterThan(0.6);
  });

  it('at one and the same current count as the worse of them', () => {
    const twice = fitConverterLoss([point(12, 8, 0.93), point(12, 8, 0.9)], 0.5);
    const once = fitConverterLoss([point(12, 8, 0.9)], 0.5);
    expect(twice.loss).toEqual(once.loss);
  });
});

describe('one point', () => {
  it('is met exactly, scales as the square above no load, and is marked as an estimate', () => {
    const fitted = fitConverterLoss([point(12, 10, 0.9)], 2);
    expectClose(converterLossAt(fitted.loss, 10), 12, 1e-12);
    expectClose(converterLossAt(fitted.loss, 20) - 2, 4 * (12 - 2), 1e-12);
    expect(keys(fitted)).toEqual(['oneEfficiencyPoint']);
  });

  it('better than no load is told and never believed', () => {
    const fitted = fitConverterLoss([point(12, 1, 0.99)], 3);
    expect(keys(fitted)).toContain('efficiencyAboveNoLoad');
    expect(converterLossAt(fitted.loss, 1)).toBe(3);
  });
});

describe('three points', () => {
  it('on one curve give that curve back', () => {
    const made = (current: number) => 0.7 + 0.15 * current + 0.06 * current * current;
    const points = [2, 6, 14].map((current) => point(12, current, 1 - made(current) / (12 * current)));
    const { loss } = fitConverterLoss(points, 0.7);
    expectClose(loss.proportional, 0.15, 1e-9);
    expectClose(loss.square, 0.06, 1e-9);
  });
});

describe('any points of the design schema', () => {
  const anyPoint = fc
    .tuple(
      fc.double({ min: 3, max: 60, noNaN: true }),
      fc.double({ min: 0.05, max: 500, noNaN: true }),
      fc.double({ min: 0.3, max: 0.999, noNaN: true }),
    )
    .map(([voltage, current, efficiency]) => point(voltage, current, efficiency));

  it('give a loss that is finite, never negative and never falls with current', () => {
    fc.assert(
      fc.property(
        fc.array(anyPoint, { minLength: 1, maxLength: 3 }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (points, idle) => {
          const { loss } = fitConverterLoss(points, idle);
          return (
            [loss.fixed, loss.proportional, loss.square].every((one) => Number.isFinite(one) && one >= 0) &&
            converterLossAt(loss, 600) >= converterLossAt(loss, 0)
          );
        },
      ),
      { numRuns: 500 },
    );
  });
});
