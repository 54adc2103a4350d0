import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FosterStage,
  highestWithin,
  ladderImpedance,
  ladderPeriodic,
  ladderPeriodicStart,
  ladderResistance,
  ladderRise,
  ladderStep,
  pulsePeak,
  type Segment,
  singleStage,
} from '../../../src/engine/heat/deviceLadder.ts';
import cases from '../cases/transient.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

const stages: FosterStage[] = cases.foster.r.map((resistance, i) => ({
  resistance,
  timeConstant: cases.foster.tau[i]!,
}));
const named = (name: string) => cases.cases.filter((row) => row.name.startsWith(name));
const segmentsOf = (pairs: number[][]): Segment[] =>
  pairs.map(([power, duration]) => ({ power: power!, duration: duration! }));

const anyStages = fc.array(fc.record({ resistance: between(0.01, 5), timeConstant: between(1e-4, 1e3) }), {
  minLength: 1,
  maxLength: 4,
});
const anySegments = fc.array(
  fc.record({ power: fc.double({ min: 0, max: 200, noNaN: true }), duration: between(1e-3, 300) }),
  { minLength: 1, maxLength: 5 },
);

// Ladder against matrix exponential and Radau integration (own computation): T1 step, T2 from cold, T3 keyed and
// periodic, T4 pulses, T5 long overs.
describe('ladder', () => {
  it('has the step response (T1)', () => {
    const row = named('T1')[0] as { t_s: number[]; Zth_matrix_exponential: number[] };
    row.t_s.forEach((time, i) => {
      expectClose(ladderImpedance(stages, time), row.Zth_matrix_exponential[i]!, 1e-9);
    });
  });

  it('has the ends of overs from cold (T2)', () => {
    const row = named('T2')[0] as { segments: number[][]; junction_theta_end_of_segment_K: number[] };
    const segments = segmentsOf(row.segments);
    const state = new Float64Array(stages.length);
    row.junction_theta_end_of_segment_K.forEach((expected, i) => {
      const { power, duration } = segments[i % segments.length]!;
      ladderStep(stages, state, power, duration);
      expect(Math.abs(ladderRise(state) - expected)).toBeLessThan(1e-8);
    });
  });

  it('has the keyed pattern in its periodic state (T3)', () => {
    const row = named('T3')[0] as { segments: number[][]; junction_theta_at_segment_boundaries_K: number[] };
    const period = ladderPeriodic(stages, segmentsOf(row.segments));
    const [start, ...ends] = row.junction_theta_at_segment_boundaries_K;
    expect(Math.abs(period.start - start!)).toBeLessThan(1e-8);
    period.ends.forEach((end, i) => {
      expect(Math.abs(end - ends[i]!)).toBeLessThan(1e-8);
    });
    expectClose(period.highest, Math.max(...ends), 1e-9);
    expectClose(period.mean, 137.892857142857, 1e-9);
  });

  it.each(named('T4') as { P: number; T: number; D: number; peak_theta_closed_form_K: number }[])(
    'has the peak under pulses, period $T s and share $D (T4)',
    (row) => {
      expectClose(pulsePeak(stages, row.P, row.D, row.T), row.peak_theta_closed_form_K, 1e-9);
      const pattern = [
        { power: row.P, duration: row.D * row.T },
        { power: 0, duration: (1 - row.D) * row.T },
      ];
      expectClose(ladderPeriodic(stages, pattern).highest, row.peak_theta_closed_form_K, 1e-9);
    },
  );

  it('has long overs from cold (T5)', () => {
    const state = new Float64Array(stages.length);
    ladderStep(stages, state, 80, 300);
    expectClose(ladderRise(state), 121.3370225, 1e-8);
    ladderStep(stages, state, 6, 600);
    expectClose(ladderRise(state), 19.1133324598, 1e-8);
  });

  it('makes one step of two', () => {
    fc.assert(
      fc.property(anyStages, between(1e-3, 100), between(1e-3, 100), (ladder, first, second) => {
        const once = new Float64Array(ladder.length).fill(3);
        const twice = once.slice();
        ladderStep(ladder, once, 10, first + second);
        ladderStep(ladder, twice, 10, first);
        ladderStep(ladder, twice, 10, second);
        expectClose(ladderRise(twice), ladderRise(once), 1e-9);
      }),
    );
  });

  it('returns to its start after one period', () => {
    fc.assert(
      fc.property(anyStages, anySegments, (ladder, segments) => {
        const state = ladderPeriodicStart(ladder, segments);
        const start = ladderRise(state);
        for (const { power, duration } of segments) ladderStep(ladder, state, power, duration);
        expect(Math.abs(ladderRise(state) - start)).toBeLessThan(1e-9 * (1 + start));
      }),
    );
  });

  it('finds the highest point of a densely sampled period', () => {
    fc.assert(
      fc.property(anyStages, anySegments, (ladder, segments) => {
        const { highest, mean } = ladderPeriodic(ladder, segments);
        const state = ladderPeriodicStart(ladder, segments);
        let sampled = ladderRise(state);
        for (const { power, duration } of segments) {
          for (let i = 0; i < 200; i++) {
            ladderStep(ladder, state, power, duration / 200);
            sampled = Math.max(sampled, ladderRise(state));
          }
        }
        expect(highest).toBeGreaterThanOrEqual(sampled * (1 - 1e-9) - 1e-12);
        expect(highest).toBeLessThanOrEqual(sampled * 1.02 + 1e-6);
        expect(highest).toBeGreaterThanOrEqual(mean * (1 - 1e-9) - 1e-12);
      }),
    );
  });

  it('finds a maximum inside a segment', () => {
    // A fast stage warms up while a slow one cools: higher in between than at either end.
    const ladder = [
      { resistance: 1, timeConstant: 0.1 },
      { resistance: 1, timeConstant: 100 },
    ];
    const state = Float64Array.from([0, 80]);
    const highest = highestWithin(ladder, state, { power: 40, duration: 1000 });
    expect(highest).toBeGreaterThan(115);
    expect(highest).toBeLessThan(120);
  });
});

describe('device known by one resistance', () => {
  it('follows at once without a time constant', () => {
    const ladder = singleStage(0.5, null);
    const segments = [
      { power: 100, duration: 0.1 },
      { power: 20, duration: 0.9 },
    ];
    expect(ladderPeriodic(ladder, segments).highest).toBe(50);
    expectClose(ladderPeriodic(ladder, segments).mean, 14, 1e-12);
    expect(ladderImpedance(ladder, 1e-12)).toBe(0.5);
    expect(ladderImpedance(ladder, 0)).toBe(0);
    expect(ladderResistance(ladder)).toBe(0.5);
  });

  it('reaches 63 % after its time constant', () => {
    expectClose(ladderImpedance(singleStage(2, 0.02), 0.02), 2 * (1 - Math.exp(-1)), 1e-12);
  });
});
