import { describe, expect, it } from 'vitest';
import { loadPerDeviceOf, primaryLoadOf } from '../../../src/engine/amplifier/stageLoad.ts';
import { loadOfTurns } from '../../../src/engine/amplifier/turnsRatio.ts';
import { expectClose } from '../closeTo.ts';

describe('load of a device behind the output transformer', () => {
  it('is half of the drain-to-drain load in a push-pull pair, a quarter of a pair of pairs each', () => {
    expectClose(loadPerDeviceOf('pushPull', 2, 4), loadOfTurns(4) / 2, 1e-15);
    expectClose(loadPerDeviceOf('pushPull', 4, 4), loadOfTurns(4), 1e-15);
  });

  it('is the whole load for one device, and n times it for n in parallel', () => {
    expectClose(loadPerDeviceOf('parallel', 1, 2), 12.5, 1e-15);
    expectClose(loadPerDeviceOf('parallel', 3, 2), 37.5, 1e-15);
  });

  it.each(['parallel', 'pushPull'] as const)('goes back to the primary: %s', (arrangement) => {
    const load = loadPerDeviceOf(arrangement, 4, 3);
    expectClose(primaryLoadOf(arrangement, 4, load), loadOfTurns(3), 1e-15);
  });

  it('power is the same seen from the devices and from the primary', () => {
    // Pair with 12 V of swing each: 24 V across the primary.
    const load = loadPerDeviceOf('pushPull', 2, 4);
    expectClose((2 * 12 ** 2) / (2 * load), 24 ** 2 / (2 * loadOfTurns(4)), 1e-15);
    expect(loadOfTurns(4)).toBe(3.125);
  });
});
