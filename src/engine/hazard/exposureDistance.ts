import type { Band } from '../../../shared/design/peopleSchema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { bandTopEdge } from './amateurBands.ts';
import { farFieldDistance, lightSpeed, smallAntennaDistance } from './exposureFields.ts';
import {
  defaultLimitSet,
  type ExposureLimit,
  exposureLimit,
  type LimitSet,
  type Tier,
} from './exposureLimits.ts';

export type AntennaKind = 'halfWaveWire' | 'smallLoaded' | 'smallLoop' | 'other';

/** Field over that in free space. OET Bulletin 65: 1.6 usual, 2 full reflection. */
export const groundFactors = { free: 1, usual: 1.6, worst: 2 } as const;
export type GroundFactor = keyof typeof groundFactors;

/** No distance below this is claimed, m: there contact and burns decide. Own choice. */
export const leastDistance = 0.2;

export interface ExposureInput {
  readonly kind: AntennaKind;
  readonly band: Band;
  /** dBi */
  readonly gain: number;
  /** dB */
  readonly feedLineLoss: number;
  /** Average over peak envelope power of the mode, exposure only. */
  readonly exposureModeFactor: number;
  /** Share of the averaging time on the air, busiest window. */
  readonly exposureTransmitShare: number;
  readonly tier: Tier;
  readonly groundFactor: GroundFactor;
  /** Forward peak envelope power at the antenna connector, W. */
  readonly pep: number;
  readonly set?: LimitSet;
}

export interface ExposureDistance {
  /** As computed, m. */
  readonly distance: number;
  /** Rounded up, m. */
  readonly shown: number;
  /** Average power at the antenna, W. */
  readonly averagePower: number;
  /** Average effective isotropic radiated power, W. */
  readonly eirp: number;
  /** Hz */
  readonly frequency: number;
  readonly limit: ExposureLimit;
  readonly method: 'farField' | 'smallAntenna';
  /** Reach of the near zone, λ/2π, m. */
  readonly nearZone: number;
}

/** Average power at the antenna, W: PEP · mode factor · share on the air, less the loss of the line. */
export function exposurePower(
  pep: number,
  modeFactor: number,
  transmitShare: number,
  feedLineLoss: number,
): number {
  return pep * modeFactor * transmitShare * 10 ** (-feedLineLoss / 10);
}

/**
 * Largest share of an averaging window spent transmitting when spells of `on` and `off` alternate, starting with on.
 *
 * All in the same unit of time; on, off >= 0 and not both 0. OET Bulletin 65 Supplement B, pages 12 to 14.
 */
export function transmitShareInWindow(on: number, off: number, window: number): number {
  const spell = on + off;
  if (!(spell > 0) || !(window > 0)) return on > 0 ? 1 : 0;
  const whole = Math.floor(window / spell + 1e-12);
  const rest = Math.max(0, window - whole * spell);
  return Math.min(1, (whole * on + Math.min(rest, on)) / window);
}

/** Rounds a distance up: to 0.1 m, from 10 m to two figures; never below 0.2 m. */
export function roundUpDistance(distance: number): number {
  const step = distance < 10 ? 0.1 : 10 ** (Math.floor(Math.log10(distance)) - 1);
  const steps = Math.ceil(distance / step - 1e-9);
  return Math.max(leastDistance, Number((steps * step).toPrecision(12)));
}

/**
 * Least distance from an antenna at which a limit set is met on average: an estimate for planning, not a survey.
 *
 * Half-wave or longer wire: far-field form, measured from the nearest part of the wire. Short loaded antennas and small
 * loops: largest fields of the infinitesimal dipole or loop, and not less than the far-field form. Worked out at the top
 * edge of the band.
 * Errors: `exposureNeedsSurvey` for any other antenna, where no formula holds; those of `exposureLimit`.
 * Sources: FCC OET Bulletin 65 (1997); Balanis, Antenna Theory, for small antennas.
 */
export function exposureDistance(input: ExposureInput): Outcome<ExposureDistance> {
  if (input.kind === 'other') return needsSurvey();
  const frequency = bandTopEdge(input.band);
  const limit = exposureLimit(input.set ?? defaultLimitSet, input.tier, frequency);
  if (!limit.ok) return limit;
  const { pep, exposureModeFactor, exposureTransmitShare, feedLineLoss } = input;
  const averagePower = exposurePower(pep, exposureModeFactor, exposureTransmitShare, feedLineLoss);
  const eirp = averagePower * 10 ** (input.gain / 10);
  const factor = groundFactors[input.groundFactor];
  const far = farFieldDistance(eirp, factor, limit.value);
  const small = input.kind !== 'halfWaveWire';
  const distance = small
    ? Math.max(far, smallAntennaDistance(smallKind(input.kind), averagePower, frequency, factor, limit.value))
    : far;
  const nearZone = lightSpeed / frequency / (2 * Math.PI);
  const result: ExposureDistance = {
    distance,
    shown: roundUpDistance(distance),
    averagePower,
    eirp,
    frequency,
    limit: limit.value,
    method: small ? 'smallAntenna' : 'farField',
    nearZone,
  };
  return success(result, [...limit.notes, ...distanceNotes(input.kind, distance, nearZone)]);
}

function smallKind(kind: AntennaKind): 'dipole' | 'loop' {
  return kind === 'smallLoop' ? 'loop' : 'dipole';
}

function distanceNotes(kind: AntennaKind, distance: number, nearZone: number): Note[] {
  if (kind === 'halfWaveWire') {
    if (distance >= nearZone) return [];
    return [
      note(
        'assumed',
        'exposureFromWire',
        'Measured from the nearest part of the wire, including its ends. The ground factor is a far-field figure; feed-line radiation and metal nearby are not counted.',
        { nearZone },
      ),
    ];
  }
  return [
    note(
      'assumed',
      'exposureSmallAntenna',
      'Computed for an antenna much smaller than the distance, in free space, all power radiated.',
      { nearZone },
    ),
  ];
}

function needsSurvey(): Outcome<never> {
  return failure(
    'exposureNeedsSurvey',
    'No formula holds for this antenna: it needs measurement or numerical modelling. Keep people away and the power low until that is done.',
  );
}

/** The distance in one line, with set, tier and averaging time beside it. */
export function exposureSentence(found: ExposureDistance): string {
  const minutes = Math.round(found.limit.averaging / 60);
  const { setName, tierName } = found.limit;
  return `Estimate: at least ${found.shown} m from the antenna (${setName}, ${tierName}, averaged over ${minutes} min).`;
}
