import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { besselK0, besselK1, besselK2 } from '../numerics/bessel.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { type EnvelopeTable, envelopeTable, panelNodes } from './envelopeTable.ts';

/** Least and greatest average-to-peak ratio while talking that the law is solved for: (nearly) silence and (nearly) a carrier. */
const leastRatio = 1e-5;
const greatestRatio = 0.9999;
const shapeRange = [1e-3, 2e3] as const;
/** Panel ends in r while the shape is below compactShape; above it the mass lies nearer zero and they follow it. */
const panelEnds = [0.05, 0.3];
const compactShape = 20;
const nodesPerPanel = 12;
const cacheSize = 32;
const cache = new Map<string, EnvelopeTable>();

/**
 * Output amplitude of single-sideband speech as a table for averaging: clipped K law.
 *
 * A Gaussian carrier with exponentially distributed power has a K-distributed envelope:
 *   P(A > r) = c r K1(c r), density c^2 r K0(c r);
 * what would exceed PEP stays at r = 1 (limiter or ALC), and with probability 1 - activity r = 0 (pauses):
 *   averageToPeak = activity (4/c^2 - 2 K2(c)).
 * The shape c follows from the average-to-peak ratio.
 *
 * @param averageToPeak average RF power over PEP during the over, greater than 0 and below the activity
 * @param activity share of the over in which there is speech, above 0 up to 1; the law has its own pauses, so 1
 *   is usual
 * @param breaks amplitudes at which the function to be averaged has a kink; the table gets panel ends there
 * @returns 37 nodes, 12 more for each break; the mean square is exact to 1e-7 and the mean rail power of a class AB stage
 *   to 1e-5 (1e-6 with a break where class A ends); a reason if the ratio cannot be reached with this activity
 * @see S. Gazor and R. R. Far, CCECE (2004): speech as a Gaussian process times a slow Rayleigh process; the
 *   envelope law and its clipping are derived from it
 */
export function speechEnvelope(
  averageToPeak: number,
  activity = 1,
  breaks: readonly number[] = [],
): Outcome<EnvelopeTable> {
  const key = `${averageToPeak} ${activity} ${breaks.join(' ')}`;
  const known = cache.get(key);
  if (known) return success(known);
  const shape = speechShape(averageToPeak, activity);
  if (!shape.ok) return shape;
  const table = speechTable(shape.value, activity, breaks);
  if (cache.size >= cacheSize) cache.delete(cache.keys().next().value ?? '');
  cache.set(key, table);
  return success(table);
}

/**
 * Shape c of the clipped K law: the root of 4/c^2 - 2 K2(c) = averageToPeak/activity. Small c is heavy clipping.
 *
 * @param averageToPeak average RF power over PEP during the over
 * @param activity share of the over with speech
 */
export function speechShape(averageToPeak: number, activity = 1): Outcome<number> {
  if (!(activity > 0 && activity <= 1)) {
    return failure(
      'activity out of range',
      'The share of the over with speech must be above 0 and at most 1.',
      {
        activity,
      },
    );
  }
  const ratio = averageToPeak / activity;
  if (!(ratio >= leastRatio)) {
    return failure('average-to-peak too low', 'The average-to-peak ratio of speech must be above 0.', {
      averageToPeak,
    });
  }
  if (ratio > greatestRatio) {
    return failure(
      'average-to-peak too high',
      `Speech during ${percent(activity)} of the over cannot reach an average-to-peak ratio of ${percent(averageToPeak)}.`,
      { averageToPeak, activity },
    );
  }
  const logarithm = bracketedRoot(
    (x) => meanSquareOfShape(Math.exp(x)) - ratio,
    Math.log(shapeRange[0]),
    Math.log(shapeRange[1]),
    { tolerance: 1e-13 },
  );
  return logarithm.ok ? success(Math.exp(logarithm.value.root), logarithm.notes) : logarithm;
}

/** Mean of r squared while there is speech: 4/c^2 - 2 K2(c). */
export function meanSquareOfShape(shape: number): number {
  return 4 / (shape * shape) - 2 * besselK2(shape);
}

/** Probability that the amplitude is at the limit: c K1(c), while there is speech. */
export function limitingShare(shape: number): number {
  return shape * besselK1(shape);
}

function speechTable(shape: number, activity: number, breaks: readonly number[]): EnvelopeTable {
  // Integrated over x = sqrt(r), which takes the logarithm out of the density at zero.
  const density = (x: number) => 2 * x * activity * shape * shape * x * x * besselK0(shape * x * x);
  const shrink = Math.min(1, compactShape / shape);
  const ends = [...panelEnds.map((r) => r * shrink), ...breaks].filter((r) => r > 0).map(Math.sqrt);
  const nodes = panelNodes(density, 0, 1, ends, nodesPerPanel, (x) => x * x);
  nodes.push([0, 1 - activity], [1, activity * limitingShare(shape)]);
  return envelopeTable(nodes, shape);
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}
