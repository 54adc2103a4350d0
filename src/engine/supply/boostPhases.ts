import { type Outcome, success } from '../../../shared/outcome.ts';
import type { BoostPoint } from './boost.ts';
import { type BoostLossParts, boostLosses, type LossTerm } from './boostLosses.ts';

/** Several equal power stages that switch one after another into one output capacitor. */
export interface PhasedParts extends BoostLossParts {
  /** Number of phases, 1 to 4 or more. Inductor, switch and rectifier are those of one; the capacitors are shared. */
  readonly phases: number;
}

/** A working point of all phases together. Currents A, voltages V. */
export interface PhasedPoint {
  /** One of the equal phases, the shared capacitors divided. */
  readonly phase: BoostPoint;
  /** Of the sum of the inductor currents, peak to peak. */
  readonly inputRipple: number;
  /** Highest of the sum of the inductor currents. */
  readonly inputPeak: number;
  readonly inputCapacitorRms: number;
  readonly outputCapacitorRms: number;
  /** Peak to peak. */
  readonly outputRipple: number;
  /** All phases together, W by term. */
  readonly terms: Readonly<Record<LossTerm, number>>;
  readonly total: number;
  readonly efficiency: number;
  /** Mean, with all losses. */
  readonly inputCurrent: number;
}

/** One phase with its part of the shared capacitors. */
export function onePhase(parts: PhasedParts): BoostLossParts {
  const { phases, capacitance, capacitorResistance } = parts;
  return {
    ...parts,
    capacitance: capacitance / phases,
    capacitorResistance: capacitorResistance * phases,
    inputCapacitorResistance: 0,
  };
}

/**
 * Losses and currents of a step-up converter of one or several interleaved phases.
 *
 * Each phase carries Io/N; its losses count N times. Ripple of input and output from the exact superposition of the
 * straight-line currents of all phases, shifted by Ts/N. Equal phases: 5 % of mismatch leaves about 5 % of one
 * phase's ripple at fs. Errors: those of `boostPoint`. Source: own derivation.
 */
export function phasedPoint(
  parts: PhasedParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
): Outcome<PhasedPoint> {
  const { phases } = parts;
  const found = boostLosses(onePhase(parts), inputVoltage, outputVoltage, outputCurrent / phases);
  if (!found.ok) return found;
  const phase = found.value.point;
  const ripple =
    phases === 1
      ? rippleOfOne(phase)
      : rippleOf(superpose(phase, phases, parts.frequency), parts, outputCurrent);
  const terms = { ...found.value.terms };
  for (const term of Object.keys(terms) as LossTerm[]) terms[term] *= phases;
  // Controller and indicator are there once, and the capacitors carry what is left of the ripple.
  terms.fixed = parts.fixedPower;
  terms.capacitors =
    parts.capacitorResistance * ripple.outputCapacitorRms ** 2 +
    parts.inputCapacitorResistance * ripple.inputCapacitorRms ** 2;
  let total = 0;
  for (const term of Object.values(terms)) total += term;
  const output = outputVoltage * outputCurrent;
  const taken = output + total;
  return success({
    phase,
    ...ripple,
    terms,
    total,
    efficiency: taken > 0 ? output / taken : 0,
    inputCurrent: taken / inputVoltage,
  });
}

/** A part of the period in which every current is a straight line. Start and end, A. */
export interface SummedInterval {
  readonly length: number;
  readonly inductors: readonly [number, number];
  readonly rectifiers: readonly [number, number];
}

/** Sum of the inductor and of the rectifier currents of all phases over one period, exact for straight lines. */
export function superpose(phase: BoostPoint, phases: number, frequency: number): readonly SummedInterval[] {
  const period = 1 / frequency;
  const { switchDuty, rectifierDuty } = phase;
  const edges = new Set<number>([0, 1]);
  for (let index = 0; index < phases; index++) {
    for (const edge of [0, switchDuty, Math.min(1, switchDuty + rectifierDuty)]) {
      const place = (index / phases + edge) % 1;
      if (place > 1e-9 && place < 1 - 1e-9) edges.add(place);
    }
  }
  const places = [...edges].sort((a, b) => a - b);
  const intervals: SummedInterval[] = [];
  for (let index = 1; index < places.length; index++) {
    const from = places[index - 1]!;
    const to = places[index]!;
    if (to - from < 1e-9) continue;
    const sum = { i0: 0, i1: 0, r0: 0, r1: 0 };
    for (let shift = 0; shift < phases; shift++) {
      addPhase(sum, phase, wrapped((from + to) / 2 - shift / phases), to - from);
    }
    intervals.push({
      length: (to - from) * period,
      inductors: [sum.i0, sum.i1],
      rectifiers: [sum.r0, sum.r1],
    });
  }
  return intervals;
}

const wrapped = (place: number) => place - Math.floor(place);

/** Adds one phase whose own time is `middle` (share of the period) in the middle of an interval of a given width. */
function addPhase(
  sum: { i0: number; i1: number; r0: number; r1: number },
  phase: BoostPoint,
  middle: number,
  width: number,
): void {
  const { switchDuty, rectifierDuty, inductorPeak: peak, inductorValley: valley } = phase;
  if (middle < switchDuty) {
    const slope = (peak - valley) / switchDuty;
    const centre = valley + slope * middle;
    sum.i0 += centre - (slope * width) / 2;
    sum.i1 += centre + (slope * width) / 2;
    return;
  }
  if (middle >= switchDuty + rectifierDuty) return;
  const slope = (valley - peak) / rectifierDuty;
  const centre = peak + slope * (middle - switchDuty);
  const start = centre - (slope * width) / 2;
  const end = centre + (slope * width) / 2;
  sum.i0 += start;
  sum.i1 += end;
  sum.r0 += start;
  sum.r1 += end;
}

