import type { Service } from '../../../shared/solution.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { evaluateCubic, type MonotoneCubic, monotoneCubic } from '../numerics/monotoneCubic.ts';
import type { Coupled } from './coupled.ts';
import { heatsMoreThanReceive } from './cycleHeat.ts';
import { type DutyLimit, type DutyPoint, safeShare } from './duty.ts';
import { type CycleState, cycleAt } from './serviceCycle.ts';

/** A safe duty of a sample is found to this; percentiles of many need no more. */
const shareTolerance = 5e-4;
const mostSteps = 4;
/** Shares at which the course of the design itself is taken: close together where it bends most. */
const courseShares = [0, 0.003, 0.01, 0.03, 0.07, 0.15, 0.3, 0.5, 0.75, 1] as const;
/** Fewer states than this make no course. */
const fewestStates = 3;

/**
 * How far the design itself is over its limit along the duty. Its samples bend as it does: along this course, in place
 * of the share, theirs are nearly straight.
 */
export interface DutyCourse {
  /** At the planned share. */
  readonly planned: CycleState;
  /** Excess there, K. */
  readonly plannedPlace: number;
  /** Share at a nominal excess; null where the design's own temperatures do not rise with the duty. */
  readonly shareAt: MonotoneCubic | null;
}

/** How far the limit that is nearest, or passed most, is passed, K. */
function excessOf(limits: readonly DutyLimit[], state: DutyPoint): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const limit of limits) most = Math.max(most, limit.temperature(state) - limit.limit);
  return most;
}

/** The course of a service of the design itself. */
export function dutyCourse(
  coupled: Coupled,
  service: Service,
  limits: readonly DutyLimit[],
  planned: CycleState,
): DutyCourse {
  const plannedPlace = excessOf(limits, planned);
  const shares = [...new Set([...courseShares, planned.share])].sort((a, b) => a - b);
  const points: [excess: number, share: number][] = [];
  let guess = planned.guess;
  for (const share of shares) {
    const state =
      share === planned.share
        ? { ok: true as const, value: planned }
        : cycleAt(coupled, service, share, guess);
    if (!state.ok) break;
    guess = state.value.guess;
    points.push([excessOf(limits, state.value), share]);
  }
  const rises = points.every(([excess], i) => i === 0 || excess > points[i - 1]![0]);
  const known = rises && points.length >= fewestStates && points.some(([, share]) => share === planned.share);
  return { planned, plannedPlace, shareAt: known ? monotoneCubic(points) : null };
}

/**
 * Safe duty of a sample, found from its state at the planned share along the course of the design itself: one or two
 * states instead of a dozen. Falls back to the search of the nominal design where temperatures do not rise with the duty
 * or the secant does not settle.
 *
 * planned: the sample at the planned share; null where it has no steady state there.
 *
 * @returns null where the service has no state at all
 */
export function sampleDuty(
  coupled: Coupled,
  service: Service,
  limits: readonly DutyLimit[],
  course: DutyCourse,
  planned: CycleState | null,
): number | null {
  let from = (planned ?? course.planned).guess;
  const at = (share: number) => {
    const state = cycleAt(coupled, service, share, from);
    if (state.ok) from = state.value.guess;
    return state;
  };
  const rising = heatsMoreThanReceive(coupled, (planned ?? course.planned).load);
  if (planned && rising && course.shareAt) {
    const excess = (share: number) => {
      const state = at(share);
      return state.ok ? excessOf(limits, state.value) : null;
    };
    const known = { place: course.plannedPlace, share: planned.share, excess: excessOf(limits, planned) };
    const found = crossing(keptExcess(excess, known), known, course.shareAt);
    if (found !== null) return found;
  }
  const searched = safeShare(at, limits, rising, planned ?? undefined);
  return searched.ok ? searched.value.share : null;
}

interface Tried {
  /** Excess of the design itself there, K. */
  readonly place: number;
  readonly share: number;
  /** Of the sample's temperature over its limit, K. */
  readonly excess: number;
}

/** Excess at a share, K; null where there is no steady state. */
type Excess = (share: number) => number | null;

/** A steady state costs far more than a look-up: shares are asked once. */
function keptExcess(excess: Excess, known: Tried): Excess {
  const kept = new Map<number, number | null>([[known.share, known.excess]]);
  return (share) => {
    const found = kept.get(share);
    if (found !== undefined) return found;
    const value = excess(share);
    kept.set(share, value);
    return value;
  };
}

/**
 * Crossing of a rising function on [0, 1]: 0 when it is positive throughout, 1 when it never is; null when unsettled.
 * By the secant along the course, which needs no bracket; where it leaves what is known by then, within the bracket.
 */
function crossing(excess: Excess, known: Tried, shareAt: MonotoneCubic): number | null {
  const [lowest, highest] = [shareAt.x[0]!, shareAt.x.at(-1)!];
  const inside = (at: number) => Math.min(Math.max(at, lowest), highest);
  const shareOf = (at: number) => Math.min(Math.max(evaluateCubic(shareAt, at), 0), 1);
  // A course that ends early, where the design itself runs away, says nothing of what lies beyond.
  const isNear = (one: number, other: number, at: number) =>
    Math.abs(one - other) < shareTolerance && (one === 1 || (at > lowest && at < highest));
  let before = known;
  let good = known.excess > 0 ? 0 : known.share;
  let bad = known.excess > 0 ? known.share : 1;
  // The first step takes the sample to rise as the design itself does.
  let place = inside(known.place - known.excess);
  let share = shareOf(place);
  if (isNear(share, known.share, place)) return share;
  for (let step = 0; step < mostSteps; step++) {
    const value = excess(share);
    if (value === null) return null;
    if (share === 0 && value > 0) return 0;
    if (share === 1 && value <= 0) return 1;
    if (value > 0) bad = Math.min(bad, share);
    else good = Math.max(good, share);
    const next = inside(place - (value * (place - before.place)) / (value - before.excess));
    const nextShare = shareOf(next);
    if (isNear(nextShare, share, next)) return nextShare;
    if (!(nextShare > good && nextShare < bad)) break;
    before = { place, share, excess: value };
    place = next;
    share = nextShare;
  }
  return bracketed(excess, good, bad);
}

function bracketed(excess: Excess, good: number, bad: number): number | null {
  const atGood = excess(good);
  if (atGood === null) return null;
  if (atGood > 0) return 0;
  const atBad = excess(bad);
  if (atBad === null) return null;
  if (atBad <= 0) return 1;
  const root = bracketedRoot((share) => excess(share) ?? Number.NaN, good, bad, {
    tolerance: shareTolerance,
  });
  return root.ok ? root.value.root : null;
}
