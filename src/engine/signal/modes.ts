import timed from '../../../reference-data/timed-modes.json' with { type: 'json' };
import { type EnvelopeTable, meanOver } from './envelopeTable.ts';
import type { Segment } from './keying.ts';
import {
  amplitudeModulationEnvelope,
  carrierEnvelope,
  phaseShiftEnvelope,
  twoToneEnvelope,
} from './steadyEnvelopes.ts';

/** Modes with their own envelope while the key is down; speech and CW have rooms of their own. */
export type SteadyMode =
  | 'carrier'
  | 'FM'
  | 'RTTY'
  | 'SSTV'
  | 'two tones'
  | 'PSK31 idle'
  | 'PSK31'
  | 'AM carrier'
  | 'AM';

/** Usual share of phase reversals in text; own choice. */
const textReversals = 0.5;

/**
 * Envelope of a mode that is on for the whole over.
 *
 * @param breaks amplitudes at which the function to be averaged has a kink
 */
export function steadyModeEnvelope(mode: SteadyMode, breaks: readonly number[] = []): EnvelopeTable {
  switch (mode) {
    case 'two tones':
    case 'PSK31 idle':
      return twoToneEnvelope(breaks);
    case 'PSK31':
      return phaseShiftEnvelope(textReversals, breaks);
    case 'AM carrier':
      return amplitudeModulationEnvelope(0);
    case 'AM':
      return amplitudeModulationEnvelope(1, breaks);
    default:
      return carrierEnvelope();
  }
}

/** Digital modes that send an unbroken carrier in fixed time slots. */
export type TimedMode = keyof typeof timed.modes;

export interface SlotTimes {
  /** Carrier in one slot, seconds. */
  readonly onTime: number;
  /** Seconds. */
  readonly slot: number;
}

/** Time on the air in one slot of a timed mode. */
export function slotTimes(mode: TimedMode): SlotTimes {
  const entry = timed.modes[mode];
  const onTime = 'onTime' in entry ? entry.onTime : entry.symbols * entry.symbolTime;
  return { onTime, slot: entry.slot };
}

/**
 * Carrier and silence of a timed mode, to be repeated.
 *
 * @param slots length of the pattern in slots, sending in the first: 2 for a contact that takes turns, 5 for WSPR
 *   every ten minutes
 */
export function slotPattern(mode: TimedMode, slots = 2): readonly Segment[] {
  const { onTime, slot } = slotTimes(mode);
  return [
    { on: true, duration: onTime },
    { on: false, duration: Math.max(1, Math.round(slots)) * slot - onTime },
  ];
}

/**
 * Mean of a heat or power over an over in which the key is down for a share of the time.
 *
 * @param keyedShare share of the over with the key down: 1 but for CW
 * @param valueAt heat or power at an amplitude
 * @param keyUp heat or power with the key up: that of the bias if it is held, 0 if it is keyed
 */
export function meanOfOver(
  envelope: EnvelopeTable,
  keyedShare: number,
  valueAt: (amplitude: number) => number,
  keyUp: number,
): number {
  return keyedShare * meanOver(envelope, valueAt) + (1 - keyedShare) * keyUp;
}
