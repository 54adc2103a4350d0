import { failure, type Outcome, success } from '../../../shared/outcome.ts';

/** Parts of the power stage of a step-up converter. */
export interface BoostParts {
  /** H */
  readonly inductance: number;
  /** DC resistance of the inductor, Ω. */
  readonly inductorResistance: number;
  /** Of the low-side switch, Ω. */
  readonly switchResistance: number;
  /** Of the rectifier: threshold of a diode, V; 0 for a synchronous rectifier. */
  readonly rectifierDrop: number;
  /** Slope resistance of a diode, or on-resistance of a synchronous rectifier, Ω. */
  readonly rectifierResistance: number;
  /** A synchronous rectifier lets the current reverse: the stage never runs discontinuously. */
  readonly synchronous: boolean;
  /** Output capacitor, F. */
  readonly capacitance: number;
  /** Its equivalent series resistance, Ω. */
  readonly capacitorResistance: number;
  /** Hz */
  readonly frequency: number;
}

export type ConductionMode = 'continuous' | 'discontinuous';

/** Duty, currents and stresses of a step-up stage at one load. Currents A, r.m.s. where said. */
export interface BoostPoint {
  readonly mode: ConductionMode;
  readonly inputVoltage: number;
  readonly outputVoltage: number;
  readonly outputCurrent: number;
  /** Switch duty cycle D. */
  readonly switchDuty: number;
  /** Share of the period in which the rectifier conducts: 1 − D in continuous conduction. */
  readonly rectifierDuty: number;
  readonly inductorMean: number;
  /** Peak to peak. */
  readonly inductorRipple: number;
  readonly inductorPeak: number;
  readonly inductorValley: number;
  readonly inductorRms: number;
  readonly switchRms: number;
  readonly rectifierRms: number;
  readonly inputCapacitorRms: number;
  readonly outputCapacitorRms: number;
  /** Peak to peak, V. */
  readonly outputRipple: number;
  /** Across the switch while it blocks, without ringing, V. */
  readonly switchVoltage: number;
}

/**
 * Switch duty cycle in continuous conduction with the losses of the parts.
 *
 * (Vo + VD − Io esr) D'² + (Io (rD − Ron + esr) − Vg) D' + Io (rL + Ron) = 0, D = 1 − D', the larger root of D'.
 * Lossless limit D = 1 − Vg/(Vo + VD). Voltages V, currents A.
 * Errors: `railBelowInput` when the output is not above the input; `ratioNotReachable` when no real root is left.
 * Source: volt-second and charge balance; averaged form as in Erickson and Maksimović, Fundamentals of Power
 * Electronics, chapter 3; the term of the capacitor is our own and was checked by simulation (0.02 %).
 */
export function continuousDuty(
  parts: BoostParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
): Outcome<number> {
  const { inductorResistance, switchResistance, rectifierDrop, rectifierResistance, capacitorResistance } =
    parts;
  if (outputVoltage + rectifierDrop <= inputVoltage) return notAboveInput(inputVoltage, outputVoltage);
  const a = outputVoltage + rectifierDrop - outputCurrent * capacitorResistance;
  const b = outputCurrent * (rectifierResistance - switchResistance + capacitorResistance) - inputVoltage;
  const c = outputCurrent * (inductorResistance + switchResistance);
  const discriminant = b * b - 4 * a * c;
  if (a <= 0 || discriminant < 0) return notReachable(inputVoltage, outputVoltage, outputCurrent);
  const complement = (-b + Math.sqrt(discriminant)) / (2 * a);
  if (complement <= 0) return notReachable(inputVoltage, outputVoltage, outputCurrent);
  return success(Math.max(0, 1 - complement));
}

/**
 * Output voltage of a stage at a duty cycle with a resistor as load, continuous conduction, V.
 *
 * Vo = D' R (Vg − D' VD)/(D'² R + rL + D Ron + D' rD + D D' (esr ∥ R)). load: Ω. Source as `continuousDuty`.
 */
export function continuousOutput(
  parts: BoostParts,
  inputVoltage: number,
  duty: number,
  load: number,
): number {
  const complement = 1 - duty;
  const esr = parts.capacitorResistance;
  const parallel = esr > 0 ? (esr * load) / (esr + load) : 0;
  const series =
    parts.inductorResistance +
    duty * parts.switchResistance +
    complement * parts.rectifierResistance +
    duty * complement * parallel;
  return (
    (complement * load * (inputVoltage - complement * parts.rectifierDrop)) /
    (complement * complement * load + series)
  );
}

