import { phi1, phi3 } from './exponentialPhi.ts';
import type { HeatTable } from './heatTable.ts';
import { risingRoot } from './monotoneRoot.ts';
import type { SinkAirTable } from './sinkTable.ts';

/** A sink that breathes the air of a closed case, which loses its heat to the room: two bodies, two heat laws. */
export interface SinkInCase {
  readonly sink: SinkAirTable;
  /** J/K */
  readonly sinkCapacity: number;
  /** Heat of the case against the rise of its air over the room. */
  readonly box: HeatTable;
  /** Of inside air and box, J/K. */
  readonly boxCapacity: number;
  /** Room air, K. */
  readonly ambient: number;
}

/** Heat held constant for a time: into the sink and into the air of the case, W. */
export interface CaseSegment {
  readonly sinkPower: number;
  readonly casePower: number;
  /** s */
  readonly duration: number;
}

/** Rises over the room, K. */
export interface CaseRises {
  readonly plate: number;
  readonly air: number;
}

/** 2 by 2 matrix, row by row. */
type Matrix = [number, number, number, number];

/** Bound for the estimated error of a step, K. */
const stepTolerance = 0.02;
const mostSteps = 2000;
const mostIterations = 30;
/** The search ends when the start moves by less, K. */
const startTolerance = 1e-4;

/** Eigenvalues of h J, h J itself, for functions of it; both eigenvalues are real, since warmth only flows downhill. */
interface Spectrum {
  readonly low: number;
  readonly high: number;
  readonly matrix: Matrix;
}

function spectrum(jacobian: Matrix, step: number): Spectrum {
  const [a, b, c, d] = jacobian;
  const middle = (a + d) / 2;
  const spread = Math.sqrt(Math.max(((a - d) / 2) ** 2 + b * c, 0));
  return {
    low: step * (middle - spread),
    high: step * (middle + spread),
    matrix: [step * a, step * b, step * c, step * d],
  };
}

/** φ(hJ) v for a scalar function φ: φ(z1) v + [φ(z2) - φ(z1)]/(z2 - z1) (hJ - z1) v. */
function apply(phi: (z: number) => number, of: Spectrum, x: number, y: number): [number, number] {
  const { low, high, matrix } = of;
  const first = phi(low);
  const gap = high - low;
  const ratio = gap > 1e-12 * Math.abs(low) ? (phi(high) - first) / gap : 0;
  return [
    first * x + ratio * (matrix[0] * x + matrix[1] * y - low * x),
    first * y + ratio * (matrix[2] * x + matrix[3] * y - low * y),
  ];
}

function flows(model: SinkInCase, segment: CaseSegment, plate: number, air: number): [number, number] {
  const sinkHeat = model.sink.heat(plate - air, model.ambient + air);
  return [
    (segment.sinkPower - sinkHeat) / model.sinkCapacity,
    (segment.casePower + sinkHeat - model.box.heat(air)) / model.boxCapacity,
  ];
}

function jacobianAt(model: SinkInCase, plate: number, air: number): Matrix {
  const byPlate = model.sink.riseSlope(plate - air, model.ambient + air);
  const byAir = model.sink.airSlope(plate - air, model.ambient + air) - byPlate;
  const boxSlope = model.box.slope(air);
  return [
    -byPlate / model.sinkCapacity,
    -byAir / model.sinkCapacity,
    byPlate / model.boxCapacity,
    (byAir - boxSlope) / model.boxCapacity,
  ];
}

function multiply(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
  ];
}

interface Run {
  plate: number;
  air: number;
  plateIntegral: number;
  airIntegral: number;
  highestPlate: number;
  highestAir: number;
  /** Derivative of the present state by the start. */
  sensitivity: Matrix;
}

function startRun(rises: CaseRises): Run {
  return {
    ...rises,
    plateIntegral: 0,
    airIntegral: 0,
    highestPlate: rises.plate,
    highestAir: rises.air,
    sensitivity: [1, 0, 0, 1],
  };
}

/** The one-node method (exponential Rosenbrock, order 3 with an estimate of order 2) for two nodes. */
function integrate(model: SinkInCase, run: Run, segment: CaseSegment): void {
  let left = segment.duration;
  let step = left;
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const { plate, air } = run;
    const flow = flows(model, segment, plate, air);
    const jacobian = jacobianAt(model, plate, air);
    step = Math.min(step, left);
    for (;;) {
      const of = spectrum(jacobian, step);
      const [forwardPlate, forwardAir] = apply(phi1, of, step * flow[0], step * flow[1]);
      const ahead = flows(model, segment, plate + forwardPlate, air + forwardAir);
      const remainderPlate = ahead[0] - flow[0] - jacobian[0] * forwardPlate - jacobian[1] * forwardAir;
      const remainderAir = ahead[1] - flow[1] - jacobian[2] * forwardPlate - jacobian[3] * forwardAir;
      const correction = apply(phi3, of, 2 * step * remainderPlate, 2 * step * remainderAir);
      const error = Math.max(Math.abs(correction[0]), Math.abs(correction[1]));
      const allowed = stepTolerance * -Math.expm1(of.high);
      if (error > allowed && i < mostSteps - 1 && step > 1e-9 * segment.duration) {
        step *= Math.max(0.2, 0.85 * Math.cbrt(allowed / error));
        continue;
      }
      finishStep(model, run, segment, step, flow, [forwardPlate + correction[0], forwardAir + correction[1]]);
      left = step >= left ? 0 : left - step;
      step *= error > 0 ? Math.min(3, 0.85 * Math.cbrt(allowed / error)) : 3;
      break;
    }
  }
}

