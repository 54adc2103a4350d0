import type { Segment } from '../heat/deviceLadder.ts';
import { advance, periodicState, type ThermalNode, timeToLimit } from '../heat/sinkTransient.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { integrate } from '../numerics/gaussLegendre.ts';
import type { HeatPath } from './heatPath.ts';

/** Heat during one part of the cycle, W. */
export interface StoreSegment {
  readonly duration: number;
  /** Into the plate. */
  readonly plate: number;
  /** Into the case air, the sink not counted. */
  readonly caseAir: number;
}

/** The plate over one steady cycle, K absolute. */
export interface StoreCycle {
  readonly ends: readonly number[];
  readonly highest: number;
  readonly mean: number;
  /** Mean of the air at the fins. */
  readonly air: number;
  readonly iterations: number;
  /** State to start a neighbouring search from. */
  readonly guess: StoreRises;
}

/** Rises over the room, K. */
export interface StoreRises {
  readonly plate: number;
  readonly air: number;
  /** Of a sink in room air: its distance from a linear store, K; see `periodicState`. */
  readonly bend?: number;
}

/**
 * Where the heat of the final is stored and shed: the sink in room air, or sink and case air together.
 * The same questions for both.
 */
export interface Store {
  periodic(segments: readonly StoreSegment[], guess?: StoreRises): StoreCycle;
  /** Time from cold under constant heat until plate plus `added(t)` meets a limit, s; null when never. */
  timeToLimit(
    segment: Omit<StoreSegment, 'duration'>,
    limit: number,
    added: (time: number) => number,
  ): number | null;
  /** Plate temperatures at the ends of segments, from cold, K. */
  warmUp(segments: readonly StoreSegment[]): number[];
  /**
   * Time until the plate, left without any heat, has cooled from one temperature to another, s; null when never.
   *
   * air: at the fins in the beginning, K.
   */
  coolingTime(from: number, to: number, air: number): number | null;
}

/**
 * A sink outside the case: one nonlinear store in air of a fixed temperature.
 *
 * tolerance: of the steps of a steady cycle, K; see `periodicState`.
 */
export function openStore(path: HeatPath, ambient: number, tolerance?: number): Store {
  const node = { law: path.table, capacity: path.sink.heatCapacity };
  const plateSegments = (segments: readonly StoreSegment[]): Segment[] =>
    segments.map(({ duration, plate }) => ({ duration, power: plate }));
  return {
    periodic(segments, guess) {
      const state = periodicState(node, plateSegments(segments), guess?.bend, tolerance);
      return {
        ends: state.ends.map((rise) => rise + ambient),
        highest: state.highest + ambient,
        mean: state.mean + ambient,
        air: ambient,
        iterations: state.iterations,
        guess: { plate: state.start, air: 0, bend: state.bend },
      };
    },
    timeToLimit: (segment, limit, added) => timeToLimit(node, segment.plate, 0, limit - ambient, added),
    warmUp(segments) {
      let rise = 0;
      return segments.map((segment) => {
        rise = advance(node, rise, segment.plate, segment.duration);
        return ambient + rise;
      });
    },
    coolingTime: (from, to) => freeCooling(node, from - ambient, to - ambient),
  };
}

/** Points of the quadrature over the logarithm of the rise; the loss law is smooth there. */
const coolingPoints = 12;

/** Time in which a node without heat cools from one rise to another, s: t = ∫ C θ/Q(θ) d(ln θ). */
function freeCooling(node: ThermalNode, from: number, to: number): number | null {
  if (from <= to) return 0;
  if (to <= 0) return null;
  return integrate(
    (logarithm) => {
      const rise = Math.exp(logarithm);
      return (node.capacity * rise) / node.law.heat(rise);
    },
    Math.log(to),
    Math.log(from),
    coolingPoints,
  );
}

/** Longest cooling that is looked for, s. */
const longestCooling = 86_400;

/** Time at which a falling temperature reaches `to`, s: 0 if it is there already, null when the room is too warm. */
export function coolingTime(
  after: (time: number) => number,
  from: number,
  to: number,
  ambient: number,
): number | null {
  if (from <= to) return 0;
  if (to <= ambient || after(longestCooling) > to) return null;
  const found = bracketedRoot((time) => after(time) - to, 0, longestCooling, { tolerance: 0.5 });
  return found.ok ? found.value.root : null;
}
