import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import type { Segment } from './deviceLadder.ts';
import { type PhiValues, phiValues } from './exponentialPhi.ts';
import { type HeatLaw, type HeatTable, type LawPoint, lawAt } from './heatTable.ts';

/** One body with heat capacity that loses heat by a law of its rise: C dθ/dt = P - Q(θ). */
export interface ThermalNode {
  readonly law: HeatLaw;
  /** J/K, positive. */
  readonly capacity: number;
}

/** A node whose law can be asked for the rise at a heat. */
export interface InvertibleNode extends ThermalNode {
  readonly law: HeatTable;
}

/** Bound for the estimated error of a step, K, shared out so that the periodic state keeps it; the true error is smaller. */
const stepTolerance = 0.01;
/** Steps per segment before the tolerance is given up; not reached in the design's range. */
const mostSteps = 400;

/** Running sums of one integration; reused within a call so that steps allocate nothing. */
interface Run extends LawPoint {
  /** Heat and slope of the law stand at this rise. */
  rise: number;
  /** ∫θ dt, K s. */
  integral: number;
  /** ∫∂(dθ/dt)/∂θ dt: its exponential is the derivative of the end by the start. */
  logDerivative: number;
  readonly phi: PhiValues;
}

function runFrom(node: ThermalNode, rise: number): Run {
  const phi = { expm1: 0, second: 0, third: 0, fourth: 0 };
  const run: Run = { rise, heat: 0, slope: 0, integral: 0, logDerivative: 0, phi };
  restart(node, run, rise);
  return run;
}

function restart({ law }: ThermalNode, run: Run, rise: number): void {
  run.rise = rise;
  run.integral = 0;
  run.logDerivative = 0;
  lawAt(law, rise, run);
}

/**
 * Moves a node through one segment of constant heat by an exponential Rosenbrock method of order 3 with an estimate of
 * order 2: exact for a linear law, stable for any step. Source: Hochbruck and Ostermann, Acta Numerica 19 (2010),
 * method exprb32 (from memory; order and error tested).
 */
function integrateSegment(
  node: ThermalNode,
  run: Run,
  power: number,
  duration: number,
  tolerance: number,
): void {
  const { law, capacity } = node;
  const { phi } = run;
  let left = duration;
  let step = duration;
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const start = run.rise;
    const heat = run.heat;
    const flow = (power - heat) / capacity;
    const jacobian = -run.slope / capacity;
    // The last step allowed takes all that is left, so that no time is ever dropped.
    step = i === mostSteps - 1 ? left : Math.min(step, left);
    for (;;) {
      const z = step * jacobian;
      phiValues(z, phi);
      const forward = step * (1 + z * phi.second) * flow;
      const remainder = (heat - law.heat(start + forward)) / capacity - jacobian * forward;
      const correction = 2 * step * phi.third * remainder;
      const allowed = tolerance * -phi.expm1;
      // The error goes with the third power of the step and what is allowed with the first.
      const error = Math.abs(correction);
      if (error > allowed && i < mostSteps - 1 && step > 1e-9 * duration) {
        step *= Math.max(0.2, 0.9 * Math.sqrt(allowed / error));
        continue;
      }
      run.rise = start + forward + correction;
      run.integral += step * (start + step * (phi.second * flow + 2 * phi.fourth * remainder));
      lawAt(law, run.rise, run);
      run.logDerivative += (step / 2) * (jacobian - run.slope / capacity);
      left = step >= left ? 0 : left - step;
      step *= error > 0 ? Math.min(5, 0.9 * Math.sqrt(allowed / error)) : 5;
      break;
    }
  }
}

/**
 * Rise of a node after a time of constant heat, K.
 *
 * @param start rise at the beginning, K
 * @param tolerance bound for the error estimate of a step, K
 */