function finishStep(
  model: SinkInCase,
  run: Run,
  segment: CaseSegment,
  step: number,
  flow: [number, number],
  move: [number, number],
): void {
  run.plate += move[0];
  run.air += move[1];
  const end = flows(model, segment, run.plate, run.air);
  // Trapezium with end-slope correction; steps are short against both time constants while anything moves.
  run.plateIntegral += step * (run.plate - move[0] / 2) + (step * step * (flow[0] - end[0])) / 12;
  run.airIntegral += step * (run.air - move[1] / 2) + (step * step * (flow[1] - end[1])) / 12;
  run.highestPlate = Math.max(run.highestPlate, run.plate);
  run.highestAir = Math.max(run.highestAir, run.air);
  const mean = jacobianAt(model, run.plate - move[0] / 2, run.air - move[1] / 2);
  const middle = spectrum(mean, step);
  const [a, c] = apply(Math.exp, middle, 1, 0);
  const [b, d] = apply(Math.exp, middle, 0, 1);
  run.sensitivity = multiply([a, b, c, d], run.sensitivity);
}

/** Steady rises of plate and inside air at constant heat, K over the room. */
export function steadyInCase(model: SinkInCase, sinkPower: number, casePower: number): CaseRises {
  const air = model.box.rise(sinkPower + casePower);
  const over = risingRoot((rise) => model.sink.heat(rise, model.ambient + air) - sinkPower, 0, 20, 1e-8, 1e5);
  return { air, plate: air + over };
}

/** Rises after each of a row of segments, K over the room. */
export function warmUpInCase(
  model: SinkInCase,
  start: CaseRises,
  segments: readonly CaseSegment[],
): CaseRises[] {
  const run = startRun(start);
  return segments.map((segment) => {
    integrate(model, run, segment);
    return { plate: run.plate, air: run.air };
  });
}

/** One period of the steady cycle; rises over the room, K. */
export interface PeriodicInCase {
  readonly start: CaseRises;
  readonly ends: readonly CaseRises[];
  readonly highest: CaseRises;
  readonly mean: CaseRises;
  readonly iterations: number;
}

/**
 * Periodic steady state of a sink in a closed case under a repeated cycle of constant heat, by Newton's method on both
 * start temperatures. Highest values are taken at the ends of steps and segments.
 *
 * @param guess start of a neighbouring solution; the steady state at the mean heat if absent
 *
 * Error below 0.02 K (tested against a fine Runge-Kutta integration).
 */
export function periodicInCase(
  model: SinkInCase,
  segments: readonly CaseSegment[],
  guess?: CaseRises,
): PeriodicInCase {
  const period = segments.reduce((sum, segment) => sum + segment.duration, 0);
  const meanOf = (power: (segment: CaseSegment) => number) =>
    period > 0 ? segments.reduce((sum, segment) => sum + power(segment) * segment.duration, 0) / period : 0;
  let start =
    guess ??
    steadyInCase(
      model,
      meanOf((segment) => segment.sinkPower),
      meanOf((segment) => segment.casePower),
    );
  let run = startRun(start);
  let ends: CaseRises[] = [];
  let iterations = 0;
  while (iterations < mostIterations) {
    iterations++;
    run = startRun(start);
    ends = [];
    for (const segment of segments) {
      integrate(model, run, segment);
      ends.push({ plate: run.plate, air: run.air });
    }
    const [a, b, c, d] = run.sensitivity;
    const determinant = (1 - a) * (1 - d) - b * c;
    if (!(determinant > 0)) break;
    const missPlate = run.plate - start.plate;
    const missAir = run.air - start.air;
    const movePlate = ((1 - d) * missPlate + b * missAir) / determinant;
    const moveAir = (c * missPlate + (1 - a) * missAir) / determinant;
    if (Math.abs(movePlate) + Math.abs(moveAir) < startTolerance) break;
    start = { plate: start.plate + movePlate, air: start.air + moveAir };
  }
  const mean = period > 0 ? { plate: run.plateIntegral / period, air: run.airIntegral / period } : start;
  return { start, ends, highest: { plate: run.highestPlate, air: run.highestAir }, mean, iterations };
}
