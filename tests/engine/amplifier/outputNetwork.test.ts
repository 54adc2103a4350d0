import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  antennaPower,
  drainPower,
  lossShare,
  networkHeat,
} from '../../../src/engine/amplifier/outputNetwork.ts';
import { expectClose } from '../closeTo.ts';

describe('output network', () => {
  // Bench note on the low-pass board of a commercial 100 W set: 0.4 dB is 8.8 %, 0.18 dB 4 %, 0.3 dB 6.5 % (rounded there).
  it.each([
    [0.4, 0.088, 1e-3],
    [0.18, 0.04, 0.02],
    [0.3, 0.065, 0.03],
  ])('turns %f dB into the published share', (loss, share, tolerance) => {
    expectClose(lossShare(loss), share, tolerance);
  });

  it('needs 114.8 W at the drains for 100 W behind 0.6 dB', () => {
    expectClose(drainPower(100, 0.6), 114.8, 2e-4);
    expectClose(networkHeat(100, 0.6), 14.8, 2e-3);
  });

  it('closes energy and turns back', () => {
    const loss = fc.double({ min: 0, max: 6, noNaN: true });
    fc.assert(
      fc.property(loss, fc.double({ min: 0.01, max: 3000, noNaN: true }), (decibels, watts) => {
        const drains = drainPower(watts, decibels);
        expectClose(antennaPower(drains, decibels), watts, 1e-12);
        expectClose(watts + networkHeat(watts, decibels), drains, 1e-12);
        expect(Math.abs(lossShare(decibels) * drains - networkHeat(watts, decibels))).toBeLessThan(
          1e-11 * drains,
        );
      }),
    );
  });
});
