import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ladderImpedance, ladderResistance } from '../../../src/engine/heat/deviceLadder.ts';
import { fitImpedance } from '../../../src/engine/heat/impedanceFit.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { between } from './geometries.ts';

describe('stages from points of a transient impedance plot', () => {
  it('come back when the points are of two stages', () => {
    const made = [
      { resistance: 0.3, timeConstant: 2e-3 },
      { resistance: 0.5, timeConstant: 0.1 },
    ];
    const points = [1e-4, 1e-3, 3e-3, 1e-2, 3e-2, 0.1, 0.3, 1].map((time) => ({
      time,
      impedance: ladderImpedance(made, time),
    }));
    const { stages, worst } = resultOf(fitImpedance(points, 0.8));
    expect(worst).toBeLessThan(0.005);
    expectClose(ladderResistance(stages), 0.8, 2e-3);
    for (const time of [5e-4, 2e-2, 0.5]) {
      expectClose(ladderImpedance(stages, time), ladderImpedance(made, time), 0.01);
    }
  });

  // Heat into a half-space: the impedance rises with the square root of time, as every die does at first.
  it('follow the square root of time within a tenth', () => {
    const points = Array.from({ length: 9 }, (_, i) => 1e-5 * 10 ** (i / 2)).map((time) => ({
      time,
      impedance: Math.min(Math.sqrt(time / 0.1), 1),
    }));
    const { stages, worst } = resultOf(fitImpedance(points, 1));
    expect(worst).toBeLessThan(0.1);
    expect(stages.length).toBeLessThanOrEqual(5);
  });

  it('are positive, few and near the points for any ladder', () => {
    const stage = fc.record({ resistance: between(0.05, 2), timeConstant: between(1e-4, 1) });
    fc.assert(
      fc.property(fc.array(stage, { minLength: 1, maxLength: 4 }), (made) => {
        const points = [1e-4, 1e-3, 1e-2, 0.1, 1, 10].map((time) => ({
          time,
          impedance: ladderImpedance(made, time),
        }));
        const { stages, worst } = resultOf(fitImpedance(points, ladderResistance(made)));
        expect(stages.length).toBeLessThanOrEqual(5);
        for (const { resistance, timeConstant } of stages) {
          expect(resistance).toBeGreaterThan(0);
          expect(timeConstant).toBeGreaterThan(0);
        }
        expect(worst).toBeLessThan(0.05);
        expectClose(ladderResistance(stages), ladderResistance(made), 0.02);
      }),
      { numRuns: 40 },
    );
  });

  it('make do with two points', () => {
    const points = [
      { time: 0.01, impedance: 0.4 },
      { time: 0.1, impedance: 0.9 },
    ];
    const { stages, worst } = resultOf(fitImpedance(points, 1));
    expect(worst).toBeLessThan(0.02);
    expectClose(ladderResistance(stages), 1, 0.02);
  });

  it('refuse what is no impedance curve', () => {
    const refused = (points: { time: number; impedance: number }[], resistance = 1) => {
      const outcome = fitImpedance(points, resistance);
      return outcome.ok ? '' : outcome.reason.key;
    };
    const good = { time: 0.01, impedance: 0.4 };
    expect(refused([good])).toBe('impedancePoints');
    expect(refused([good, { time: 0.02, impedance: 0.3 }])).toBe('impedancePoints');
    expect(refused([good, { time: 0.01, impedance: 0.5 }])).toBe('impedancePoints');
    expect(refused([good, { time: 0.02, impedance: 1.5 }])).toBe('impedancePoints');
    expect(refused([{ time: 0, impedance: 0.1 }, good])).toBe('impedancePoints');
    expect(refused([good, { time: 1, impedance: 0.9 }], 0)).toBe('impedancePoints');
  });
});
