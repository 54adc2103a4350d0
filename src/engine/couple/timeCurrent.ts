import type { Design } from '../../../shared/design/schema.ts';
import { fuseKinds } from '../../../shared/design/supplyChoices.ts';
import { type Service, services } from '../../../shared/solution.ts';
import type { LoadPoint, TimeCurrent } from '../../../shared/supplyCurves.ts';
import { adiabaticWithstand, longestAdiabaticTime, shortTimeLimit } from '../supply/adiabatic.ts';
import type { Conductor } from '../supply/conductor.ts';
import { fuseGates, gateBand } from '../supply/fuse.ts';
import { wireTemperature } from '../supply/wireTemperature.ts';
import { wireTimeConstant } from '../supply/wireTimeConstant.ts';
import type { PowerPoint } from './feed.ts';
import type { CycleState } from './serviceCycle.ts';
import type { Protection } from './supplySide.ts';

/** A held vowel, s: as long as a syllable of speech can stay at the peak. Own choice. */
const syllable = 0.3;
const pointsPerDecade = 40;
/** The plot begins at this share of the rating and ends above the highest gate. */
const firstShare = 0.3;
const lastMultiple = 12;

/**
 * Time a wire bears a current, s; null when it bears it for ever.
 *
 * Up to 5 s adiabatic to what the insulation bears for a moment; longer by its time constant to the limit of the
 * insulation, t = −τ ln(1 − (Iz/I)²). Own choice of the join: the longer of the two beyond 5 s.
 */
export function wireBears(
  conductor: Conductor,
  insulationLimit: number,
  ampacity: number,
  timeConstant: number | null,
  current: number,
): number | null {
  if (current <= ampacity) return null;
  const withstand = adiabaticWithstand(
    conductor.adiabaticArea,
    insulationLimit,
    shortTimeLimit(insulationLimit),
  );
  const adiabatic = withstand / (current * current);
  if (adiabatic <= longestAdiabaticTime || timeConstant === null) {
    return Math.min(adiabatic, longestAdiabaticTime);
  }
  const slow = -timeConstant * Math.log1p(-((ampacity / current) ** 2));
  return Math.max(longestAdiabaticTime, slow);
}

/** Fuse band, wire limit and load points of a design; null when no fuse is to be had. */
export function timeCurrent(
  design: Design,
  conductor: Conductor,
  protection: Protection,
  point: PowerPoint,
  cycles: Readonly<Record<Service, CycleState | null>>,
): TimeCurrent | null {
  const { fuseRating: rating } = protection;
  const { wiring, surroundings } = design;
  if (rating === null) return null;
  const ampacity = protection.ampacity.limit;
  const warm = wireTemperature(conductor, ampacity, {
    ambient: surroundings.ambient,
    together: wiring.together,
  });
  const constant = warm.ok
    ? wireTimeConstant(conductor, ampacity, warm.value.surface, surroundings.ambient)
    : null;
  const loads = loadPoints(design, protection, point, cycles);
  const top = Math.max(lastMultiple * rating, ...loads.map((load) => load.current * 1.2));
  const bottom = Math.min(firstShare * rating, ...loads.map((load) => load.current * 0.8));
  const current = currents(Math.max(bottom, rating * 1e-3), top, rating, design);
  const bands = current.map((one) => gateBand(wiring.fuse, rating, one));
  return {
    fuse: `${rating} A, ${fuseKinds[wiring.fuse]}`,
    current,
    holds: bands.map((band) => band.shortest),
    opens: bands.map((band) => band.longest),
    wire: current.map((one) => wireBears(conductor, wiring.insulationLimit, ampacity, constant, one)),
    loads,
  };
}

/** Evenly over the logarithm, with each gate met just before and at its current so that the steps stand upright. */
function currents(from: number, to: number, rating: number, { wiring }: Design): readonly number[] {
  const count = Math.max(2, Math.ceil(pointsPerDecade * Math.log10(to / from)));
  const found = Array.from({ length: count + 1 }, (_, index) => from * (to / from) ** (index / count));
  for (const gate of fuseGates(wiring.fuse, rating)) {
    const edge = (gate.percent / 100) * rating;
    for (const one of [edge * (1 - 1e-6), edge, edge * (1 + 1e-6)]) {
      if (one > from && one < to) found.push(one);
    }
  }
  return found.sort((a, b) => a - b);
}

function loadPoints(
  design: Design,
  protection: Protection,
  point: PowerPoint,
  cycles: Readonly<Record<Service, CycleState | null>>,
): readonly LoadPoint[] {
  const over = design.service.cycle * (design.service.transmitShare || 1);
  const names = { ssb: 'SSB, r.m.s.', cw: 'CW, r.m.s.', keyDown: 'long carrier' } as const;
  const found: LoadPoint[] = [];
  for (const service of services) {
    const state = cycles[service];
    if (!state || (service === 'keyDown' && design.wiring.ssbOnly)) continue;
    const current = Math.sqrt(state.load.over.sourceCurrentSquare);
    if (current > 0) found.push({ label: names[service], current, time: over });
  }
  if (cycles.ssb && point.sourceCurrent > 0) {
    found.push({ label: 'peak of a syllable', current: point.sourceCurrent, time: syllable });
  }
  const fault = protection.farFault?.current;
  const opens =
    fault === undefined || protection.fuseRating === null
      ? null
      : gateBand(design.wiring.fuse, protection.fuseRating, fault).longest;
  if (fault !== undefined && opens !== null) {
    found.push({ label: 'short at the far end', current: fault, time: opens });
  }
  return found;
}
