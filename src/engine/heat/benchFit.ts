import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { type LeastSquaresFit, leastSquares } from '../numerics/leastSquares.ts';
import type { BenchModel } from './benchModel.ts';
import { isPlausible, plausibleNotes, systematicUncertainty } from './benchUpdate.ts';
import { advance } from './sinkTransient.ts';

/** One line of a log. */
export interface BenchReading {
  /** s since the power was switched on or off. */
  readonly time: number;
  /** Sensor on the plate, K. */
  readonly plate: number;
  /** Still room air, K. */
  readonly air: number;
}

/** A warm-up at constant power, or a cool-down at none. */
export interface BenchRun {
  readonly readings: readonly BenchReading[];
  /** V times I of the resistor, W; 0 for a cool-down. */
  readonly power: number;
  /** Rise of the place of the sensor over the plate's mean per watt, K/W; 0 if it is far from the resistor. */
  readonly sensorRise: number;
  /** Relative standard deviation of the power. */
  readonly powerUncertainty: number;
  /** Standard deviation of plate minus air, the same for the whole run, K. */
  readonly temperatureUncertainty: number;
}

export interface BenchFit {
  /** f_h: factor on all film coefficients of the model. */
  readonly filmFactor: number;
  /** Standard deviation of ln f_h, from scatter and from the instruments. */
  readonly uncertainty: number;
  /** J/K */
  readonly heatCapacity: number;
  /** Standard deviation of ln(heat capacity). */
  readonly capacityUncertainty: number;
  /** Mean of the plate at the first reading, K. */
  readonly startPlate: number;
  /** Rise of the plate's mean to which the run tends, K. */
  readonly finalRise: number;
  /** Root mean square of what is left, K. */
  readonly scatter: number;
  /** Readings left out as outliers, by their place in the log. */
  readonly rejected: readonly number[];
  /** Length of the run over the time constant at its hottest. */
  readonly lengthOverTime: number;
  /** False when f_h lies outside what a sound setup gives; such a run is not to be averaged in. */
  readonly plausible: boolean;
}

/** Fewest readings of a run. */
const fewestReadings = 6;
/** Least change of temperature from which anything can be told, K. */
const leastChange = 3;
/** Shortest run, in time constants; below 1 a note. */
const shortestRun = 0.3;
/** A reading is out when it misses by more than this many robust standard deviations, and by 0.3 K at least. */
const outlierLimit = 5;
const outlierFloor = 0.3;
const outlierRounds = 3;
/** More than this share of outliers is no run. */
const mostRejected = 0.25;
/** Median absolute deviation to standard deviation of a normal distribution. */
const normalDeviation = 1.4826;
/** Scatter of a thermocouple on a plate, K: weighs the known heat capacity, and no run is taken to be better. */
const usualScatter = 0.2;

/**
 * Factor on the film coefficients and heat capacity from a logged warm-up or cool-down, by least squares on the
 * nonlinear law C dT/dt = P - Q(T; f_h), not on an exponential: that reads 28, 12 and 4 % high in the final rise when
 * the run stops after 0.5, 1 and 2 time constants (own computation). The first plate temperature is an unknown too.
 *
 * The known heat capacity enters as one more reading, weighed by its uncertainty; a cool-down needs it, because without
 * power only the ratio of heat to capacity shows.
 *
 * @returns failures: `tooFewReadings`, `runUnordered`, `changeTooSmall`, `runTooShort`, `capacityNeeded`,
 *   `tooManyOutliers`, `fitSingular`
 */
export function fitRun(model: BenchModel, run: BenchRun): Outcome<BenchFit> {
  const fault = faultOf(model, run);
  if (fault) return fault;
  let kept = run.readings.map((_, i) => i);
  let fit = fitReadings(model, run, kept);
  for (let round = 0; fit.ok && round < outlierRounds; round++) {
    const sound = soundReadings(kept, fit.value.residuals);
    if (sound.length === kept.length) break;
    kept = sound;
    if (kept.length < (1 - mostRejected) * run.readings.length) return tooManyOutliers(run, kept);
    fit = fitReadings(model, run, kept);
  }
  return fit.ok ? resultOf(model, run, kept, fit.value) : fit;
}

function faultOf(model: BenchModel, { readings, power }: BenchRun): Outcome<BenchFit> | null {
  if (readings.length < fewestReadings) {
    return failure('tooFewReadings', `A run needs at least ${fewestReadings} readings.`, {
      readings: readings.length,
    });
  }
  if (readings.some(({ time }, i) => i > 0 && !(time > readings[i - 1]!.time))) {
    return failure('runUnordered', 'The times of the readings must rise.');
  }
  const rises = readings.map(({ plate, air }) => plate - air);
  const change = Math.max(...rises) - Math.min(...rises);
  if (change < leastChange) {
    return failure(
      'changeTooSmall',
      `The plate changed by less than ${leastChange} K; nothing can be told from that.`,
      { change },
    );
  }
  if (power <= 0 && model.capacityUncertainty === null) {
    return failure(
      'capacityNeeded',
      'A cool-down needs the weight of the sink: without power only the ratio shows.',
    );
  }
  return null;
}

function tooManyOutliers(run: BenchRun, kept: readonly number[]): Outcome<BenchFit> {
  return failure('tooManyOutliers', 'Too many readings stray from any smooth run; look at sensor and log.', {
    rejected: run.readings.length - kept.length,
  });
}

function meanAir(readings: readonly BenchReading[]): number {
  return readings.reduce((sum, { air }) => sum + air, 0) / readings.length;
}

/**
 * Rise of the sensor's place over the plate's mean, K. At time 0 the power has only just come on: the place is as warm as
 * the plate. The plate spreads within seconds, so that every later reading has all of it (own choice).
 */
