import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/engine/index.ts';
import { expectClose } from '../closeTo.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

const advice = (design: typeof referenceDesign) =>
  solve(design).notes.find((one) => one.key === 'turnsAdvice');

describe('the transformer to wind', () => {
  // Own computation: a pair that makes 100 W from 13.8 V with 1.5 V lost needs Rdd 3.026 ohm, ratio 4.065.
  const pair = change(referenceDesign, {
    amplifier: { pep: 100, ratedPep: 100, saturationVoltage: 1.5, onResistance: 0, class: 'B' },
  });

  it('is the ratio of the table, nearest in whole turns above it', () => {
    const { values } = solve(pair);
    expectClose(values.primaryLoad!, 3.0258, 1e-9);
    expectClose(values.fullSwingRatio!, 4.0650406504, 1e-9);
    expectClose(values.loadTurnsRatio!, values.fullSwingRatio!, 1e-9);
    expect(advice(pair)?.sentence).toContain('4 : 1');
  });

  it('tells a pair run below its power that another ratio would cool it', () => {
    const below = change(pair, { amplifier: { pep: 50 } });
    expect(solve(below).values.swingUsed).toBeCloseTo(Math.SQRT1_2, 9);
    expect(advice(below)?.sentence).toMatch(/would take the whole swing at 2\.87.*3 : 1/);
  });

  it('is silent where the load is not known', () => {
    expect(advice(exampleOf('pocket-beacon-10w'))).toBeUndefined();
    expect(advice(change(pair, { amplifier: { calibration: 'readings' } }))).toBeUndefined();
  });
});