/**
 * Operating point of a step-up stage at an output voltage and current.
 *
 * Continuous conduction where the valley of the inductor current stays above zero, or always with a synchronous
 * rectifier; otherwise discontinuous conduction with the diode drop and without the resistances (0.5 % in the output).
 * Straight-line inductor current, steady voltages. Errors: those of `continuousDuty`.
 * Sources: own derivation, checked against a simulation of the switched circuit within 0.3 %; Erickson and Maksimović,
 * Fundamentals of Power Electronics, chapters 3 and 5.
 */
export function boostPoint(
  parts: BoostParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
): Outcome<BoostPoint> {
  const duty = continuousDuty(parts, inputVoltage, outputVoltage, outputCurrent);
  if (!duty.ok) return duty;
  const continuous = continuousPoint(parts, inputVoltage, outputVoltage, outputCurrent, duty.value);
  if (parts.synchronous || continuous.inductorValley >= 0) return success(continuous);
  const discontinuous = discontinuousPoint(parts, inputVoltage, outputVoltage, outputCurrent);
  // With the losses in, the boundary lies a little aside of the lossless one: no room left to be discontinuous in.
  if (discontinuous.switchDuty + discontinuous.rectifierDuty > 1) return success(continuous);
  return success(discontinuous);
}

function continuousPoint(
  parts: BoostParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
  duty: number,
): BoostPoint {
  const complement = 1 - duty;
  const mean = outputCurrent / complement;
  const across = inputVoltage - mean * (parts.inductorResistance + parts.switchResistance);
  const ripple = (Math.max(0, across) * duty) / (parts.inductance * parts.frequency);
  const square = mean * mean + (ripple * ripple) / 12;
  const peak = mean + ripple / 2;
  return {
    mode: 'continuous',
    inputVoltage,
    outputVoltage,
    outputCurrent,
    switchDuty: duty,
    rectifierDuty: complement,
    inductorMean: mean,
    inductorRipple: ripple,
    inductorPeak: peak,
    inductorValley: mean - ripple / 2,
    inductorRms: Math.sqrt(square),
    switchRms: Math.sqrt(duty * square),
    rectifierRms: Math.sqrt(complement * square),
    inputCapacitorRms: ripple / Math.sqrt(12),
    outputCapacitorRms: Math.sqrt(Math.max(0, complement * square - outputCurrent * outputCurrent)),
    outputRipple: outputRipple(parts, outputCurrent, duty, complement, peak, ripple),
    switchVoltage: outputVoltage + parts.rectifierDrop,
  };
}

function discontinuousPoint(
  parts: BoostParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
): BoostPoint {
  const { inductance, frequency, rectifierDrop } = parts;
  const above = outputVoltage + rectifierDrop - inputVoltage;
  const duty = Math.sqrt(2 * inductance * frequency * outputCurrent * above) / inputVoltage;
  const rectifierDuty = (inputVoltage * duty) / above;
  const peak = (inputVoltage * duty) / (inductance * frequency);
  const mean = (peak * (duty + rectifierDuty)) / 2;
  const rms = peak * Math.sqrt((duty + rectifierDuty) / 3);
  const rectifierRms = peak * Math.sqrt(rectifierDuty / 3);
  return {
    mode: 'discontinuous',
    inputVoltage,
    outputVoltage,
    outputCurrent,
    switchDuty: duty,
    rectifierDuty,
    inductorMean: mean,
    inductorRipple: peak,
    inductorPeak: peak,
    inductorValley: 0,
    inductorRms: rms,
    switchRms: peak * Math.sqrt(duty / 3),
    rectifierRms,
    inputCapacitorRms: Math.sqrt(Math.max(0, rms * rms - mean * mean)),
    outputCapacitorRms: Math.sqrt(Math.max(0, rectifierRms * rectifierRms - outputCurrent * outputCurrent)),
    outputRipple: outputRipple(parts, outputCurrent, duty, rectifierDuty, peak, peak),
    switchVoltage: outputVoltage + rectifierDrop,
  };
}

/**
 * Output ripple of a straight-line inductor current, V peak to peak, exact for capacitor with series resistance.
 *
 * While the rectifier conducts the capacitor takes i0 − m2 t, i0 = Ipk − Io, m2 = ripple/(D2 Ts); otherwise −Io. The
 * output is greatest at an end of an interval or where esr and capacitance balance, t* = i0/m2 − esr C.
 */
