import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { writeQuantity } from '../quantity/write.ts';
import type { BenchModel } from './benchModel.ts';

/** Film factors that a sound setup gives; outside, the geometry is wrong, or there is draught or another heat path. */
export const plausibleRange = { lowest: 0.5, highest: 1.8 } as const;

/** Smallest standard deviation of ln f_h after any number of tests: the model carries from one state to another (own choice). */
const uncertaintyFloor = 0.03;

/** Range of f_h searched for a steady reading. */
const searched = { lowest: 0.2, highest: 3 } as const;
const halvings = 50;

/** One knowledge of the film factor: its median and the standard deviation of its logarithm. */
export interface FilmKnowledge {
  readonly filmFactor: number;
  readonly uncertainty: number;
}

/** A reading taken when the temperature stood still. */
export interface SteadyReading {
  /** W */
  readonly power: number;
  /** Sensor on the plate, K. */
  readonly plate: number;
  /** K */
  readonly air: number;
  /** Rise of the place of the sensor over the plate's mean per watt, K/W. */
  readonly sensorRise: number;
  readonly powerUncertainty: number;
  readonly temperatureUncertainty: number;
}

/** ln-ln derivatives of the heat by film factor and by rise, at constant other. */
function exponents(model: BenchModel, filmFactor: number, rise: number, air: number) {
  const step = 0.01;
  const law = model.lawFor(filmFactor, air);
  const more = model.lawFor(filmFactor * (1 + step), air).heat(rise);
  const less = model.lawFor(filmFactor * (1 - step), air).heat(rise);
  return {
    byFilm: Math.log(more / less) / Math.log((1 + step) / (1 - step)),
    byRise: (law.slope(rise) * rise) / law.heat(rise),
  };
}

/**
 * Standard deviation of ln f_h from the instruments: [(s_P/P)² + (n s_T/ΔT)²]^(1/2)/e, n and e the exponents of the heat
 * in rise and film factor, computed for the sink at hand.
 */
export function systematicUncertainty(
  model: BenchModel,
  filmFactor: number,
  rise: number,
  air: number,
  {
    powerUncertainty,
    temperatureUncertainty,
  }: Pick<SteadyReading, 'powerUncertainty' | 'temperatureUncertainty'>,
): number {
  const { byFilm, byRise } = exponents(model, filmFactor, rise, air);
  return Math.hypot(powerUncertainty, (byRise * temperatureUncertainty) / rise) / byFilm;
}

/** Whether a sound setup can give this film factor. */
export function isPlausible(filmFactor: number): boolean {
  return filmFactor >= plausibleRange.lowest && filmFactor <= plausibleRange.highest;
}

/** "Look first at the power entered, 10 W": a run pasted beside the power of another one is the likeliest fault. */
function powerFirst(power: number, side: 'great' | 'small'): string {
  return power > 0
    ? `the power entered, ${writeQuantity(power, 'power')}, may be too ${side} for this run; if it is right, `
    : '';
}

/**
 * Says what to look for when a film factor is not to be believed: the power entered (W; 0 for a cool-down) first, since
 * it is the likeliest to be another run's.
 */
export function plausibleNotes(filmFactor: number, power: number): readonly Note[] {
  if (isPlausible(filmFactor)) return [];
  const sentence =
    filmFactor > 1
      ? `The sink cools far better than it can by itself: ${powerFirst(power, 'great')}look for a draught, a wrong dimension or heat that leaves another way.`
      : `The sink cools far worse than it should: ${powerFirst(power, 'small')}look for a wrong dimension, a poor joint under the sensor or a blocked air path.`;
  return [note('limit', 'filmFactorImplausible', sentence, { filmFactor })];
}

/**
 * Film factor from a steady reading: the f_h in 0.2 to 3 at which the sink gives off the power at the measured rise.
 * Emissivity stays at its table value; one test cannot tell it from f_h, and near the tested rise it need not.
 *
 * @returns failures `steadyReading` without power or rise, `filmFactorOutOfRange` when no factor explains it
 */
export function fitSteady(model: BenchModel, reading: SteadyReading): Outcome<FilmKnowledge> {
  const rise = reading.plate - reading.sensorRise * reading.power - reading.air;
  if (!(reading.power > 0 && rise > 0)) {
    return failure('steadyReading', 'A steady reading needs power and a plate warmer than the air.');
  }
  const excess = (filmFactor: number) => model.lawFor(filmFactor, reading.air).heat(rise) - reading.power;
  let low: number = searched.lowest;
  let high: number = searched.highest;
  if (excess(low) > 0 || excess(high) < 0) {
    return failure(
      'filmFactorOutOfRange',
      `No cooling that this sink can have explains the reading: check the power entered, ${writeQuantity(reading.power, 'power')}, then dimensions and sensor.`,
      { rise, power: reading.power },
    );
  }
  for (let i = 0; i < halvings; i++) {
    const middle = Math.sqrt(low * high);
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  const filmFactor = Math.sqrt(low * high);
  const uncertainty = systematicUncertainty(model, filmFactor, rise, reading.air, reading);
  return success({ filmFactor, uncertainty }, plausibleNotes(filmFactor, reading.power));
}

/**
 * Joins prior knowledge of the film factor and tests, in ln f_h with weights 1/σ². Implausible tests are left out with a
 * note: they ask for another look, not for an average. The standard deviation never falls below 3 %.
 *
 * @param prior before any test: 1 with the uncertainty of the correlations
 */
export function updateFilm(prior: FilmKnowledge, tests: readonly FilmKnowledge[]): Outcome<FilmKnowledge> {
  if (!(prior.uncertainty > 0) || tests.some((test) => !(test.uncertainty > 0 && test.filmFactor > 0))) {
    return failure('filmKnowledge', 'Film factors and their uncertainties must be positive.');
  }
  const sound = tests.filter(({ filmFactor }) => isPlausible(filmFactor));
  let weight = prior.uncertainty ** -2;
  let sum = weight * Math.log(prior.filmFactor);
  for (const { filmFactor, uncertainty } of sound) {
    weight += uncertainty ** -2;
    sum += Math.log(filmFactor) * uncertainty ** -2;
  }
  const joined = sound.length > 0 ? Math.max(weight ** -0.5, uncertaintyFloor) : prior.uncertainty;
  const left = tests.length - sound.length;
  const notes =
    left > 0
      ? [
          note(
            'limit',
            'testsLeftOut',
            `${left} of ${tests.length} tests are not plausible and were left out.`,
            { left },
          ),
        ]
      : [];
  return success({ filmFactor: Math.exp(sum / weight), uncertainty: joined }, notes);
}
