import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { switchingEstimate } from '../../../src/engine/amplifier/switchingEstimate.ts';
import { classEEfficiency } from '../../../src/engine/amplifier/switchingTheory.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const base = {
  class: 'E',
  power: 10,
  rail: 12,
  deviceCount: 1,
  onResistance: 0.1,
  outputCapacitance: 0,
  frequency: 7e6,
  otherLoss: 0,
} as const;

describe('efficiency of a switching stage from its loss terms', () => {
  it('class E: 1/(1 + 1.365 Ron/R) to first order, with the load 0.5768 Vdd²/P (Sokal 1975; Raab and Sokal 1978, from memory)', () => {
    const load = (0.5768 * 12 ** 2) / 10;
    const found = resultOf(switchingEstimate({ ...base, onResistance: 0.01 }));
    expectClose(found.efficiency, Math.min(0.995, classEEfficiency(0.01, load)), 1e-3);
    const more = resultOf(switchingEstimate({ ...base, onResistance: 0.3 }));
    // The second order is left out of the printed form.
    expectClose(more.efficiency, classEEfficiency(0.3, load), 6e-3);
  });

  it('class D loses n Coss (2 Vdd)² f/2 in its capacitances, E and F nothing', () => {
    const pair = { ...base, class: 'D', deviceCount: 2, outputCapacitance: 300e-12, rail: 13.8 } as const;
    // Twice what the half bridge of the tables loses at half the swing on each of the two capacitances: 4 x 0.800 W / 2.
    expectClose(resultOf(switchingEstimate(pair)).capacitanceLoss, 2 * 0.799848, 1e-9);
    expect(resultOf(switchingEstimate({ ...pair, class: 'E' })).capacitanceLoss).toBe(0);
  });

  it('accounts for every watt, and more loss never raises it', () => {
    const share = fc.double({ min: 0, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(share, share, (onResistance, otherLoss) => {
        const outcome = switchingEstimate({ ...base, onResistance, otherLoss });
        if (!outcome.ok || outcome.value.efficiency === 0.995) return;
        const { efficiency, conductionLoss } = outcome.value;
        expectClose(10 / efficiency, 10 + conductionLoss + 10 * otherLoss, 1e-9);
        const worse = switchingEstimate({ ...base, onResistance: onResistance + 0.05, otherLoss });
        if (worse.ok) expect(worse.value.efficiency).toBeLessThanOrEqual(efficiency);
      }),
    );
  });

  it('refuses what the on-resistance cannot carry', () => {
    const refused = switchingEstimate({ ...base, onResistance: 5 });
    expect(!refused.ok && refused.reason.key).toBe('power not reachable');
  });
});
