import { type Outcome, success } from '../../../shared/outcome.ts';
import { type BoostParts, boostPoint, inductanceForRipple } from './boost.ts';
import { capacitanceForDroop, rightHalfPlaneZero, usableCrossover } from './boostControl.ts';
import { preferredValue } from './preferredValues.ts';

/** Where a converter is laid out: the lowest input with the peak of the envelope. */
export interface BoostTask {
  /** V */
  readonly inputVoltage: number;
  readonly outputVoltage: number;
  /** All phases together, A. */
  readonly outputCurrent: number;
  readonly phases: number;
  /** Hz */
  readonly frequency: number;
  /** On-resistance of a hot switch over a cold one. */
  readonly hotFactor: number;
  /** Threshold of the rectifier, V. */
  readonly rectifierDrop: number;
  /** Least input capacitance for a stable supply, F; 0 where it does not matter. */
  readonly stableCapacitance: number;
  /** Highest voltage the source can have, V. */
  readonly highestInput: number;
}

/** Values the builder has chosen; null takes the suggestion. */
export interface ChosenParts {
  readonly inductance: number | null;
  readonly inductorResistance: number | null;
  readonly saturationCurrent: number | null;
  readonly currentLimit: number | null;
  readonly switchResistance: number | null;
  readonly outputCapacitance: number | null;
  readonly outputCapacitorResistance: number | null;
  readonly inputCapacitance: number | null;
}

export type UsedParts = { readonly [Key in keyof ChosenParts]: number };

/** Ratings by rule, standard values. */
export interface PartRatings {
  /** V */
  readonly switchVoltage: number;
  readonly rectifierVoltage: number;
  readonly capacitorVoltage: number;
  readonly inputCapacitorVoltage: number;
  /** Mean, one rectifier, A. */
  readonly rectifierCurrent: number;
}

export interface BoostSuggestion {
  readonly parts: UsedParts;
  readonly ratings: PartRatings;
}

/** Ripple over mean inductor current; 0.2 to 0.4 is common practice. */
const rippleRatio = 0.3;
/** Share of the input power that copper and switch may take each. Own choice. */
const conductionShare = 0.01;
/** Isat over peak; own choice. */
const saturationFactor = 1.2;
/** Current limit of the controller over the peak at the lowest input: room for the loop. Own choice. */
const limitFactor = 1.15;
/** Dip of the rail for a full step of the envelope, and ripple by the series resistance. Own choice. */
const droopShare = 0.02;
const resistiveRippleShare = 0.01;
/** Input capacitor over the least one for a stable supply. Own choice. */
const stableFactor = 3;
/** Ripple across the input capacitor, ideal. Own choice. */
const inputRippleShare = 0.005;
/** Voltage ratings over the working voltage, ringing in mind. Own choice between 1.25 and 1.5. */
const transistorFactor = 1.4;
const capacitorFactor = 1.25;
/** Mean current rating of a rectifier over its current. Own choice. */
const rectifierFactor = 1.5;

/** Usual voltage ratings, V. From memory. */
const transistorVoltages = [20, 25, 30, 40, 60, 80, 100, 150, 200, 250, 300, 400, 600];
const rectifierVoltages = [20, 30, 40, 45, 60, 80, 100, 150, 200, 300, 400, 600];
const capacitorVoltages = [6.3, 10, 16, 25, 35, 50, 63, 80, 100, 160, 200, 250, 350, 400, 450];
const rectifierCurrents = [1, 2, 3, 5, 8, 10, 15, 20, 30, 40, 60, 100, 200];

/**
 * Parts of a step-up converter from standard values by rule, the builder's own values kept.
 *
 * Inductor: ripple 30 % of the mean at the lowest input, next E12 value up; saturation 1.2 times the peak and not under
 * the controller's limit, next E12 value. Copper and hot switch: 1 % of the power each, next E12 value down. Output
 * capacitor: 2 % of dip for a full step at a fifth of the right-half-plane zero, E6 up; its series resistance 1 % of
 * ripple, E12 down. Input capacitor: 0.5 % of ripple and three times what keeps the supply stable, E6 up. Ratings: 1.4 times the voltage for switch and rectifier,
 * 1.25 for capacitors. Errors: `railBelowInput`. Source: own choice of rules;
 * E-series IEC 60063.
 */