export function localRise({ sensorRise, power }: BenchRun, time: number): number {
  return time > 0 ? sensorRise * power : 0;
}

/** Temperatures of the sensor by the model at all readings of a run that begins at `startPlate`, K. */
export function modelTemperatures(
  model: BenchModel,
  run: BenchRun,
  filmFactor: number,
  capacity: number,
  startPlate: number,
): number[] {
  const { readings, power } = run;
  const node = { law: model.lawFor(filmFactor, meanAir(readings)), capacity };
  let plate = startPlate;
  return readings.map((reading, i) => {
    const before = readings[i - 1];
    if (before) {
      // The air drifts slowly: its mean over the interval is what the plate sees.
      const air = (before.air + reading.air) / 2;
      plate = air + advance(node, plate - air, power, reading.time - before.time);
    }
    return plate + localRise(run, reading.time);
  });
}

/** Unknowns of the fit: ln f_h, ln(C/C_known), first plate temperature over the first reading in units of 10 K. */
const startUnit = 10;

function unknownsOf(model: BenchModel, run: BenchRun, [film, heat, first]: readonly number[]) {
  const limited = (x: number) => Math.min(Math.max(x, -4), 4);
  const { plate, time } = run.readings[0]!;
  return {
    filmFactor: Math.exp(limited(film!)),
    capacity: model.heatCapacity * Math.exp(limited(heat!)),
    startPlate: plate - localRise(run, time) + startUnit * first!,
  };
}

/** The residuals of a fit: of the kept readings (K), and last that of the known capacity if there is one. */
function fitReadings(model: BenchModel, run: BenchRun, kept: readonly number[]): Outcome<LeastSquaresFit> {
  const residualsOf = (parameters: readonly number[]) => {
    const { filmFactor, capacity, startPlate } = unknownsOf(model, run, parameters);
    const temperatures = modelTemperatures(model, run, filmFactor, capacity, startPlate);
    const residuals = kept.map((i) => temperatures[i]! - run.readings[i]!.plate);
    if (model.capacityUncertainty !== null) {
      residuals.push((usualScatter * Math.log(capacity / model.heatCapacity)) / model.capacityUncertainty);
    }
    return residuals;
  };
  return leastSquares(residualsOf, [0, 0, 0]);
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

function soundReadings(kept: readonly number[], residuals: readonly number[]): number[] {
  const misses = kept.map((_, k) => residuals[k]!);
  const centre = medianOf(misses);
  const spread = normalDeviation * medianOf(misses.map((miss) => Math.abs(miss - centre)));
  const limit = Math.max(outlierLimit * spread, outlierFloor);
  return kept.filter((_, k) => Math.abs(misses[k]! - centre) <= limit);
}

/** Readings that follow each other miss alike; the uncertainty grows by ((1 + r)/(1 - r))^(1/2), r their correlation. */
function correlationFactor(misses: readonly number[]): number {
  let along = 0;
  let square = 0;
  misses.forEach((miss, i) => {
    square += miss * miss;
    if (i > 0) along += miss * misses[i - 1]!;
  });
  const r = square > 0 ? Math.min(Math.max(along / square, 0), 0.95) : 0;
  return Math.sqrt((1 + r) / (1 - r));
}

function resultOf(
  model: BenchModel,
  run: BenchRun,
  kept: readonly number[],
  fit: LeastSquaresFit,
): Outcome<BenchFit> {
  const { filmFactor, capacity, startPlate } = unknownsOf(model, run, fit.parameters);
  const air = meanAir(run.readings);
  const law = model.lawFor(filmFactor, air);
  const hottest = Math.max(...run.readings.map((r) => r.plate - r.air)) - run.sensorRise * run.power;
  const duration = run.readings.at(-1)!.time - run.readings[0]!.time;
  const lengthOverTime = (duration * law.slope(hottest)) / capacity;
  if (lengthOverTime < shortestRun) {
    return failure('runTooShort', 'The run is too short to tell cooling from heat capacity; log on.', {
      lengthOverTime,
    });
  }
  const misses = kept.map((_, k) => fit.residuals[k]!);
  const unknownCount = fit.parameters.length;
  const freedom = Math.max(1, misses.length - unknownCount);
  const scatter = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / freedom);
  const factor = correlationFactor(misses);
  const random = (k: number) =>
    Math.max(scatter, usualScatter) * factor * Math.sqrt(Math.max(fit.covariance[k]![k]!, 0));
  const instruments = systematicUncertainty(model, filmFactor, hottest, air, run);
  const uncertainty = Math.hypot(random(0), instruments);
  const plausible = isPlausible(filmFactor);
  const rejected = run.readings.map((_, i) => i).filter((i) => !kept.includes(i));
  return success<BenchFit>(
    {
      filmFactor,
      uncertainty,
      heatCapacity: capacity,
      capacityUncertainty: Math.hypot(random(1), run.powerUncertainty),
      startPlate,
      finalRise: law.rise(run.power),
      scatter,
      rejected,
      lengthOverTime,
      plausible,
    },
    [...plausibleNotes(filmFactor, run.power), ...runNotes(run, rejected, lengthOverTime)],
  );
}

function runNotes(run: BenchRun, rejected: readonly number[], lengthOverTime: number): readonly Note[] {
  const notes: Note[] = [];
  if (rejected.length > 0) {
    notes.push(
      note(
        'information',
        'outliersLeftOut',
        `${rejected.length} of ${run.readings.length} readings stray from the run and were left out.`,
        { rejected: rejected.length },
      ),
    );
  }
  if (lengthOverTime < 1) {
    notes.push(
      note(
        'information',
        'runShort',
        'The run is shorter than one time constant of the sink; a longer one tells more.',
        { lengthOverTime },
      ),
    );
  }
  return notes;
}
