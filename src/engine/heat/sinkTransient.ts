import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import type { Segment } from './deviceLadder.ts';
import { phi2, phi3, phi4 } from './exponentialPhi.ts';
import type { HeatLaw, HeatTable } from './heatTable.ts';
import { risingRoot } from './monotoneRoot.ts';

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
interface Run {
  rise: number;
  /** ∫θ dt, K s. */
  integral: number;
  /** ∫∂(dθ/dt)/∂θ dt: its exponential is the derivative of the end by the start. */
  logDerivative: number;
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
  let left = duration;
  let step = duration;
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const start = run.rise;
    const heat = law.heat(start);
    const flow = (power - heat) / capacity;
    const jacobian = -law.slope(start) / capacity;
    // The last step allowed takes all that is left, so that no time is ever dropped.
    step = i === mostSteps - 1 ? left : Math.min(step, left);
    for (;;) {
      const z = step * jacobian;
      const second = phi2(z);
      const forward = step * (1 + z * second) * flow;
      const remainder = (heat - law.heat(start + forward)) / capacity - jacobian * forward;
      const third = phi3(z);
      const correction = 2 * step * third * remainder;
      const allowed = tolerance * -Math.expm1(z);
      const error = Math.abs(correction);
      if (error > allowed && i < mostSteps - 1 && step > 1e-9 * duration) {
        step *= Math.max(0.2, 0.85 * Math.cbrt(allowed / error));
        continue;
      }
      run.rise = start + forward + correction;
      run.integral += step * (start + step * (second * flow + 2 * phi4(z) * remainder));
      run.logDerivative += (step / 2) * (jacobian - law.slope(run.rise) / capacity);
      left = step >= left ? 0 : left - step;
      step *= error > 0 ? Math.min(5, 0.85 * Math.cbrt(allowed / error)) : 5;
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
  const run: Run = { rise: start, integral: 0, logDerivative: 0 };
  integrateSegment(node, run, power, duration, tolerance);
  return run.rise;
}

/** Rises at the ends of segments run one after the other, K. */
export function warmUp(node: ThermalNode, start: number, segments: readonly Segment[]): number[] {
  const run: Run = { rise: start, integral: 0, logDerivative: 0 };
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
 * @param guess start rise of a neighbouring solution, K; the steady rise at the mean heat if absent
 *
 * Error below 0.01 K (tested against a fine Runge-Kutta integration).
 */
export function periodicState(
  node: InvertibleNode,
  segments: readonly Segment[],
  guess?: number,
): PeriodicState {
  let period = 0;
  let energy = 0;
  for (const segment of segments) {
    period += segment.duration;
    energy += segment.power * segment.duration;
  }
  let start = guess ?? (period > 0 ? node.law.rise(energy / period) : 0);
  const ends = new Array<number>(segments.length).fill(start);
  const derivatives = new Array<number>(segments.length).fill(1);
  const run: Run = { rise: start, integral: 0, logDerivative: 0 };
  let iterations = 0;
  let move = Number.POSITIVE_INFINITY;
  while (iterations < mostIterations && Math.abs(move) > smallMove) {
    iterations++;
    run.rise = start;
    run.integral = 0;
    run.logDerivative = 0;
    for (let k = 0; k < segments.length; k++) {
      const segment = segments[k]!;
      integrateSegment(node, run, segment.power, segment.duration, stepTolerance);
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
    iterations,
  };
}

/** Width at which the search for a limit ends, relative to the rise there. */
const limitTolerance = 1e-12;

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
  const width = highest - start;
  const rise = risingRoot(excess, start, width / 2, limitTolerance * highest, width);
  return timeToRise(node, power, start, rise);
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
