/** Enough halvings to reach double precision from any bracket. */
const maximumSteps = 200;

/** Exponent with which the first step of `powerRoot` is taken: between conduction and laminar convection. */
const usualExponent = 1.2;
const mostSecants = 30;

/**
 * Where a ratio that grows nearly as a power of x is 1, by secants over the logarithms of both.
 *
 * @param ratio increasing and positive for x > 0
 * @param guess first x tried, above 0
 * @param tolerance length of the last step; a root below it is not followed further, the tolerance stands for it
 * @param widest largest x searched; returned when the ratio is below 1 there
 */
export function powerRoot(
  ratio: (x: number) => number,
  guess: number,
  tolerance: number,
  widest: number,
): number {
  const first = Math.log(tolerance);
  const last = Math.log(widest);
  let x = Math.min(guess, widest);
  let place = Math.log(x);
  let height = Math.log(ratio(x));
  let slope = usualExponent;
  for (let i = 0; i < mostSecants; i++) {
    const next = Math.min(Math.max(place - height / slope, first), last);
    const step = Math.exp(next) - x;
    x += step;
    if (Math.abs(step) < tolerance || next === place) break;
    const found = Math.log(ratio(x));
    slope = (found - height) / (next - place);
    place = next;
    height = found;
    if ((next === last && found < 0) || (next === first && found > 0)) break;
  }
  return Math.min(x, widest);
}

/**
 * Root of an increasing function by the Illinois form of false position, guarded by bisection.
 *
 * @param difference increasing; the root is where it is zero
 * @param from lower end, difference(from) <= 0 (else `from` is returned)
 * @param firstStep first guess of the distance to the root; doubled until the root is inside
 * @param tolerance width at which the search ends
 * @param widest largest distance searched; `from + widest` is returned when the root lies beyond
 */
export function risingRoot(
  difference: (x: number) => number,
  from: number,
  firstStep: number,
  tolerance: number,
  widest: number,
): number {
  let low = from;
  let lowValue = difference(low);
  if (lowValue >= 0) return low;
  let step = Math.min(firstStep, widest);
  let high = from + step;
  let highValue = difference(high);
  while (highValue < 0) {
    if (step >= widest) return from + widest;
    low = high;
    lowValue = highValue;
    step = Math.min(2 * step, widest);
    high = from + step;
    highValue = difference(high);
  }
  return closeIn(difference, low, lowValue, high, highValue, tolerance);
}

function closeIn(
  difference: (x: number) => number,
  lowStart: number,
  lowValueStart: number,
  highStart: number,
  highValueStart: number,
  tolerance: number,
): number {
  let low = lowStart;
  let lowValue = lowValueStart;
  let high = highStart;
  let highValue = highValueStart;
  let side = 0;
  for (let i = 0; i < maximumSteps && high - low > tolerance; i++) {
    const secant = low - (lowValue * (high - low)) / (highValue - lowValue);
    // Every fourth step halves the bracket, so that a flat function cannot stall the search; the others keep a little
    // off its ends, so that a root found from one side is soon enclosed from the other.
    const inside = Math.min(Math.max(secant, low + tolerance / 2), high - tolerance / 2);
    const middle = i % 4 === 3 || !Number.isFinite(inside) ? (low + high) / 2 : inside;
    const value = difference(middle);
    if (value === 0) return middle;
    if (value < 0) {
      low = middle;
      lowValue = value;
      if (side === -1) highValue /= 2;
      side = -1;
    } else {
      high = middle;
      highValue = value;
      if (side === 1) lowValue /= 2;
      side = 1;
    }
  }
  return low - (lowValue * (high - low)) / (highValue - lowValue);
}
