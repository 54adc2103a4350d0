import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { railLimitedPower, stageCurrent } from '../../../src/engine/amplifier/linearStage.ts';
import {
  buildableTurns,
  greatestPushPullPower,
  loadOfTurns,
  neededTurnsRatio,
  reloadedStage,
  swingUsed,
} from '../../../src/engine/amplifier/turnsRatio.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { referenceStage } from './referenceStage.ts';

const load = cases.groups.load;

describe('turns ratio', () => {
  it.each(load.filter(({ inputs }) => inputs.P !== undefined))(
    'fits the power: $id',
    ({ inputs, expected }) => {
      const ratio = resultOf(neededTurnsRatio(inputs.P!, inputs.Vdd, inputs.Vk));
      expectClose(ratio, expected.turns_ratio!, 1e-9);
      expectClose(loadOfTurns(ratio), expected.Rdd, 1e-9);
      expectClose(50 / loadOfTurns(ratio), expected.z_ratio_50!, 1e-9);
      expectClose(greatestPushPullPower(ratio, inputs.Vdd, inputs.Vk), inputs.P!, 1e-9);
    },
  );

  it.each(load.filter(({ inputs }) => inputs.turns !== undefined))(
    'limits the power: $id',
    ({ inputs, expected }) => {
      expectClose(loadOfTurns(inputs.turns!), expected.Rdd, 1e-9);
      expectClose(greatestPushPullPower(inputs.turns!, inputs.Vdd, inputs.Vk), expected.Pmax!, 1e-9);
    },
  );

  // Power-amplifier textbook chapter: 12 V, 0.7 V, 16 ohms and 1 W ask for a ratio of 1.998, a class B pair whose load is
  // P = Vp^2/(2 k^2 R); with 50 ohms the same swing asks for sqrt(50/16) times less step-down.
  it('agrees with the published transformer of a class B pair', () => {
    // One half-primary over the secondary is k; N, secondary over both halves, is 1/(2 k).
    const k = Math.sqrt((12 - 0.7) ** 2 / (2 * 16 * 1));
    expectClose(k, 1.998, 1e-3);
    const ratio = resultOf(neededTurnsRatio(1, 12, 0.7));
    expectClose(ratio, (1 / (2 * k)) * Math.sqrt(50 / 16), 1e-9);
  });

  it('finds whole turns on both sides of the wanted ratio', () => {
    expect(buildableTurns(4.065)).toEqual({
      reaching: { primary: 1, secondary: 4, ratio: 4 },
      falling: { primary: 3, secondary: 11, ratio: 11 / 3 },
    });
    expect(buildableTurns(0.05).falling).toBeNull();
    expect(buildableTurns(20).reaching).toBeNull();
  });

  it('reaches the power with the one and not with the other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 11, noNaN: true }), (wanted) => {
        const { reaching, falling } = buildableTurns(wanted);
        const power = greatestPushPullPower(wanted, 13.8, 1.5);
        expect(greatestPushPullPower(reaching!.ratio, 13.8, 1.5)).toBeGreaterThan(0.96 * power);
        expect(greatestPushPullPower(falling!.ratio, 13.8, 1.5)).toBeLessThan(power);
      }),
    );
  });

  it('says how much of the swing a power uses, or that the ratio cannot make it', () => {
    expectClose(resultOf(swingUsed(24.2064, 4, 13.8, 1.5)), 0.5, 1e-9);
    const outcome = swingUsed(100, 3, 13.8, 1.5);
    expect(outcome.ok ? '' : outcome.reason.sentence).toContain('54.5 W');
    expect(swingUsed(1, 3, 1, 1.5).ok).toBe(false);
    expect(neededTurnsRatio(10, 1, 1.5).ok).toBe(false);
  });

  it('runs cooler at half the power when the load is changed for it', () => {
    const half = reloadedStage(referenceStage, 2 * referenceStage.loadPerDevice);
    expectClose(half.ratedPower, referenceStage.ratedPower / 2, 1e-12);
    expectClose(railLimitedPower(half, half.ratedRail), half.ratedPower, 1e-12);
    const heat = (stage: typeof half) => 13.8 * stageCurrent(stage, 55) - 55;
    expect(heat(half)).toBeLessThan(0.6 * heat(referenceStage));
  });
});
