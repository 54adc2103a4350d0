import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { classE } from './switchingTheory.ts';

export type SwitchingClass = 'D' | 'E' | 'F';

export interface SwitchingMeasurement {
  readonly class: SwitchingClass;
  /** RF power at the drains, key down, watts. */
  readonly ratedPower: number;
  /** Rail at the drains then, volts. */
  readonly ratedRail: number;
  /** RF power at the drains over rail voltage times rail current. */
  readonly efficiency: number;
  /** Per device at 25 degC, ohms; 0 if it is not to be followed. */
  readonly onResistance: number;
  /** Rise of the on-resistance per kelvin; 0 if the efficiency was measured hot. */
  readonly onResistanceCoefficient: number;
  readonly deviceCount: number;
}

/** A switching stage: fixed load; output follows the rail, not the drive. */
export interface SwitchingStage {
  readonly class: SwitchingClass;
  readonly deviceCount: number;
  /** RF power at the drains at the rated rail with the junction at 25 degC, watts. */
  readonly ratedPower: number;
  readonly ratedRail: number;
  /** Loss in the on-resistance at 25 degC over RF power. */
  readonly conductionLoss: number;
  /** Rest of the measured loss over RF power. */
  readonly otherLoss: number;
  readonly onResistanceCoefficient: number;
}

export interface SwitchingPoint {
  /** At the drains, watts. */
  readonly rfPower: number;
  readonly dcCurrent: number;
  readonly dcPower: number;
}

/** Data sheets state the on-resistance at 25 degC, kelvin. */
const referenceTemperature = 298.15;
/** The straight-line rise is not followed below this factor (far below freezing). */
const leastResistanceFactor = 0.5;

/**
 * RMS over mean current of one device. Class E: sqrt(3/2 + (pi^2 + 4)/16). Classes D and F: a half sine, pi/2. The
 * mean is the device's share of the rail current, as in a push-pull or parallel stage; in a half bridge, where the
 * devices are in series across the rail, the on-resistance loss is four times as great (enter four times the value).
 */
export const formFactor: Readonly<Record<SwitchingClass, number>> = {
  D: Math.PI / 2,
  E: classE.switchRmsOverMean,
  F: Math.PI / 2,
};

/**
 * Splits the measured loss of a switching stage into the on-resistance part, n Ron (k Idc/n)^2 with the form factor k,
 * and the rest (capacitance, overlap, passive parts), which stays a constant fraction of the output.
 *
 * The measured efficiency is taken to hold with the on-resistance at 25 degC, or hot if the coefficient is 0. In
 * class E the on-resistance part equals 1.3652 Ron/R of the output to first order.
 *
 * @returns a reason if the on-resistance alone loses more than the efficiency leaves
 * @see F. H. Raab and N. O. Sokal, IEEE Journal of Solid-State Circuits SC-13 (1978), class E losses (from memory);
 *   the class D and F forms follow from the half-sine current
 */
export function calibrateSwitchingStage(measurement: SwitchingMeasurement): Outcome<SwitchingStage> {
  const { ratedPower, ratedRail, efficiency, onResistance, deviceCount } = measurement;
  if (!(ratedPower > 0 && ratedRail > 0 && efficiency > 0 && efficiency < 1 && deviceCount >= 1)) {
    return failure(
      'no measurement',
      'Power, rail and number of devices must be above zero, the efficiency between 0 and 100 %.',
    );
  }
  const dcCurrent = ratedPower / (efficiency * ratedRail);
  const rms = (formFactor[measurement.class] * dcCurrent) / deviceCount;
  const conduction = deviceCount * Math.max(0, onResistance) * rms * rms;
  const heat = ratedPower / efficiency - ratedPower;
  if (conduction > heat * (1 + 1e-9)) {
    return failure(
      'on-resistance loses more than measured',
      `An on-resistance of ${round(onResistance)} ohm would lose ${round(conduction)} W by itself, but the efficiency of ${round(100 * efficiency)} % leaves only ${round(heat)} W. Check both figures.`,
      { onResistance, conduction, heat },
    );
  }
  return success({
    class: measurement.class,
    deviceCount,
    ratedPower,
    ratedRail,
    conductionLoss: conduction / ratedPower,
    otherLoss: Math.max(0, heat - conduction) / ratedPower,
    onResistanceCoefficient: Math.max(0, measurement.onResistanceCoefficient),
  });
}

/**
 * The same stage matched for another power at the rated rail: on the same rail a switching stage gives another power
 * only with another load. Currents rise in proportion, so the on-resistance loss over the output does too.
 *
 * @param power RF power at the drains, watts, above 0
 */
export function rematchedStage(stage: SwitchingStage, power: number): SwitchingStage {
  const scale = power / stage.ratedPower;
  return { ...stage, ratedPower: power, conductionLoss: stage.conductionLoss * scale };
}

/**
 * Key-down point of a switching stage. The output amplitude is in proportion to the rail; a hotter device has more
 * resistance in series with the load, which lowers output and efficiency:
 *   P = P_rated (V/V_rated)^2 ((1 + x25)/(1 + x))^2, Pdc = P (1 + x + rest), x = x25 Ron(T)/Ron(25 degC).
 *
 * @param rail at the drains, volts
 * @param junctionTemperature kelvin
 * @see the same reference for class E: the output falls as if the rail were lowered by R/(R + 1.365 Ron) (from memory)
 */
export function switchingPoint(
  stage: SwitchingStage,
  { rail, junctionTemperature }: { readonly rail: number; readonly junctionTemperature: number },
): SwitchingPoint {
  const rise = stage.onResistanceCoefficient * (junctionTemperature - referenceTemperature);
  const conduction = stage.conductionLoss * Math.max(leastResistanceFactor, 1 + rise);
  const amplitude = ((rail / stage.ratedRail) * (1 + stage.conductionLoss)) / (1 + conduction);
  const rfPower = stage.ratedPower * amplitude * amplitude;
  const dcPower = rfPower * (1 + conduction + stage.otherLoss);
  return { rfPower, dcPower, dcCurrent: rail > 0 ? dcPower / rail : 0 };
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
