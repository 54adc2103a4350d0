import { failure, type Outcome, success } from '../../../shared/outcome.ts';

export interface RootOptions {
  /** Half-width of the interval, in units of the unknown, at which the search ends. Default 1e-12 of the bracket. */
  readonly tolerance?: number;
  /** Greatest number of function calls after the two at the ends. Default 100. */
  readonly maxIterations?: number;
}

export interface Root {
  readonly root: number;
  readonly iterations: number;
}

/**
 * Finds where a continuous function of one unknown crosses zero between two points at which its signs differ.
 *
 * Method: inverse quadratic interpolation or the secant, whichever is available, with bisection as the guard, so
 * that the bracket always shrinks.
 *
 * @param f continuous on [low, high]; a value that is not finite ends the search
 * @param low one end of the bracket
 * @param high the other end of the bracket
 * @returns the root and the number of function calls after the first two; a reason if the ends have the same
 *   sign, a value is not finite, or the tolerance is not met in time
 * @see R. P. Brent, Algorithms for Minimization Without Derivatives (1973), chapter 4
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions = {},
): Outcome<Root> {
  const tolerance = options.tolerance ?? 1e-12 * Math.abs(high - low);
  const maxIterations = options.maxIterations ?? 100;
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (!Number.isFinite(fa) || !Number.isFinite(fb)) return notFinite();
  if (fa === 0) return success({ root: a, iterations: 0 });
  if (fb === 0) return success({ root: b, iterations: 0 });
  if (fa > 0 === fb > 0) {
    return failure('root not bracketed', 'The quantity sought does not lie between the limits tried.', {
      low,
      high,
    });
  }
  // b is the best point so far, a the one before it, c the far side of the bracket.
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (let iteration = 1; iteration <= maxIterations; iteration++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      fa = fb;
      b = c;
      fb = fc;
      c = a;
      fc = fa;
    }
    const accuracy = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const middle = 0.5 * (c - b);
    if (Math.abs(middle) <= accuracy || fb === 0) return success({ root: b, iterations: iteration - 1 });

    const trial = Math.abs(stepBefore) >= accuracy && Math.abs(fa) > Math.abs(fb);
    const jump = trial ? interpolatedStep(a, fa, b, fb, c, fc) : Number.NaN;
    // An interpolated step is kept if it stays well inside the bracket and shrinks fast enough.
    const kept =
      jump * middle > 0 &&
      2 * Math.abs(jump) < 3 * Math.abs(middle) - accuracy &&
      Math.abs(jump) < 0.5 * Math.abs(stepBefore);
    stepBefore = kept ? step : middle;
    step = kept ? jump : middle;

    a = b;
    fa = fb;
    b += Math.abs(step) > accuracy ? step : Math.sign(middle) * accuracy;
    fb = f(b);
    if (!Number.isFinite(fb)) return notFinite();
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      stepBefore = step;
    }
  }
  return failure('root not found in time', 'The search for a balance did not settle in the steps allowed.', {
    maxIterations,
  });
}

function interpolatedStep(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return ((c - b) * s) / (1 - s);
  const q = fa / fc;
  const r = fb / fc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}

function notFinite(): Outcome<Root> {
  return failure('value not finite', 'A quantity on the way to the balance has no finite value.');
}