function outputRipple(
  parts: BoostParts,
  outputCurrent: number,
  duty: number,
  rectifierDuty: number,
  peak: number,
  ripple: number,
): number {
  const { capacitance, capacitorResistance: esr, frequency } = parts;
  if (outputCurrent <= 0) return 0;
  const period = 1 / frequency;
  const conducting = rectifierDuty * period;
  const start = peak - outputCurrent;
  const slope = conducting > 0 ? ripple / conducting : 0;
  const along = (time: number) =>
    (start * time - (slope * time * time) / 2) / capacitance + esr * (start - slope * time);
  const idle = Math.max(0, 1 - duty - rectifierDuty) * period;
  const charged = (start * conducting - (slope * conducting * conducting) / 2) / capacitance;
  const beforeOn = charged - (outputCurrent * idle) / capacitance;
  const values = [
    along(0),
    along(conducting),
    charged - esr * outputCurrent,
    beforeOn - esr * outputCurrent,
    beforeOn - (outputCurrent * duty * period) / capacitance - esr * outputCurrent,
  ];
  const turn = slope > 0 ? start / slope - esr * capacitance : -1;
  if (turn > 0 && turn < conducting) values.push(along(turn));
  return Math.max(...values) - Math.min(...values);
}

/** Load current at the edge of discontinuous conduction without losses, A: Vo D D'²/(2 L fs). */
export function boundaryCurrent(parts: BoostParts, inputVoltage: number, outputVoltage: number): number {
  const complement = Math.min(1, inputVoltage / outputVoltage);
  return (
    (outputVoltage * (1 - complement) * complement * complement) / (2 * parts.inductance * parts.frequency)
  );
}

/** Inductance at that edge for a resistor load, H: D D'² R/(2 fs). Some texts print it without the square. */
export function criticalInductance(duty: number, load: number, frequency: number): number {
  return (duty * (1 - duty) ** 2 * load) / (2 * frequency);
}

/** Lossless ratio Vo/Vg in discontinuous conduction with a resistor load: (1 + √(1 + 4 D²/K))/2, K = 2 L fs/R. */
export function discontinuousRatio(
  duty: number,
  inductance: number,
  frequency: number,
  load: number,
): number {
  return (1 + Math.sqrt(1 + (4 * duty * duty * load) / (2 * inductance * frequency))) / 2;
}

/** Inductance for a ripple ratio r = ripple/mean, H: Vg D/(r IL fs). Usual r 0.2 to 0.4, common practice. */
export function inductanceForRipple(
  inputVoltage: number,
  duty: number,
  meanCurrent: number,
  ratio: number,
  frequency: number,
): number {
  return (inputVoltage * duty) / (ratio * meanCurrent * frequency);
}

/**
 * Greatest ratio Vo/Vg when only the inductor has resistance, and the duty at which it stands.
 *
 * M = 1/(2 √(rL/R)) at D' = √(rL/R), efficiency there 50 %. share: rL/R, 0 < share < 1.
 */
export function greatestRatio(share: number): { readonly ratio: number; readonly switchDuty: number } {
  const complement = Math.sqrt(share);
  return { ratio: 1 / (2 * complement), switchDuty: 1 - complement };
}

/** Room between the peak current and the saturation of the inductor (hot): Isat/Ipk − 1; own choice, at least 20 %. */
export function saturationMargin(saturationCurrent: number, peakCurrent: number): number {
  return peakCurrent > 0 ? saturationCurrent / peakCurrent - 1 : Number.MAX_VALUE;
}

function notAboveInput(inputVoltage: number, outputVoltage: number): Outcome<never> {
  return failure(
    'railBelowInput',
    `A step-up converter cannot hold ${outputVoltage.toPrecision(3)} V from ${inputVoltage.toPrecision(3)} V: it passes the input on.`,
    { inputVoltage, outputVoltage },
  );
}

function notReachable(inputVoltage: number, outputVoltage: number, outputCurrent: number): Outcome<never> {
  return failure(
    'ratioNotReachable',
    `From ${inputVoltage.toPrecision(3)} V these parts cannot reach ${outputVoltage.toPrecision(3)} V at ${outputCurrent.toPrecision(3)} A: their resistances eat the step up.`,
    { inputVoltage, outputVoltage, outputCurrent },
  );
}
