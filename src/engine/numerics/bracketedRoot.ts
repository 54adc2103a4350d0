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
 * Method: inverse quadratic interpolation where the last three points show that it may be trusted, else bisection; the
 * bracket shrinks with every call. The first step is the secant, since most of our curves are nearly straight.
 *
 * @param f continuous on [low, high]; a value that is not finite ends the search
 * @param low one end of the bracket
 * @param high the other end of the bracket
 * @returns the root and the number of function calls after the first two; a reason if the ends have the same
 *   sign, a value is not finite, or the tolerance is not met in time
 * @see T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (from memory; order and limits tested)
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions = {},
): Outcome<Root> {
  const tolerance = options.tolerance ?? 1e-12 * Math.abs(high - low);
  const maxIterations = options.maxIterations ?? 100;
  // a is the newest point, b the other end of the bracket, c the point dropped last.
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
  let step = fa / (fa - fb);
  for (let iteration = 0; ; iteration++) {
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const accuracy = 2 * Number.EPSILON * Math.abs(best) + 0.5 * tolerance;
    // A step as share of the bracket; never closer to its ends than the accuracy asked for.
    const least = accuracy / Math.abs(b - a);
    if (least >= 0.5 || fa === 0) return success({ root: best, iterations: iteration });
    if (iteration === maxIterations) break;
    const next = a + Math.min(Math.max(step, least), 1 - least) * (b - a);
    const value = f(next);
    if (!Number.isFinite(value)) return notFinite();
    let c = a;
    let fc = fa;
    if (value > 0 !== fa > 0) {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = next;
    fa = value;
    step = shareOfBracket(a, fa, b, fb, c, fc);
  }
  return failure('root not found in time', 'The search for a balance did not settle in the steps allowed.', {
    maxIterations,
  });
}

/** Where inverse quadratic interpolation puts the root between a and b, as share from a; a half where it is not to be trusted. */
function shareOfBracket(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const place = (a - b) / (c - b);
  const height = (fa - fb) / (fc - fb);
  const trusted = height * height < place && (1 - height) ** 2 < 1 - place;
  if (!trusted) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

function notFinite(): Outcome<Root> {
  return failure('value not finite', 'A quantity on the way to the balance has no finite value.');
}
