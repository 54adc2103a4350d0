import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  meanOfOver,
  type SteadyMode,
  slotPattern,
  slotTimes,
  steadyModeEnvelope,
  type TimedMode,
} from '../../../src/engine/signal/modes.ts';
import { carrierEnvelope } from '../../../src/engine/signal/steadyEnvelopes.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

describe('steady modes', () => {
  // Exact by derivation; 61.7 % for two tones in class B is the literature's figure (from memory).
  it.each([
    ['carrier', 1, 1],
    ['FM', 1, 1],
    ['RTTY', 1, 1],
    ['SSTV', 1, 1],
    ['two tones', 0.5, 0.6366],
    ['PSK31 idle', 0.5, 0.6366],
    ['PSK31', 0.75, 0.8183],
    ['AM carrier', 0.25, 0.5],
    ['AM', 0.375, 0.5],
  ] as [SteadyMode, number, number][])('%s has its moments', (mode, square, mean) => {
    expectClose(steadyModeEnvelope(mode).averageToPeak, square, 1e-9);
    expectClose(steadyModeEnvelope(mode).meanAmplitude, mean, 1e-4);
  });

  // List posting of 2001: half reversals save 24 % against none.
  it('saves about the published share with half reversals', () => {
    expectClose(1 - steadyModeEnvelope('PSK31').averageToPeak, 0.24, 0.05);
  });
});

describe('timed modes', () => {
  it.each(['ft8', 'wspr'])('agrees with the protocol: %s', (id) => {
    const { expected } = cases.groups.timing.find((c) => c.id === id)!;
    const times = slotTimes(id.toUpperCase() as TimedMode);
    expectClose(times.onTime, expected.tx!, 1e-9);
    expectClose(times.slot, expected.slot!, 1e-9);
    expectClose(times.onTime / times.slot, expected.duty_slot!, 1e-9);
  });

  // Published: FT8 12.64 s in 15 s, FT4 5.04 s in 7.5 s.
  it.each([
    ['FT8', 0.8427, 0.4213],
    ['FT4', 0.672, 0.336],
  ] as [TimedMode, number, number][])('%s has its shares of the time', (mode, always, alternate) => {
    expectClose(shareOn(mode, 1), always, 1e-4);
    expectClose(shareOn(mode, 2), alternate, 2e-4);
  });

  it('keeps the carrier and fills whole slots', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('FT8', 'FT4', 'WSPR') as fc.Arbitrary<TimedMode>,
        fc.integer({ min: -3, max: 20 }),
        (mode, slots) => {
          const [carrier, pause] = slotPattern(mode, slots);
          expect(carrier).toEqual({ on: true, duration: slotTimes(mode).onTime });
          expect(pause!.on).toBe(false);
          expect(pause!.duration).toBeGreaterThan(0);
          expectClose(carrier!.duration + pause!.duration, Math.max(1, slots) * slotTimes(mode).slot, 1e-12);
        },
      ),
    );
  });

  it('averages key-down and key-up heat over an over', () => {
    expectClose(
      meanOfOver(carrierEnvelope(), 0.44, () => 54.734, 13.8),
      0.44 * 54.734 + 0.56 * 13.8,
      1e-12,
    );
  });
});

function shareOn(mode: TimedMode, slots: number): number {
  const pattern = slotPattern(mode, slots);
  const total = pattern.reduce((sum, { duration }) => sum + duration, 0);
  return pattern[0]!.duration / total;
}
