import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import batteries from '../../../reference-data/batteries.json';
import {
  type BatteryKind,
  batteryFigures,
  equivalentCurrent,
  meanCurrent,
  runTime,
} from '../../../src/engine/supply/peukert.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

describe('run time', () => {
  it.each(cases.peukert.map((row) => [row.C, row.H, row.I, row.k, row.h] as const))(
    '%f Ah at %i h, %f A, k %f: %f h (independent implementation)',
    (capacity, hours, current, exponent, time) => {
      expectClose(runTime(capacity, hours, current, exponent), time, 1e-12);
    },
  );

  it('100 Ah at 20 h, k 1.2, 10 A last 8.71 h', () => {
    expectClose(runTime(100, 20, 10, 1.2), 8.71, 1e-3);
  });

  // Published example in the form C = I^k t with the capacity at 1 A: 100 Ah, k 1.2, 5 A, 14.5 h.
  it('reproduces the published example when its own capacity is converted', () => {
    expectClose(runTime(100, 100, 5, 1.2), 14.5, 1e-3);
  });

  it('at the rated current is the rated time, for any exponent', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.6, noNaN: true }),
        (exponent) => Math.abs(runTime(60, 20, 3, exponent) - 20) < 1e-9,
      ),
    );
  });
});

describe('pulsed load', () => {
  const shares = [
    { current: 15, share: 0.2 },
    { current: 1, share: 0.8 },
  ];

  it('counts more than its mean, and the mean for an ideal battery', () => {
    expect(equivalentCurrent(shares, 1.2)).toBeGreaterThan(meanCurrent(shares));
    expectClose(equivalentCurrent(shares, 1), meanCurrent(shares), 1e-12);
    expectClose(meanCurrent(shares), 3.8, 1e-12);
  });
});

describe('exponents', () => {
  it.each(Object.keys(batteries.kinds) as BatteryKind[])(
    '%s has its usual value inside its range',
    (kind) => {
      const { usual, from, to } = batteryFigures(kind).exponent;
      expect(usual).toBeGreaterThanOrEqual(from);
      expect(usual).toBeLessThanOrEqual(to);
      expect(from).toBeGreaterThanOrEqual(1);
    },
  );
});
