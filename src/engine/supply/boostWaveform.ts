import type { BoostParts, BoostPoint } from './boost.ts';

/** Waveforms of a step-up stage over whole periods, for drawing. All arrays have one length; times rise. */
export interface BoostWaveforms {
  /** s */
  readonly time: readonly number[];
  /** A */
  readonly inductorCurrent: readonly number[];
  readonly switchCurrent: readonly number[];
  readonly rectifierCurrent: readonly number[];
  /** V */
  readonly switchVoltage: readonly number[];
  /** Output voltage, its mean the set point, V. */
  readonly outputVoltage: readonly number[];
}

interface Interval {
  readonly length: number;
  readonly start: number;
  readonly end: number;
  readonly state: 'switch' | 'rectifier' | 'idle';
}

/**
 * Waveforms of a working point over some periods.
 *
 * Straight-line currents of `boostPoint`; the output follows the charge of the capacitor and its series resistance.
 * Each interval is drawn with `steps` pieces and both of its ends, so that jumps stand upright.
 */
export function boostWaveforms(
  parts: BoostParts,
  point: BoostPoint,
  periods = 2,
  steps = 16,
): BoostWaveforms {
  const intervals = intervalsOf(parts, point);
  const time: number[] = [];
  const inductorCurrent: number[] = [];
  const switchCurrent: number[] = [];
  const rectifierCurrent: number[] = [];
  const switchVoltage: number[] = [];
  const outputVoltage: number[] = [];
  let now = 0;
  let charge = 0;
  for (let period = 0; period < periods; period++) {
    for (const interval of intervals) {
      const slope = (interval.end - interval.start) / interval.length;
      const rectifying = interval.state === 'rectifier';
      for (let step = 0; step <= steps; step++) {
        const passed = (interval.length * step) / steps;
        const current = interval.start + slope * passed;
        const through = rectifying ? current : 0;
        const taken = rectifying ? interval.start * passed + (slope * passed * passed) / 2 : 0;
        const stored = (charge + taken - point.outputCurrent * passed) / parts.capacitance;
        time.push(now + passed);
        inductorCurrent.push(current);
        switchCurrent.push(interval.state === 'switch' ? current : 0);
        rectifierCurrent.push(through);
        switchVoltage.push(nodeVoltage(parts, point, interval.state, current));
        outputVoltage.push(stored + parts.capacitorResistance * (through - point.outputCurrent));
      }
      const taken = rectifying ? ((interval.start + interval.end) / 2) * interval.length : 0;
      charge += taken - point.outputCurrent * interval.length;
      now += interval.length;
    }
  }
  return {
    time,
    inductorCurrent,
    switchCurrent,
    rectifierCurrent,
    switchVoltage,
    outputVoltage: centred(time, outputVoltage, point.outputVoltage),
  };
}

function intervalsOf(parts: BoostParts, point: BoostPoint): readonly Interval[] {
  const period = 1 / parts.frequency;
  const { switchDuty, rectifierDuty, inductorValley: valley, inductorPeak: peak } = point;
  const idle = Math.max(0, 1 - switchDuty - rectifierDuty);
  const intervals: Interval[] = [
    { length: switchDuty * period, start: valley, end: peak, state: 'switch' },
    { length: rectifierDuty * period, start: peak, end: valley, state: 'rectifier' },
    { length: idle * period, start: 0, end: 0, state: 'idle' },
  ];
  // Rounding leaves a sliver in continuous conduction; it is no interval.
  return intervals.filter((interval) => interval.length > 1e-9 * period);
}

function nodeVoltage(
  parts: BoostParts,
  point: BoostPoint,
  state: Interval['state'],
  current: number,
): number {
  if (state === 'switch') return current * parts.switchResistance;
  if (state === 'idle') return point.inputVoltage;
  return point.outputVoltage + parts.rectifierDrop + current * parts.rectifierResistance;
}

/** Shifts a sampled voltage so that its mean over time is the wanted one. */
function centred(time: readonly number[], values: readonly number[], mean: number): number[] {
  let area = 0;
  for (let index = 1; index < time.length; index++) {
    area += ((values[index]! + values[index - 1]!) / 2) * (time[index]! - time[index - 1]!);
  }
  const length = (time[time.length - 1] ?? 0) - (time[0] ?? 0);
  const offset = length > 0 ? mean - area / length : mean;
  return values.map((value) => value + offset);
}
