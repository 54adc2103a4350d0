import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibrateMeasuredStage,
  measuredCurrent,
  measuredHeat,
} from '../../../src/engine/amplifier/calibrationTable.ts';
import { stageCurrent } from '../../../src/engine/amplifier/linearStage.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { referenceStage } from './referenceStage.ts';

const readings = [0, 1, 5, 20, 50, 110].map((rfPower) => ({
  rfPower,
  dcCurrent: stageCurrent(referenceStage, rfPower),
}));

describe('stage by measured readings', () => {
  it('comes within 1 % of the stage the readings come from, and within 2 W where they lie far apart', () => {
    const stage = resultOf(calibrateMeasuredStage(readings, 13.8));
    for (let r = 0; r <= 1; r += 0.02) {
      const expected = stageCurrent(referenceStage, 110 * r * r);
      const current = measuredCurrent(stage, 110 * r * r);
      expect(Math.abs(13.8 * (current - expected))).toBeLessThan(2);
      if (r > 0.22) expectClose(current, expected, 0.01);
    }
    expectClose(measuredHeat(stage, 50), 13.8 * stageCurrent(referenceStage, 50) - 50, 1e-9);
  });

  it('is exact for class B, whose current is straight over the amplitude', () => {
    const stage = resultOf(
      calibrateMeasuredStage(
        [
          { rfPower: 100, dcCurrent: 12 },
          { rfPower: 0, dcCurrent: 0 },
        ],
        13.8,
      ),
    );
    expectClose(measuredCurrent(stage, 25), 6, 1e-12);
    expectClose(measuredCurrent(stage, 144), 14.4, 1e-12);
    expectClose(measuredHeat(stage, 25), 13.8 * 6 - 25, 1e-12);
  });

  it('never makes heat below zero or current that falls between rising readings', () => {
    const point = fc.tuple(
      fc.double({ min: 0.5, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 8 }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (steps, idle) => {
          let rfPower = 0;
          let dcCurrent = idle;
          const given = [{ rfPower, dcCurrent }];
          for (const [more, extra] of steps) {
            rfPower += more;
            dcCurrent = Math.max(dcCurrent + extra, rfPower / 13.8);
            given.push({ rfPower, dcCurrent });
          }
          const stage = resultOf(calibrateMeasuredStage(given, 13.8));
          let before = 0;
          for (let i = 0; i <= 50; i++) {
            const current = measuredCurrent(stage, (i / 50) ** 2 * rfPower);
            expect(current).toBeGreaterThanOrEqual(before - 1e-9);
            expect(measuredHeat(stage, (i / 50) ** 2 * rfPower)).toBeGreaterThanOrEqual(0);
            before = current;
          }
        },
      ),
    );
  });

  it('remarks on a current that falls', () => {
    const outcome = calibrateMeasuredStage([...readings, { rfPower: 115, dcCurrent: 11 }], 13.8);
    expect(outcome.ok ? outcome.notes.map(({ key }) => key) : []).toEqual(['rail current falls with output']);
  });

  it.each([
    ['one reading', [{ rfPower: 0, dcCurrent: 1 }], 'number of readings'],
    ['no reading without drive', readings.slice(1), 'no reading without drive'],
    [
      'no output',
      [
        { rfPower: 0, dcCurrent: 1 },
        { rfPower: 1e-9, dcCurrent: 1 },
      ],
      'no reading with drive',
    ],
    ['a power twice', [...readings, readings[3]!], 'power read twice'],
    ['more out than in', [...readings, { rfPower: 300, dcCurrent: 12 }], 'more out than in'],
    ['a current below zero', [...readings, { rfPower: 120, dcCurrent: -1 }], 'reading not a number'],
  ])('gives a reason for %s', (_, given, key) => {
    const outcome = calibrateMeasuredStage(given, 13.8);
    expect(outcome.ok ? '' : outcome.reason.key).toBe(key);
  });

  it('needs a rail', () => {
    expect(calibrateMeasuredStage(readings, 0).ok).toBe(false);
  });
});