export function suggestParts(task: BoostTask, chosen: ChosenParts): Outcome<BoostSuggestion> {
  const { inputVoltage, outputVoltage, phases, frequency, hotFactor } = task;
  const outputCurrent = Math.max(task.outputCurrent, 1e-3);
  const perPhase = outputCurrent / phases;
  const bare: BoostParts = {
    inductance: 1,
    inductorResistance: chosen.inductorResistance ?? 0,
    switchResistance: (chosen.switchResistance ?? 0) * hotFactor,
    rectifierDrop: task.rectifierDrop,
    rectifierResistance: 0,
    synchronous: true,
    capacitance: 1,
    capacitorResistance: 0,
    frequency,
  };
  const lossless = { ...bare, inductorResistance: 0, switchResistance: 0 };
  const reached = boostPoint(bare, inputVoltage, outputVoltage, perPhase);
  // Chosen parts that cannot reach the ratio are told where they are judged; the rest is laid out without their loss.
  const flat = reached.ok ? reached : boostPoint(lossless, inputVoltage, outputVoltage, perPhase);
  if (!flat.ok) return flat;
  const { switchDuty: duty, inductorMean: mean } = flat.value;
  const inductance =
    chosen.inductance ??
    preferredValue(
      'E12',
      inductanceForRipple(inputVoltage, Math.max(duty, 0.01), mean, rippleRatio, frequency),
      'up',
    );
  const rippled = boostPoint(
    { ...(reached.ok ? bare : lossless), inductance, synchronous: false },
    inputVoltage,
    outputVoltage,
    perPhase,
  );
  const { inductorPeak: peak, switchRms } = rippled.ok ? rippled.value : flat.value;
  const currentLimit = chosen.currentLimit ?? preferredValue('E24', limitFactor * peak, 'up');
  const taken = inputVoltage * mean;
  const zero = rightHalfPlaneZero(outputVoltage, perPhase, duty, inductance);
  const crossover = usableCrossover(zero, frequency).cautious;
  const inputRipple = (inputVoltage * duty) / (inductance * frequency);
  return success({
    parts: {
      inductance,
      currentLimit,
      saturationCurrent:
        chosen.saturationCurrent ??
        preferredValue('E12', Math.max(saturationFactor * peak, currentLimit), 'up'),
      inductorResistance:
        chosen.inductorResistance ?? preferredValue('E12', (conductionShare * taken) / mean ** 2, 'down'),
      switchResistance:
        chosen.switchResistance ??
        preferredValue(
          'E12',
          (conductionShare * taken) / (hotFactor * Math.max(switchRms, 0.1 * mean) ** 2),
          'down',
        ),
      outputCapacitance:
        chosen.outputCapacitance ??
        preferredValue('E6', capacitanceForDroop(outputCurrent, crossover, droopShare * outputVoltage), 'up'),
      outputCapacitorResistance:
        chosen.outputCapacitorResistance ??
        preferredValue('E12', (resistiveRippleShare * outputVoltage) / (peak * phases), 'down'),
      inputCapacitance:
        chosen.inputCapacitance ??
        preferredValue(
          'E6',
          Math.max(
            Math.max(inputRipple, 0.01 * mean) / (8 * phases * frequency * inputRippleShare * inputVoltage),
            stableFactor * task.stableCapacitance,
          ),
          'up',
        ),
    },
    ratings: {
      switchVoltage: standard(transistorVoltages, transistorFactor * (outputVoltage + task.rectifierDrop)),
      rectifierVoltage: standard(rectifierVoltages, transistorFactor * outputVoltage),
      capacitorVoltage: standard(capacitorVoltages, capacitorFactor * outputVoltage),
      inputCapacitorVoltage: standard(
        capacitorVoltages,
        capacitorFactor * Math.max(inputVoltage, task.highestInput),
      ),
      rectifierCurrent: standard(rectifierCurrents, rectifierFactor * perPhase),
    },
  });
}

/** The first standard value that is not below the wanted one, or the wanted one itself beyond the list. */
function standard(list: readonly number[], wanted: number): number {
  return list.find((value) => value >= wanted * (1 - 1e-9)) ?? wanted;
}
