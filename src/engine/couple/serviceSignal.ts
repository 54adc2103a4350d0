import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type { Service } from '../../../shared/solution.ts';
import { type EnvelopeTable, meanOver } from '../signal/envelopeTable.ts';
import { keyingPattern, type Segment } from '../signal/keying.ts';
import { type SlotTimes, slotTimes, type TimedMode } from '../signal/modes.ts';
import { speechEnvelope } from '../signal/speechEnvelope.ts';
import {
  amplitudeModulationEnvelope,
  carrierEnvelope,
  phaseShiftEnvelope,
  twoToneEnvelope,
} from '../signal/steadyEnvelopes.ts';

/** What happens while the key is up within an over. */
export type KeyUp = 'bias' | 'receive' | 'none';

/** The signal of one service within an over. */
export interface Signal {
  /** Output amplitude while the key is down. */
  readonly envelope: EnvelopeTable;
  /** Marks and spaces that repeat within the over; null for an unbroken signal. */
  readonly segments: readonly Segment[] | null;
  /** Share of the over with the key down. */
  readonly keyedShare: number;
  readonly keyUp: KeyUp;
  /** Speech can stay at one loudness for a vowel: its ripple is bounded by the hottest amplitude. */
  readonly spoken: boolean;
}

type ServiceInput = Design['service'];
type SpeechKind = ServiceInput['speechKind'];

/** Average RF power over PEP of the presets. Judgement, but for the regulator's 20 % (an exposure average). */
const presetRatios: Readonly<Record<Exclude<SpeechKind, 'own' | 'twoTone'>, number>> = {
  relaxed: 0.08,
  unprocessed: 0.2,
  compressed: 0.3,
  heavy: 0.5,
};

/** Share of phase reversals in text; own choice. */
const textReversals = 0.5;

/** Average RF power over PEP while talking, as chosen; a half for two tones. */
export function speechRatio({ speechKind, averageToPeak }: ServiceInput): number {
  if (speechKind === 'own') return averageToPeak;
  return speechKind === 'twoTone' ? 0.5 : presetRatios[speechKind];
}

/** The times of a mode that sends in fixed slots; null for the others. */
export function slotsOf(mode: ServiceInput['keyDownMode']): SlotTimes | null {
  return mode === 'FT8' || mode === 'FT4' || mode === 'WSPR' ? slotTimes(mode satisfies TimedMode) : null;
}

const shapedModes: ReadonlySet<ServiceInput['keyDownMode']> = new Set(['am', 'phaseShift', 'phaseShiftIdle']);

/** Whether a service needs an output that follows its drive. */
export function needsLinear(design: Design, service: Service): boolean {
  return service === 'ssb' || (service === 'keyDown' && shapedModes.has(design.service.keyDownMode));
}

/** A service that a class cannot carry, with the reason. */
export function refusedForClass(className: string, what: string): Outcome<never> {
  return failure(
    'notLinear',
    `Class ${className} cannot carry ${what}: its output does not follow the envelope. Use class A, AB or B for it.`,
  );
}

function unbroken(envelope: EnvelopeTable, spoken = false): Signal {
  return { envelope, segments: null, keyedShare: 1, keyUp: 'none', spoken };
}

function speechSignal(service: ServiceInput, breaks: readonly number[]): Outcome<Signal> {
  if (service.speechKind === 'twoTone') return success(unbroken(twoToneEnvelope(breaks)));
  const envelope = speechEnvelope(speechRatio(service), service.speechActivity, breaks);
  return envelope.ok ? success(unbroken(envelope.value, true)) : envelope;
}

function keyedSignal(design: Design): Outcome<Signal> {
  const { keyingSpeed, keyingText, keyingWeight } = design.service;
  const pattern = keyingPattern(keyingSpeed, { text: keyingText, weight: keyingWeight });
  if (!pattern.ok) return pattern;
  return success({
    envelope: carrierEnvelope(),
    segments: pattern.value.segments,
    keyedShare: pattern.value.keyedShare,
    keyUp: design.amplifier.biasKeyed ? 'none' : 'bias',
    spoken: false,
  });
}

function modeSignal(service: ServiceInput, breaks: readonly number[]): Signal {
  const slots = slotsOf(service.keyDownMode);
  if (slots) {
    const { onTime, slot } = slots;
    return {
      envelope: carrierEnvelope(),
      segments: [
        { on: true, duration: onTime },
        { on: false, duration: slot - onTime },
      ],
      keyedShare: onTime / slot,
      keyUp: 'receive',
      spoken: false,
    };
  }
  switch (service.keyDownMode) {
    case 'am':
      return unbroken(amplitudeModulationEnvelope(service.modulationDepth, breaks));
    case 'phaseShift':
      return unbroken(phaseShiftEnvelope(textReversals, breaks));
    case 'phaseShiftIdle':
      return unbroken(phaseShiftEnvelope(1, breaks));
    default:
      return unbroken(carrierEnvelope());
  }
}

/**
 * The signal of a service of a design.
 *
 * breaks: amplitudes at which the final's current has a kink, for the averages.
 */
export function signalOf(design: Design, service: Service, breaks: readonly number[]): Outcome<Signal> {
  if (service === 'ssb') return speechSignal(design.service, breaks);
  if (service === 'cw') return keyedSignal(design);
  return success(modeSignal(design.service, breaks));
}

/** Average RF power over PEP during the over. */
export function averageRatioOf(signal: Signal): number {
  return signal.keyedShare * meanOver(signal.envelope, (r) => r * r);
}
