import { describe, expect, it } from 'vitest';
import type { SinkInput } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { fanOf, meanFinThickness, sinkDescription } from '../../../src/engine/couple/sinkDescription.ts';
import { prepareSink } from '../../../src/engine/heat/sink.ts';
import { resultOf } from '../resultOf.ts';

const sinkOf = (edits: Partial<SinkInput>): SinkInput => ({ ...startDesign.sink, ...edits });
const heatOf = (edits: Partial<SinkInput>) =>
  resultOf(prepareSink(resultOf(sinkDescription(sinkOf(edits))))).heat(350, 300);
const blown = { fan: 'along', fanFlow: 0.02, fanPressure: 40 } as const;

describe('the sink of a design', () => {
  it('takes the mean of root and tip of tapered fins', () => {
    expect(meanFinThickness(sinkOf({ tapered: true, finRoot: 0.003, finTip: 0.001 }))).toBe(0.002);
    expect(resultOf(sinkDescription(sinkOf({ tapered: true, finTip: 0.001 }))).tipThickness).toBe(0.001);
  });

  it('orders the positions as experience does: upright best, fins hanging down worst', () => {
    const upright = heatOf({ position: 'upright' });
    const leaning = heatOf({ position: 'tilted', tilt: 0.7 });
    const up = heatOf({ position: 'finsUp' });
    const down = heatOf({ position: 'finsDown' });
    expect(upright).toBeGreaterThan(leaning);
    expect(upright).toBeGreaterThan(up);
    expect(up).toBeGreaterThan(down);
    expect(upright).toBeGreaterThanOrEqual(heatOf({ position: 'crosswise' }));
  });

  it('lets a partly covered back lie between an open and a covered one', () => {
    const covered = heatOf({ backExposed: false });
    const half = heatOf({ backExposed: true, backShare: 0.5 });
    const open = heatOf({ backExposed: true, backShare: 1 });
    expect(half - covered).toBeCloseTo((open - covered) / 2, 9);
    expect(open).toBeGreaterThan(covered);
  });

  it('has every shape, each of which sheds heat', () => {
    for (const shape of ['fins', 'finsBothSides', 'pins', 'panel', 'tunnel'] as const) {
      expect(heatOf({ shape }), shape).toBeGreaterThan(0);
    }
    expect(heatOf({ shape: 'finsBothSides' })).toBeGreaterThan(heatOf({ shape: 'fins' }));
  });

  it('names what cannot be: fins whose roots touch, pins that touch', () => {
    const refused = (edits: Partial<SinkInput>) => {
      const outcome = prepareSink(resultOf(sinkDescription(sinkOf(edits))));
      return outcome.ok ? 'computed' : outcome.reason.key;
    };
    expect(refused({ tapered: true, finRoot: 0.013, finTip: 0.001 })).toBe('finsDoNotFit');
    expect(refused({ shape: 'pins', pinColumns: 40 })).toBe('pinsDoNotFit');
    expect(refused({ shape: 'pins', position: 'finsUp' })).toBe('computed');
  });
});

describe('the fan of a design', () => {
  it('counts along fins only', () => {
    expect(resultOf(fanOf(sinkOf({ ...blown, shape: 'pins' })))).toBeNull();
    expect(resultOf(fanOf(sinkOf({ ...blown, shape: 'fins' })))).not.toBeNull();
  });

  it('takes a third point of the curve, and names one that does not lie between', () => {
    const middle = { fanMiddleFlow: 0.01, fanMiddlePressure: 28 };
    expect(resultOf(fanOf(sinkOf({ ...blown, ...middle })))?.fan.points).toHaveLength(3);
    const wrong = fanOf(sinkOf({ ...blown, ...middle, fanMiddleFlow: 0.03 }));
    expect(wrong.ok ? 'computed' : wrong.reason.key).toBe('fanCurve');
  });

  it('cools less with less voltage and not at all when it has stopped', () => {
    const full = heatOf({ ...blown, fanPath: 'duct' });
    expect(heatOf({ ...blown, fanPath: 'duct', fanVoltageShare: 0.5 })).toBeLessThan(full);
    expect(heatOf({ ...blown, fanPath: 'bypass', bypassSection: 0.004 })).toBeLessThan(full);
    const stopped = resultOf(sinkDescription(sinkOf(blown), false));
    expect(resultOf(prepareSink(stopped)).heat(350, 300)).toBe(heatOf({}));
  });
});
