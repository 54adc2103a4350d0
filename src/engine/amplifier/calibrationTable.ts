import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { evaluateCubic, type MonotoneCubic, monotoneCubic } from '../numerics/monotoneCubic.ts';

/** One reading with a steady carrier. */
export interface StageReading {
  /** RF power at the drains, watts; 0 for bias without drive. */
  readonly rfPower: number;
  /** Rail current of all devices, amperes. */
  readonly dcCurrent: number;
}

/** A stage known by measurement instead of theory. */
export interface MeasuredStage {
  /** Rail during the readings, volts. */
  readonly rail: number;
  /** Highest power read, watts. */
  readonly greatestPower: number;
  /** Rail current against the square root of the RF power. */
  readonly current: MonotoneCubic;
}

const maxReadings = 50;
/** Less output than this is none, W. */
const leastPower = 1e-6;
/** Relative slack for a reading without any loss. */
const slack = 1e-9;

/**
 * Makes a stage of a short table of output and rail current, by monotone interpolation over the amplitude (the square
 * root of the power), in which the current of classes AB and B is nearly a straight line.
 *
 * @param readings two or more with different powers, one of them without drive, in any order
 * @param rail held during the readings, volts
 * @returns the stage, with a note if the current falls while the output rises; a reason if there are too few readings, none
 *   without drive, or a reading puts out more than it takes in
 */
export function calibrateMeasuredStage(
  readings: readonly StageReading[],
  rail: number,
): Outcome<MeasuredStage> {
  const sorted = [...readings].sort((a, b) => a.rfPower - b.rfPower);
  const problem = problemOf(sorted, rail);
  if (problem) return problem;
  const points = sorted.map(({ rfPower, dcCurrent }) => [Math.sqrt(rfPower), dcCurrent] as const);
  const notes: Note[] = [];
  for (let i = 1; i < sorted.length; i++) {
    if (sorted[i]!.dcCurrent >= sorted[i - 1]!.dcCurrent) continue;
    notes.push(
      note(
        'assumed',
        'rail current falls with output',
        `The rail current falls between ${round(sorted[i - 1]!.rfPower)} W and ${round(sorted[i]!.rfPower)} W; check these two readings.`,
        { rfPower: sorted[i]!.rfPower },
      ),
    );
  }
  return success(
    { rail, greatestPower: sorted[sorted.length - 1]!.rfPower, current: monotoneCubic(points) },
    notes,
  );
}

/**
 * Rail current at an RF power, amperes; beyond the highest reading it goes on as a straight line over the amplitude.
 *
 * @param rfPower at the drains, watts, not negative
 */
export function measuredCurrent(stage: MeasuredStage, rfPower: number): number {
  return Math.max(0, evaluateCubic(stage.current, Math.sqrt(Math.max(0, rfPower))));
}

/** Heat of all devices at an RF power, on the rail of the readings, watts; not below 0 between readings. */
export function measuredHeat(stage: MeasuredStage, rfPower: number): number {
  return Math.max(0, stage.rail * measuredCurrent(stage, rfPower) - Math.max(0, rfPower));
}

function problemOf(sorted: readonly StageReading[], rail: number) {
  if (!(rail > 0)) return failure('no rail', 'The rail during the readings must be above zero.');
  if (sorted.length < 2 || sorted.length > maxReadings) {
    return failure('number of readings', `Between 2 and ${maxReadings} readings are needed.`, {
      count: sorted.length,
    });
  }
  if (sorted[0]!.rfPower !== 0) {
    return failure('no reading without drive', 'One reading with bias on and no drive (0 W) is needed.');
  }
  if (sorted.at(-1)!.rfPower < leastPower) {
    return failure('no reading with drive', 'One reading with output is needed.');
  }
  for (let i = 0; i < sorted.length; i++) {
    const { rfPower, dcCurrent } = sorted[i]!;
    if (!(Number.isFinite(rfPower) && dcCurrent >= 0 && Number.isFinite(dcCurrent))) {
      return failure(
        'reading not a number',
        'Every reading needs a power and a current, neither below zero.',
      );
    }
    if (i > 0 && rfPower === sorted[i - 1]!.rfPower) {
      return failure('power read twice', `There are two readings at ${round(rfPower)} W; keep one.`, {
        rfPower,
      });
    }
    if (rfPower > rail * dcCurrent * (1 + slack)) {
      return failure(
        'more out than in',
        `At ${round(rfPower)} W the rail delivers only ${round(rail * dcCurrent)} W. Check power meter, load and current.`,
        { rfPower, dcPower: rail * dcCurrent },
      );
    }
  }
  return null;
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
