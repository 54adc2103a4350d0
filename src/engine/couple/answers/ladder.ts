/** What a step of a ladder is worth: 0 and more fits; NaN may not be taken at all. */
export type StepWorth = (step: number) => number;

/** Interior steps looked at where the strongest step does not fit. */
const looked = [0.25, 0.5, 0.75];

/**
 * The weakest step of 1..count that fits, or the one worth most where none does.
 *
 * Step 0 is the design as it stands. The strongest step is tried first; if it fits, the first fitting one is bracketed
 * between a step that does not fit and one that does, by false position kept within the bracket and halved when that
 * is slow. Where the worth does not rise with the step another, weaker one may fit too; what is returned has been
 * looked at.
 *
 * @param steady the strongest step is worth most, so that nothing between needs a look when it does not fit
 * @returns null when no step may be taken
 */
export function weakestFitting(
  worth: StepWorth,
  count: number,
  before: number,
  steady = true,
): { readonly step: number; readonly worth: number } | null {
  const known = new Map<number, number>([[0, before]]);
  const at = (step: number) => {
    const found = known.get(step) ?? worth(step);
    known.set(step, found);
    return found;
  };
  if (count < 1) return null;
  if (!(at(count) >= 0) && !steady) {
    for (const share of looked) at(Math.max(1, Math.round(share * count)));
  }
  const fitting = [...known].filter(([step, value]) => step > 0 && value >= 0).map(([step]) => step);
  if (fitting.length > 0) {
    const step = firstFitting(at, known, Math.min(...fitting));
    return { step, worth: at(step) };
  }
  const best = [...known]
    .filter(([step, value]) => step > 0 && Number.isFinite(value))
    .sort((a, b) => b[1] - a[1])[0];
  return best ? { step: best[0], worth: best[1] } : null;
}

function firstFitting(at: StepWorth, known: ReadonlyMap<number, number>, fits: number): number {
  let high = fits;
  let low = Math.max(...[...known.keys()].filter((step) => step < fits));
  let slow = false;
  while (high - low > 1) {
    const below = at(low);
    const above = at(high);
    const share = below < 0 && Number.isFinite(below) ? below / (below - above) : 0.5;
    const guess = slow ? 0.5 : Math.min(0.98, Math.max(0.02, share));
    // Rounded up: the step just above the crossing is the one that is wanted.
    const middle = Math.min(high - 1, Math.max(low + 1, Math.ceil(low + guess * (high - low))));
    const width = high - low;
    if (at(middle) >= 0) high = middle;
    else low = middle;
    slow = !slow && high - low > width / 2;
  }
  return high;
}

/**
 * The strongest step of 1..count that may be taken at all, for changes that can go too far; 0 when none may.
 *
 * allowed: true below some step and false from there on.
 */
export function strongestAllowed(allowed: (step: number) => boolean, count: number): number {
  if (allowed(count)) return count;
  let low = 0;
  let high = count;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (allowed(middle)) low = middle;
    else high = middle;
  }
  return low;
}
