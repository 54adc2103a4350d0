import type { Service } from '../../../shared/solution.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import type { Coupled } from './coupled.ts';
import { heatsMoreThanReceive } from './cycleHeat.ts';
import { type DutyLimit, type DutyPoint, safeShare } from './duty.ts';
import { type CycleState, cycleAt } from './serviceCycle.ts';

/** A safe duty of a sample is found to this; percentiles of many need no more. */
const shareTolerance = 5e-4;
const mostSteps = 4;
/** First step along the duty when nothing is known of the slope. */
const firstStep = 0.15;
/** Shares closer than this give no chord to go by, and none worth another state. */
const shortChord = 0.02;
const leastStep = 1e-3;

/** The design itself, from which its samples differ by little. */
export interface NominalDuty {
  /** At the planned share. */
  readonly planned: CycleState;
  readonly duty: number;
}

interface Tried {
  readonly share: number;
  /** Of the temperature over its limit, K. */
  readonly excess: number;
}

/** How far the limit that is nearest, or passed most, is passed, K. */
function excessOf(limits: readonly DutyLimit[], state: DutyPoint): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const limit of limits) most = Math.max(most, limit.temperature(state) - limit.limit);
  return most;
}

/**
 * Safe duty of a sample, found from its state at the planned share and from the nominal duty by the secant: two or three
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
  nominal: NominalDuty,
  planned: CycleState | null,
): number | null {
  let from = (planned ?? nominal.planned).guess;
  const at = (share: number) => {
    const state = cycleAt(coupled, service, share, from);
    if (state.ok) from = state.value.guess;
    return state;
  };
  const rising = heatsMoreThanReceive(coupled, (planned ?? nominal.planned).load);
  if (planned && rising) {
    const excess = (share: number) => {
      const state = at(share);
      return state.ok ? excessOf(limits, state.value) : null;
    };
    const known = { share: planned.share, excess: excessOf(limits, planned) };
    const found = crossing(keptExcess(excess, known), known, firstShare(limits, nominal, known));
    if (found !== null) return found;
  }
  const searched = safeShare(at, limits, rising, planned ?? undefined);
  return searched.ok ? searched.value.share : null;
}

/** Where to look first: along the nominal chord from the planned share to the nominal duty, if there is one. */
function firstShare(limits: readonly DutyLimit[], nominal: NominalDuty, known: Tried): number {
  const { duty, planned } = nominal;
  if (duty <= 0 || duty >= 1) return Math.min(Math.max(duty, 0), 1);
  const span = duty - planned.share;
  const slope = -excessOf(limits, planned) / span;
  const reached = Math.abs(span) > shortChord && slope > 0;
  const first = reached ? known.share - known.excess / slope : duty;
  return Math.min(Math.max(first, 0), 1);
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
 * By the secant, which needs no bracket; where it leaves what is known by then, within the bracket.
 */
function crossing(excess: Excess, known: Tried, first: number): number | null {
  let before = known;
  let good = known.excess > 0 ? 0 : known.share;
  let bad = known.excess > 0 ? known.share : 1;
  let share = Math.abs(first - known.share) > leastStep ? first : stepFrom(known);
  if (share === known.share) return known.excess > 0 ? 0 : 1;
  for (let step = 0; step < mostSteps; step++) {
    const value = excess(share);
    if (value === null) return null;
    if (share === 0 && value > 0) return 0;
    if (share === 1 && value <= 0) return 1;
    if (value > 0) bad = Math.min(bad, share);
    else good = Math.max(good, share);
    const next = share - (value * (share - before.share)) / (value - before.excess);
    if (Math.abs(next - share) < shareTolerance && next >= 0 && next <= 1) return next;
    if (!(next > good && next < bad)) break;
    before = { share, excess: value };
    share = next;
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

/** A step from a known state towards the crossing. */
function stepFrom({ share, excess }: Tried): number {
  return excess > 0 ? Math.max(0, share - firstStep) : Math.min(1, share + firstStep);
}
