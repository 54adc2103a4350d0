import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { formFactor, type SwitchingClass } from './switchingStage.ts';

export interface SwitchingParts {
  readonly class: SwitchingClass;
  /** RF power at the drains, key down, watts. */
  readonly power: number;
  readonly rail: number;
  readonly deviceCount: number;
  /** Per device, ohms. */
  readonly onResistance: number;
  /** Per device, farads. */
  readonly outputCapacitance: number;
  /** Hertz. */
  readonly frequency: number;
  /** Coils, transitions and harmonics, over the output. */
  readonly otherLoss: number;
}

export interface SwitchingEstimate {
  readonly efficiency: number;
  /** Loss in the on-resistance, watts. */
  readonly conductionLoss: number;
  /** Loss of the output capacitances, watts. */
  readonly capacitanceLoss: number;
}

/** No stage is without loss; an estimate of nothing but zeros ends here. */
const greatestEfficiency = 0.995;

/**
 * Efficiency of a switching stage from its loss terms: eta = 1/(1 + x + c + rest).
 *
 * On-resistance: x P = n Ron (k Idc/n)^2 with Idc = P/(eta Vdd) and the form factor k of the class (class E: 1.365 Ron/R to
 * first order), which makes a quadratic in 1/eta. Capacitance: class D push-pull switches each drain between zero and
 * twice the rail, n Coss (2 Vdd)^2 f/2; classes E and F tune it out. The rest is a share of the output, 2 to 6 %.
 * Good to 5 points.
 *
 * @returns a reason if the on-resistance cannot carry this power
 */
export function switchingEstimate(parts: SwitchingParts): Outcome<SwitchingEstimate> {
  const { power, rail, deviceCount, onResistance } = parts;
  const capacitanceLoss =
    parts.class === 'D' ? 2 * deviceCount * parts.outputCapacitance * rail * rail * parts.frequency : 0;
  const rest = 1 + capacitanceLoss / power + parts.otherLoss;
  const perInputSquare = (onResistance * formFactor[parts.class] ** 2 * power) / (deviceCount * rail * rail);
  const discriminant = 1 - 4 * perInputSquare * rest;
  if (!(discriminant > 0)) {
    return failure(
      'power not reachable',
      `The on-resistance is too high for ${Number(power.toPrecision(3))} W from ${Number(rail.toPrecision(3))} V.`,
      { power, rail, onResistance },
    );
  }
  // The smaller root, written so that it does not cancel where the on-resistance is small.
  const inputOverOutput = (2 * rest) / (1 + Math.sqrt(discriminant));
  const efficiency = Math.min(greatestEfficiency, 1 / inputOverOutput);
  return success({
    efficiency,
    conductionLoss: perInputSquare * inputOverOutput * inputOverOutput * power,
    capacitanceLoss,
  });
}