export function advance(
  node: ThermalNode,
  start: number,
  power: number,
  duration: number,
  tolerance = stepTolerance,
): number {
  const run = runFrom(node, start);
  integrateSegment(node, run, power, duration, tolerance);
  return run.rise;
}

/** Rises at the ends of segments run one after the other, K. */
export function warmUp(node: ThermalNode, start: number, segments: readonly Segment[]): number[] {
  const run = runFrom(node, start);
  return segments.map((segment) => {
    integrateSegment(node, run, segment.power, segment.duration, stepTolerance);
    return run.rise;
  });
}

/** A node over one period of its steady cycle; rises over the air, K. */
export interface PeriodicState {
  readonly start: number;
  /** At the end of each segment; the last equals `start`. */
  readonly ends: readonly number[];
  readonly highest: number;
  readonly lowest: number;
  readonly mean: number;
  /** How far the start lies from that of a law made linear at the mean heat, K. */
  readonly bend: number;
  /** Periods integrated to find it. */
  readonly iterations: number;
}

const mostIterations = 30;
/** A move of the start this small, K, is applied to the ends through their derivatives, without another integration. */
const smallMove = 0.03;

/**
 * Periodic steady state of a node under a repeated cycle of constant-heat segments, found directly: Newton's method on
 * the start temperature, with the derivative of the end by the start from the variational equation, so that no warm-up
 * of hours is stepped through. Within a segment the node moves one way only, so its highest value is at a segment's end.
 *
 * @param segments of positive total duration
 * @param bend that of a neighbouring solution, K: the search starts so far from the solution of the linear law
 * @param tolerance bound for the error estimate of a step, K
 *
 * Error below the tolerance, 0.01 K unless another is asked for (tested against a fine Runge-Kutta integration).
 */
export function periodicState(
  node: InvertibleNode,
  segments: readonly Segment[],
  bend = 0,
  tolerance = stepTolerance,
): PeriodicState {
  let period = 0;
  for (const segment of segments) period += segment.duration;
  const linear = linearStart(node, segments);
  let start = linear + bend;
  const ends = new Array<number>(segments.length).fill(start);
  const derivatives = new Array<number>(segments.length).fill(1);
  const run = runFrom(node, start);
  let iterations = 0;
  let move = Number.POSITIVE_INFINITY;
  while (iterations < mostIterations && Math.abs(move) > smallMove) {
    iterations++;
    if (iterations > 1) restart(node, run, start);
    for (let k = 0; k < segments.length; k++) {
      const segment = segments[k]!;
      integrateSegment(node, run, segment.power, segment.duration, tolerance);
      ends[k] = run.rise;
      derivatives[k] = Math.exp(run.logDerivative);
    }
    const contraction = -Math.expm1(run.logDerivative);
    move = contraction > 0 ? (run.rise - start) / contraction : 0;
    start += move;
  }
  let mean = period > 0 ? run.integral / period : start;
  for (let k = 0; k < segments.length; k++) {
    ends[k]! += move * derivatives[k]!;
    // The mean moves with the mean derivative, here of a trapezium.
    const before = k > 0 ? derivatives[k - 1]! : 1;
    if (period > 0) mean += (move * (before + derivatives[k]!) * segments[k]!.duration) / (2 * period);
  }
  return {
    start,
    ends,
    highest: Math.max(start, ...ends),
    lowest: Math.min(start, ...ends),
    mean,
    bend: start - linear,
    iterations,
  };
}

/**
 * Start of the steady cycle of a node whose law is made linear at the mean heat, K: exact there, so that a search from
 * it has to mend no more than the curvature of the law.
 */
function linearStart({ law, capacity }: InvertibleNode, segments: readonly Segment[]): number {
  let period = 0;
  let energy = 0;
  for (const { power, duration } of segments) {
    period += duration;
    energy += power * duration;
  }
  if (!(period > 0)) return 0;
  const mean = energy / period;
  const rise = law.rise(mean);
  const slope = law.slope(rise);
  const rate = slope / capacity;
  let swing = 0;
  for (const { power, duration } of segments) {
    const settled = (power - mean) / slope;
    swing = settled + (swing - settled) * Math.exp(-rate * duration);
  }
  return rise + swing / -Math.expm1(-rate * period);
}

