import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drainPeakVoltage,
  foldbackShare,
  mismatchedPoint,
  networkTransmission,
  reflectionOfSwr,
  swrAtDrains,
  swrOfReflection,
  worstPhasePower,
  worstPhaseRatio,
} from '../../../src/engine/amplifier/mismatch.ts';
import { drainPower } from '../../../src/engine/amplifier/outputNetwork.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

const swrRange = fc.double({ min: 1, max: 100, noNaN: true });
const efficiencyRange = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const phases = Array.from({ length: 73 }, (_, i) => (i * Math.PI) / 36);

const table = cases.groups.mismatch.filter((c) => c.id !== 'mismatch_HB');
const waveforms = cases.groups.mismatch.find((c) => c.id === 'mismatch_HB');

describe('mismatch', () => {
  it.each(table)('agrees with an independent computation: $id', ({ inputs, expected }) => {
    const { eta0, SWR } = inputs as { eta0: number; SWR: number };
    const { Pdiss_worst, ratio_to_matched, Pdiss_at_0deg, Pdiss_at_90deg } = expected as Record<
      string,
      number
    >;
    expectClose(mismatchedPoint(SWR, Math.PI, eta0).heat, Pdiss_worst!, 1e-9);
    expectClose(1 / eta0 - worstPhasePower(1, SWR), Pdiss_worst!, 1e-9);
    expectClose(worstPhaseRatio(SWR, eta0), ratio_to_matched!, 1e-9);
    expectClose(mismatchedPoint(SWR, Math.PI / 2, eta0).heat, Pdiss_at_90deg!, 1e-8);
    expect(Math.abs(mismatchedPoint(SWR, 0, eta0).heat - Pdiss_at_0deg!)).toBeLessThan(1e-9);
  });

  it('agrees with a solution of the waveforms at the worst phase', () => {
    const { eta0, table: rows } = waveforms!.expected as {
      eta0: number;
      table: Record<string, { worst: number }>;
    };
    for (const [swr, { worst }] of Object.entries(rows)) {
      expectClose(1 / eta0 - worstPhasePower(1, Number(swr)), worst, 1e-9);
    }
  });

  // Own computation: heat over matched output for efficiencies of 50 and 55 %.
  it.each([
    [1.5, 1.333, 1.152],
    [2, 1.5, 1.318],
    [3, 1.667, 1.485],
    [10, 1.9, 1.718],
  ])('has the tabulated worst heat at a ratio of %f', (swr, half, more) => {
    expectClose(mismatchedPoint(swr, Math.PI, 0.5).heat, half, 4e-4);
    expectClose(mismatchedPoint(swr, Math.PI, 0.55).heat, more, 5e-4);
  });

  it('turns all DC input into heat when nothing leaves', () => {
    expectClose(1 / 0.5 - worstPhasePower(1, Number.POSITIVE_INFINITY), 2, 1e-12);
    expectClose(mismatchedPoint(Number.POSITIVE_INFINITY, Math.PI, 0.55).heat, 1 / 0.55, 1e-12);
    expectClose(worstPhaseRatio(Number.POSITIVE_INFINITY, 0.5), 2, 1e-12);
  });

  it('is the matched amplifier at a ratio of 1', () => {
    fc.assert(
      fc.property(efficiencyRange, fc.constantFrom(...phases), (efficiency, phase) => {
        const point = mismatchedPoint(1, phase, efficiency);
        expectClose(point.rfPower, 1, 1e-12);
        expectClose(point.dcPower, 1 / efficiency, 1e-12);
      }),
    );
  });

  it('closes energy, and no phase is hotter than that of the low load', () => {
    fc.assert(
      fc.property(swrRange, efficiencyRange, (swr, efficiency) => {
        const worst = mismatchedPoint(swr, Math.PI, efficiency);
        for (const phase of phases) {
          const point = mismatchedPoint(swr, phase, efficiency);
          expectClose(point.dcPower, point.rfPower + point.heat, 1e-12);
          expect(point.rfPower).toBeGreaterThanOrEqual(0);
          expect(point.heat).toBeLessThanOrEqual(worst.heat * (1 + 1e-12));
        }
        expectClose(worst.rfPower, worstPhasePower(1, swr), 1e-9);
      }),
    );
  });

  it('heats more the worse the match', () => {
    fc.assert(
      fc.property(swrRange, efficiencyRange, (swr, efficiency) => {
        expect(worstPhaseRatio(swr + 0.1, efficiency)).toBeGreaterThan(worstPhaseRatio(swr, efficiency));
      }),
    );
  });

  it('turns ratio and reflection into each other', () => {
    expectClose(reflectionOfSwr(3), 0.5, 1e-12);
    expect(reflectionOfSwr(Number.POSITIVE_INFINITY)).toBe(1);
    expect(swrOfReflection(1)).toBe(1e12);
    fc.assert(fc.property(swrRange, (swr) => expectClose(swrOfReflection(reflectionOfSwr(swr)), swr, 1e-9)));
  });

  it('sees less mismatch behind a lossy network', () => {
    expectClose(swrAtDrains(3, 0), 3, 1e-12);
    // 3 dB of loss bring the reflection of a short down by 6 dB.
    expectClose(swrAtDrains(1e12, 10 * Math.log10(2)), 3, 1e-9);
  });
});

describe('mismatched network', () => {
  // Round trip: forward power F enters, F a arrives, F a g^2 goes back, F a^2 g^2 leaves the near end.
  it('follows the waves on a lossy line', () => {
    fc.assert(
      fc.property(swrRange, fc.double({ min: 0, max: 6, noNaN: true }), (swr, loss) => {
        const gain = 1 / drainPower(1, loss);
        const square = reflectionOfSwr(swr) ** 2;
        const entering = 1 - gain * gain * square;
        const leaving = gain * (1 - square);
        expectClose(networkTransmission(swr, loss), leaving / entering, 1e-9);
        expect(networkTransmission(swr, loss)).toBeLessThanOrEqual(gain * (1 + 1e-12));
      }),
    );
  });

  it('passes the matched share at a ratio of 1 and nothing into a short', () => {
    expectClose(networkTransmission(1, 0.6), 1 / drainPower(1, 0.6), 1e-12);
    expect(networkTransmission(Number.POSITIVE_INFINITY, 0)).toBe(0);
  });
});

describe('foldback and drain voltage', () => {
  it('leaves full power up to the threshold, then holds the reflected power', () => {
    expect(foldbackShare(1.5, 2)).toBe(1);
    expect(foldbackShare(8, null)).toBe(1);
    // |G| = 1/3 at SWR 2 and 1/2 at SWR 3.
    expect(foldbackShare(3, 2)).toBeCloseTo(4 / 9, 12);
  });

  it('stands above the peaks of the waveform solution with shorted harmonics', () => {
    const { table } = cases.groups.mismatch.find((one) => one.id === 'mismatch_HB')!.expected as {
      table: Record<string, { vmax_over_Vdd: number }>;
    };
    for (const [swr, { vmax_over_Vdd }] of Object.entries(table)) {
      expect(drainPeakVoltage('B', 13.8, 12.3, Number(swr))).toBeGreaterThan(vmax_over_Vdd * 13.8);
    }
  });

  it('is 3.562 times the rail in class E (Sokal 1975: 3.56) and twice it in class D', () => {
    expect(drainPeakVoltage('E', 10, 0, 1)).toBeCloseTo(35.62, 2);
    expect(drainPeakVoltage('D', 10, 0, 5)).toBe(20);
  });
});
