import type { Service } from '../../../shared/solution.ts';
import type { Coupled } from './coupled.ts';
import { heatsMoreThanReceive } from './cycleHeat.ts';
import { type DutyLimit, safeShare } from './duty.ts';
import { type CycleGuess, cycleAt } from './serviceCycle.ts';

/** A safe duty of a sample is found to this; percentiles of many need no more. */
const shareTolerance = 5e-4;
const mostSteps = 8;
/** First step along the duty when nothing is known of the slope. */
const firstStep = 0.15;

/**
 * Safe duty of a sample, found from the nominal one by the secant: three or four states instead of a dozen. Falls back
 * to the search of the nominal design where temperatures do not rise with the duty or the secant does not settle.
 *
 * @returns null where the service has no state at all
 */
export function sampleDuty(
  coupled: Coupled,
  service: Service,
  limits: readonly DutyLimit[],
  nominal: number,
  guess: CycleGuess,
): number | null {
  let from = guess;
  let rising = true;
  const excess = (share: number): number | null => {
    const state = cycleAt(coupled, service, share, from);
    if (!state.ok) return null;
    from = state.value.guess;
    rising = heatsMoreThanReceive(coupled, state.value.load);
    let most = Number.NEGATIVE_INFINITY;
    for (const limit of limits) most = Math.max(most, limit.temperature(state.value) - limit.limit);
    return most;
  };
  const found = secant(excess, Math.min(Math.max(nominal, 0), 1));
  if (found !== null && rising) return found;
  const searched = safeShare((share) => cycleAt(coupled, service, share, from), limits, rising);
  return searched.ok ? searched.value.share : null;
}

/** Crossing of a rising function on [0, 1]: 0 when it is positive throughout, 1 when it never is; null when unsettled. */
function secant(excess: (share: number) => number | null, start: number): number | null {
  let share = start;
  let value = excess(share);
  if (value === null) return null;
  let before = value > 0 ? Math.max(0, share - firstStep) : Math.min(1, share + firstStep);
  if (before === share) return value > 0 ? 0 : 1;
  let valueBefore = excess(before);
  for (let step = 0; step < mostSteps; step++) {
    if (valueBefore === null || value === null || value === valueBefore) return null;
    const next = share - (value * (share - before)) / (value - valueBefore);
    const clipped = Math.min(Math.max(next, 0), 1);
    if (Math.abs(clipped - share) < shareTolerance && clipped === next) return next;
    before = share;
    valueBefore = value;
    share = clipped;
    value = excess(share);
    if (value === null) return null;
    if (share === 0 && value > 0) return 0;
    if (share === 1 && value <= 0) return 1;
    if (share === before) return null;
  }
  return null;
}