export interface PhasedRipple {
  readonly inputRipple: number;
  readonly inputPeak: number;
  readonly inputCapacitorRms: number;
  readonly outputCapacitorRms: number;
  readonly outputRipple: number;
}

function rippleOfOne(phase: BoostPoint): PhasedRipple {
  const { inductorRipple, inductorPeak, inputCapacitorRms, outputCapacitorRms, outputRipple } = phase;
  return {
    inputRipple: inductorRipple,
    inputPeak: inductorPeak,
    inputCapacitorRms,
    outputCapacitorRms,
    outputRipple,
  };
}

/** Exact for any number of phases; with one it gives what `boostPoint` gives. */
export function rippleOf(
  intervals: readonly SummedInterval[],
  parts: PhasedParts,
  outputCurrent: number,
): PhasedRipple {
  const { capacitance, capacitorResistance: esr, frequency } = parts;
  let mean = 0;
  let square = 0;
  let charge = 0;
  let low = Infinity;
  let high = -Infinity;
  let lowVoltage = Infinity;
  let highVoltage = -Infinity;
  let outputSquare = 0;
  for (const { length, inductors, rectifiers } of intervals) {
    const [i0, i1] = inductors;
    low = Math.min(low, i0, i1);
    high = Math.max(high, i0, i1);
    mean += (length * (i0 + i1)) / 2;
    square += (length * (i0 * i0 + i0 * i1 + i1 * i1)) / 3;
    const c0 = rectifiers[0] - outputCurrent;
    const c1 = rectifiers[1] - outputCurrent;
    outputSquare += (length * (c0 * c0 + c0 * c1 + c1 * c1)) / 3;
    const slope = (c1 - c0) / length;
    const voltageAt = (time: number) =>
      (charge + c0 * time + (slope * time * time) / 2) / capacitance + esr * (c0 + slope * time);
    const turn = slope === 0 ? -1 : -c0 / slope - esr * capacitance;
    const times = turn > 0 && turn < length ? [0, turn, length] : [0, length];
    for (const time of times) {
      const voltage = voltageAt(time);
      lowVoltage = Math.min(lowVoltage, voltage);
      highVoltage = Math.max(highVoltage, voltage);
    }
    charge += (length * (c0 + c1)) / 2;
  }
  mean *= frequency;
  return {
    inputRipple: high - low,
    inputPeak: high,
    inputCapacitorRms: Math.sqrt(Math.max(0, square * frequency - mean * mean)),
    outputCapacitorRms: Math.sqrt(outputSquare * frequency),
    outputRipple: outputCurrent > 0 ? highVoltage - lowVoltage : 0,
  };
}

/** Waveforms of all phases over whole periods, for drawing; one length, times rise, jumps stand upright. */
export interface PhasedWaveforms {
  /** s */
  readonly time: readonly number[];
  /** Of the first phase, A. */
  readonly inductor: readonly number[];
  readonly switch: readonly number[];
  readonly rectifier: readonly number[];
  /** Sum over the phases, A. */
  readonly input: readonly number[];
  /** Output less its mean, V. */
  readonly ripple: readonly number[];
}

/** Waveforms over some periods, each straight piece drawn with `steps` parts. */
export function phasedWaveforms(
  parts: PhasedParts,
  point: PhasedPoint,
  outputCurrent: number,
  periods = 2,
  steps = 8,
): PhasedWaveforms {
  const { capacitance, capacitorResistance: esr, frequency, phases } = parts;
  const summed = superpose(point.phase, phases, frequency);
  const first = { ...point.phase };
  const time: number[] = [];
  const inductor: number[] = [];
  const switchCurrent: number[] = [];
  const rectifier: number[] = [];
  const input: number[] = [];
  const ripple: number[] = [];
  let now = 0;
  let charge = 0;
  for (let period = 0; period < periods; period++) {
    for (const { length, inductors, rectifiers } of summed) {
      const own = { i0: 0, i1: 0, r0: 0, r1: 0 };
      const middle = wrapped((now + length / 2) * frequency);
      addPhase(own, first, middle, length * frequency);
      const on = middle < first.switchDuty;
      for (let step = 0; step <= steps; step++) {
        const part = step / steps;
        const along = (from: number, to: number) => from + part * (to - from);
        const passed = length * part;
        const c0 = rectifiers[0] - outputCurrent;
        const c1 = rectifiers[1] - outputCurrent;
        const stored = charge + c0 * passed + ((c1 - c0) * passed * part) / 2;
        time.push(now + passed);
        inductor.push(along(own.i0, own.i1));
        switchCurrent.push(on ? along(own.i0, own.i1) : 0);
        rectifier.push(along(own.r0, own.r1));
        input.push(along(inductors[0], inductors[1]));
        ripple.push(stored / capacitance + esr * along(c0, c1));
      }
      charge += (length * (rectifiers[0] + rectifiers[1] - 2 * outputCurrent)) / 2;
      now += length;
    }
  }
  return {
    time,
    inductor,
    switch: switchCurrent,
    rectifier,
    input,
    ripple: centred(time, ripple),
  };
}

/** A sampled quantity less its mean over time. */
function centred(time: readonly number[], values: readonly number[]): number[] {
  let area = 0;
  for (let index = 1; index < time.length; index++) {
    area += ((values[index]! + values[index - 1]!) / 2) * (time[index]! - time[index - 1]!);
  }
  const span = time[time.length - 1]! - time[0]!;
  const mean = span > 0 ? area / span : 0;
  return values.map((value) => value - mean);
}
