import { phi1, phi3 } from './exponentialPhi.ts';
import type { HeatTable } from './heatTable.ts';
import { risingRoot } from './monotoneRoot.ts';
import type { SinkAirTable, SinkReading } from './sinkTable.ts';
import { apply, type Matrix, multiply, spectrum } from './twoByTwo.ts';

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

/** Bound for the estimated error of a step, K; the true error is smaller. */
const stepTolerance = 0.05;
const mostSteps = 2000;
const mostIterations = 30;
/** The search ends when the start moves by less, K. */
const startTolerance = 1e-4;

/** Heat laws and flows at one state. */
interface Local {
  readonly flowPlate: number;
  readonly flowAir: number;
  readonly jacobian: Matrix;
}

const reading: SinkReading = { heat: 0, riseSlope: 0, airSlope: 0 };

function localAt(model: SinkInCase, segment: CaseSegment, plate: number, air: number): Local {
  model.sink.read(plate - air, model.ambient + air, reading);
  const { heat, riseSlope, airSlope } = reading;
  const byAir = airSlope - riseSlope;
  return {
    flowPlate: (segment.sinkPower - heat) / model.sinkCapacity,
    flowAir: (segment.casePower + heat - model.box.heat(air)) / model.boxCapacity,
    jacobian: [
      -riseSlope / model.sinkCapacity,
      -byAir / model.sinkCapacity,
      riseSlope / model.boxCapacity,
      (byAir - model.box.slope(air)) / model.boxCapacity,
    ],
  };
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
  let local = localAt(model, segment, run.plate, run.air);
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const { flowPlate, flowAir, jacobian: j } = local;
    // The last step allowed takes all that is left, so that no time is ever dropped.
    step = i === mostSteps - 1 ? left : Math.min(step, left);
    for (;;) {
      const of = spectrum(j, step);
      const forward = apply(phi1, of, step * flowPlate, step * flowAir);
      const plateAhead = run.plate + forward[0];
      const airAhead = run.air + forward[1];
      const heat = model.sink.heat(plateAhead - airAhead, model.ambient + airAhead);
      const aheadPlate = (segment.sinkPower - heat) / model.sinkCapacity;
      const aheadAir = (segment.casePower + heat - model.box.heat(airAhead)) / model.boxCapacity;
      const correction = apply(
        phi3,
        of,
        2 * step * (aheadPlate - flowPlate - j[0] * forward[0] - j[1] * forward[1]),
        2 * step * (aheadAir - flowAir - j[2] * forward[0] - j[3] * forward[1]),
      );
      const error = Math.max(Math.abs(correction[0]), Math.abs(correction[1]));
      const allowed = stepTolerance * -Math.expm1(of.high);
      if (error > allowed && i < mostSteps - 1 && step > 1e-9 * segment.duration) {
        step *= Math.max(0.2, 0.85 * Math.cbrt(allowed / error));
        continue;
      }
      local = finishStep(
        model,
        run,
        segment,
        local,
        step,
        forward[0] + correction[0],
        forward[1] + correction[1],
      );
      left = step >= left ? 0 : left - step;
      step *= error > 0 ? Math.min(4, 0.85 * Math.cbrt(allowed / error)) : 4;
      break;
    }
  }
}

function finishStep(
  model: SinkInCase,
  run: Run,
  segment: CaseSegment,
  before: Local,
  step: number,
  movePlate: number,
  moveAir: number,
): Local {
  run.plate += movePlate;
  run.air += moveAir;
  const after = localAt(model, segment, run.plate, run.air);
  // Trapezium with end-slope correction; steps are short against both time constants while anything moves.
  const twelfth = (step * step) / 12;
  run.plateIntegral += step * (run.plate - movePlate / 2) + twelfth * (before.flowPlate - after.flowPlate);
  run.airIntegral += step * (run.air - moveAir / 2) + twelfth * (before.flowAir - after.flowAir);
  run.highestPlate = Math.max(run.highestPlate, run.plate);
  run.highestAir = Math.max(run.highestAir, run.air);
  const a = before.jacobian;
  const b = after.jacobian;
  const mean = spectrum([a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3]], step / 2);
  const column = apply(Math.exp, mean, 1, 0);
  const other = apply(Math.exp, mean, 0, 1);
  run.sensitivity = multiply([column[0], other[0], column[1], other[1]], run.sensitivity);
  return after;
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

function meanSteady(model: SinkInCase, segments: readonly CaseSegment[], period: number): CaseRises {
  let sink = 0;
  let box = 0;
  for (const { sinkPower, casePower, duration } of segments) {
    sink += sinkPower * duration;
    box += casePower * duration;
  }
  return period > 0 ? steadyInCase(model, sink / period, box / period) : { plate: 0, air: 0 };
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
  let start = guess ?? meanSteady(model, segments, period);
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
