import type { BenchRunInput, Design } from '../../../shared/design/schema.ts';
import { notMeasured } from '../../../src/engine/couple/benchKnowledge.ts';
import { sinkWith } from '../../../src/engine/couple/correctedSink.ts';
import { resultOf } from '../resultOf.ts';

interface Truth {
  /** Film factor and factor on the heat capacity of the sink that "is measured". */
  readonly film: number;
  readonly capacity: number;
  readonly power?: number;
  /** s */
  readonly duration?: number;
  /** K */
  readonly start?: number;
  /** Error of every reading, K, and noise. */
  readonly offset?: number;
  readonly noise?: number;
  /** Air that drifts away from the one entered, K over the run. */
  readonly drift?: number;
  /** The second thermometer is logged with every reading. */
  readonly logRoom?: boolean;
}

const interval = 60;
const step = 0.5;
const air = 295.15;

/** Repeatable noise of unit spread: sines without a common period. */
const wobble = (i: number) => Math.SQRT2 * 0.6 * (Math.sin(12.9898 * i + 1) + Math.sin(78.233 * i));

/**
 * An invented log of a sink, made by another way than the fit takes: heat of the sink itself (no table) stepped by Euler's
 * rule through half-second steps, air that drifts, a thermometer that is off, and noise.
 */
export function benchLog(design: Design, truth: Truth): BenchRunInput['readings'] {
  const {
    film,
    capacity,
    power = 30,
    duration = 3600,
    start = 0,
    offset = 0,
    noise = 0.1,
    drift = 0,
    logRoom = false,
  } = truth;
  const sink = resultOf(sinkWith(design, 101_325, { ...notMeasured, filmFactor: film }));
  const heatCapacity = sink.heatCapacity * capacity;
  const readings: BenchRunInput['readings'] = [];
  let plate = air + start;
  for (let time = 0, n = 0; time <= duration; time += step, n++) {
    const room = air + (drift * time) / duration;
    if (n % (interval / step) === 0) {
      readings.push({
        time,
        temperature: plate + offset + noise * wobble(readings.length),
        room: logRoom ? room : null,
      });
    }
    const heat = plate > room ? sink.heat(plate, room) : 0;
    plate += ((power - heat) * step) / heatCapacity;
  }
  return readings;
}

const usual = {
  sink: null,
  powerDoubt: 0.02,
  air,
  sensorDoubt: 1,
  sensorPlace: 'corner',
  resistorWidth: 0.015,
  resistorLength: 0.02,
} as const;

export function warmUpRun(design: Design, truth: Truth): BenchRunInput {
  const power = truth.power ?? 30;
  return { ...usual, kind: 'warmUp', power, readings: benchLog(design, truth) };
}

export function coolDownRun(design: Design, truth: Truth): BenchRunInput {
  return { ...usual, kind: 'coolDown', power: 30, readings: benchLog(design, { ...truth, power: 0 }) };
}