/** Width at which the search for a limit ends, relative to the rise there: a thousandth of the error of the time. */
const limitTolerance = 1e-9;

const timePanels = 6;
const timePoints = 6;

/**
 * Time in which constant heat takes a node from one rise to another, s: t = ∫ C dθ/(P - Q(θ)), by Gauss-Legendre panels
 * in w = ln[1 + m (end - θ)/f(end)], m = -f'(end), which takes out the logarithm of a nearly steady end. Relative error
 * about 1e-6 for a smooth law.
 *
 * @returns Infinity when the heat never gets it there, 0 when it starts there or beyond
 */
export function timeToRise(node: ThermalNode, power: number, start: number, end: number): number {
  if (start >= end) return 0;
  const { law, capacity } = node;
  const endFlow = (power - law.heat(end)) / capacity;
  if (!(endFlow > 0)) return Number.POSITIVE_INFINITY;
  const rate = law.slope(end) / capacity;
  const width = Math.log1p((rate * (end - start)) / endFlow);
  const rule = gaussLegendre(timePoints);
  let time = 0;
  for (let panel = 0; panel < timePanels; panel++) {
    for (let q = 0; q < timePoints; q++) {
      const w = (width * (panel + (1 + rule.node[q]!) / 2)) / timePanels;
      const rise = end - (endFlow / rate) * Math.expm1(w);
      const flow = (power - law.heat(rise)) / capacity;
      time += ((rule.weight[q]! / 2) * (endFlow / rate) * Math.exp(w)) / flow;
    }
  }
  return (time * width) / timePanels;
}

/**
 * Time from cold until the node's rise plus a rise that follows its own clock (a device ladder) meets a limit under
 * constant heat, s.
 *
 * @param power heat into the node, W
 * @param start rise of the node at the beginning, K
 * @param limit of the sum, K
 * @param added rise on top at a time since the beginning, K; must not fall with time; asked at Infinity for its end value
 * @returns null when the limit is never met
 */
export function timeToLimit(
  node: InvertibleNode,
  power: number,
  start: number,
  limit: number,
  added?: (time: number) => number,
): number | null {
  if (!added) {
    const time = timeToRise(node, power, start, limit);
    return Number.isFinite(time) ? time : null;
  }
  if (start + added(0) >= limit) return 0;
  const settled = node.law.rise(power);
  if (settled <= start) return heldTime(start, limit, added);
  if (!(settled + added(Number.POSITIVE_INFINITY) > limit)) return null;
  // The sum rises with the node's own rise; look for the rise at which it meets the limit.
  const highest = Math.min(limit - added(0), settled);
  const excess = (rise: number) => rise + added(timeToRise(node, power, start, rise)) - limit;
  // What the device adds in the end leaves this much for the node; usually it has settled by then, and that is the root.
  const lowest = Math.max(start, limit - added(Number.POSITIVE_INFINITY));
  if (excess(lowest) >= 0) return timeToRise(node, power, start, lowest);
  const root = bracketedRoot(excess, lowest, highest, { tolerance: limitTolerance * highest });
  return timeToRise(node, power, start, root.ok ? root.value.root : highest);
}

/** Time at which what is added to a node that stays where it is meets the limit, s; null when it never does. */
function heldTime(start: number, limit: number, added: (time: number) => number): number | null {
  if (!(start + added(Number.POSITIVE_INFINITY) > limit)) return null;
  let low = 0;
  let high = 1e-6;
  while (start + added(high) < limit && high < 1e12) {
    low = high;
    high *= 4;
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (start + added(middle) < limit) low = middle;
    else high = middle;
  }
  return high;
}
