import type { Band } from '../../../shared/design/peopleSchema.ts';
import type { AntennaInput } from '../../../shared/design/schema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { bandTopEdge } from './amateurBands.ts';
import {
  farFieldDistance,
  lightSpeed,
  loopAxisDistance,
  loopEfficiency,
  loopRadiationResistance,
  smallAntennaDistance,
} from './exposureFields.ts';
import { type ExposureLimit, exposureLimit, type LimitSet } from './exposureLimits.ts';

export type AntennaKind = AntennaInput['kind'];

/** Field over that in free space. OET Bulletin 65: 1.6 usual, 2 full reflection. */
export const groundFactors = { free: 1, usual: 1.6, worst: 2 } as const;
export type GroundFactor = keyof typeof groundFactors;

/** No distance below this is claimed, m: there contact and burns decide. Own choice. */
export const leastDistance = 0.2;

/** What the builder says of the antenna and of the time on the air, and the power. */
export type ExposureInput = Omit<AntennaInput, 'limitSet'> & {
  readonly limitSet: LimitSet;
  /** Forward peak envelope power at the antenna connector, W. */
  readonly pep: number;
};

export interface ExposureDistance {
  /** As computed, m. */
  readonly distance: number;
  /** Rounded up, m. */
  readonly shown: number;
  /** Share of the averaging time on the air. */
  readonly transmitShare: number;
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

/** Share of an averaging window on the air, as entered or from overs and pauses. window: s. */
export function shareInWindow(input: ExposureInput, window: number): number {
  return input.exposureBy === 'overs'
    ? transmitShareInWindow(input.exposureOver, input.exposurePause, window)
    : input.exposureTransmitShare;
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
 * loops: largest fields of the infinitesimal dipole or loop with the power they radiate, and not less than the
 * far-field form. A loop radiates R_rad/(R_rad + R_loss) of its power; its dipole moment is then that of the current in
 * it, and the field of that moment is nowhere below the field on the axis of the real loop. Worked out at the top edge
 * of the band.
 * Errors: `exposureNeedsSurvey` for any other antenna, where no formula holds; those of `exposureLimit`.
 * Sources: FCC OET Bulletin 65 (1997); Balanis, Antenna Theory, for small antennas.
 */
export function exposureDistance(input: ExposureInput, band: Band = input.band): Outcome<ExposureDistance> {
  if (input.kind === 'other') return needsSurvey();
  const frequency = bandTopEdge(band);
  const found = exposureLimit(input.limitSet, input.tier, frequency);
  if (!found.ok) return found;
  const limit = found.value;
  const transmitShare = shareInWindow(input, limit.averaging);
  const averagePower = exposurePower(input.pep, input.exposureModeFactor, transmitShare, input.feedLineLoss);
  const eirp = averagePower * 10 ** (input.gain / 10);
  const factor = groundFactors[input.groundFactor];
  const far = farFieldDistance(eirp, factor, limit);
  const distance = Math.max(far, nearDistance(input, averagePower, frequency, factor, limit));
  const nearZone = lightSpeed / frequency / (2 * Math.PI);
  const result: ExposureDistance = {
    distance,
    shown: roundUpDistance(distance),
    transmitShare,
    averagePower,
    eirp,
    frequency,
    limit,
    method: input.kind === 'halfWaveWire' ? 'farField' : 'smallAntenna',
    nearZone,
  };
  return success(result, [...found.notes, ...distanceNotes(input, distance, nearZone)]);
}

/** What the near field of a small antenna asks for, m; 0 for a wire, whose far-field form holds close by. */
function nearDistance(
  input: ExposureInput,
  power: number,
  frequency: number,
  factor: number,
  limit: ExposureLimit,
): number {
  if (input.kind === 'halfWaveWire') return 0;
  if (input.kind !== 'smallLoop') {
    return smallAntennaDistance('dipole', power * input.efficiency, frequency, factor, limit);
  }
  const { loopRadius: radius, loopResistance: loss } = input;
  const radiated = power * loopEfficiency(radius, loss, frequency);
  const total = loopRadiationResistance(radius, frequency) + loss;
  return Math.max(
    smallAntennaDistance('loop', radiated, frequency, factor, limit),
    loopAxisDistance(power, total, radius, factor, limit),
  );
}

/** A loop counts as small up to this circumference in wavelengths. */
const smallLoop = 0.25;

function distanceNotes(input: ExposureInput, distance: number, nearZone: number): Note[] {
  if (input.kind === 'halfWaveWire') {
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
  const found = [
    note(
      'assumed',
      'exposureSmallAntenna',
      input.kind === 'smallLoop'
        ? 'Computed for a loop much smaller than the wavelength with the same current all around it, in free space.'
        : 'Computed for an antenna much smaller than the distance, in free space.',
      { nearZone },
    ),
  ];
  // λ/2π is the near zone: circumference over wavelength is radius over near zone.
  const circumference = input.loopRadius / nearZone;
  if (input.kind === 'smallLoop' && circumference > smallLoop) {
    found.push(
      note(
        'outside validity',
        'loopNotSmall',
        'On this band the loop is longer around than a quarter of the wavelength: its current is not even and the distance is less certain.',
        { circumference },
      ),
    );
  }
  return found;
}

function needsSurvey(): Outcome<never> {
  return failure(
    'exposureNeedsSurvey',
    'No formula holds for this antenna: it needs measurement or numerical modelling. Keep people away and the power low until that is done.',
  );
}

/** The distance in one line, with set, tier and averaging time beside it, and whether people come nearer. */
export function exposureSentence(found: ExposureDistance, nearest: number | null = null): string {
  const minutes = Math.round(found.limit.averaging / 60);
  const { setName, tierName } = found.limit;
  const estimate = `Estimate: at least ${found.shown} m from the antenna (${setName}, ${tierName}, averaged over ${minutes} min).`;
  if (nearest === null) return estimate;
  const come = `People come as near as ${Number(nearest.toPrecision(2))} m`;
  return nearest < found.distance ? `${estimate} ${come}: too near.` : `${estimate} ${come}, as entered.`;
}
