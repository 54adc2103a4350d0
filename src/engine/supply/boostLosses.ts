import { type Outcome, success } from '../../../shared/outcome.ts';
import { type BoostParts, type BoostPoint, boostPoint } from './boost.ts';
import { type CoreCoefficients, fluxSwing, triangleCoreLoss } from './coreLoss.ts';

/** What the loss budget needs besides the power stage. Unknown figures are 0. */
export interface BoostLossParts extends BoostParts {
  /** Of the inductor at the switching frequency, Ω; 5 to 10 times the DC value if not known. */
  readonly inductorAcResistance: number;
  /** Times in which switch voltage and current overlap, s. */
  readonly turnOnTime: number;
  readonly turnOffTime: number;
  /** Energy-related output capacitance of the switch node, F. */
  readonly switchCapacitance: number;
  /** Gate charge of all switched devices together, C, and its drive voltage, V. */
  readonly gateCharge: number;
  readonly gateVoltage: number;
  /** Recovery charge of the rectifier, C; 0 for a Schottky diode. */
  readonly recoveryCharge: number;
  /** Dead times of a synchronous rectifier, s, and the drop of its body diode, V. */
  readonly deadTimeOn: number;
  readonly deadTimeOff: number;
  readonly bodyDrop: number;
  /** Series resistance of the input capacitor, Ω. */
  readonly inputCapacitorResistance: number;
  /** Controller, indicator, bleeder, W. */
  readonly fixedPower: number;
  readonly core: CoreGeometry | null;
}

export interface CoreGeometry {
  readonly coefficients: CoreCoefficients;
  readonly turns: number;
  /** m² */
  readonly area: number;
  /** m³ */
  readonly volume: number;
}

export type LossTerm =
  | 'inductorCopper'
  | 'core'
  | 'switchConduction'
  | 'switchOverlap'
  | 'switchCapacitance'
  | 'gate'
  | 'rectifier'
  | 'recovery'
  | 'deadTime'
  | 'capacitors'
  | 'fixed';

export interface BoostLosses {
  readonly point: BoostPoint;
  /** W by term. */
  readonly terms: Readonly<Record<LossTerm, number>>;
  /** W */
  readonly total: number;
  readonly efficiency: number;
  /** Mean, with all losses, A. */
  readonly inputCurrent: number;
}

/**
 * Loss budget of a step-up stage at an output voltage and current.
 *
 * Conduction from the r.m.s. currents of `boostPoint`; overlap 0.5 (Vo + VD)(Ival ton + Ipk toff) fs; output
 * capacitance 0.5 C Vo² fs; gate Qg Vdr fs; recovery Qrr Vo fs; dead time Vsd (Ival td1 + Ipk td2) fs; core by the
 * generalised Steinmetz form. Switching and core losses do not raise D (under 0.5 %). Real overlap loss is commonly
 * 20 to 50 % above such estimates: show the efficiency as a band of ±2 points.
 * Errors: those of `boostPoint`. Sources: own derivation; overlap form of application note SLUAAX9 (2025), secondary.
 */
export function boostLosses(
  parts: BoostLossParts,
  inputVoltage: number,
  outputVoltage: number,
  outputCurrent: number,
): Outcome<BoostLosses> {
  const found = boostPoint(parts, inputVoltage, outputVoltage, outputCurrent);
  if (!found.ok) return found;
  const point = found.value;
  const terms = lossTerms(parts, point);
  let total = 0;
  for (const term of Object.values(terms)) total += term;
  const output = outputVoltage * outputCurrent;
  const taken = output + total;
  return success({
    point,
    terms,
    total,
    efficiency: taken > 0 ? output / taken : 0,
    inputCurrent: taken / inputVoltage,
  });
}

function lossTerms(parts: BoostLossParts, point: BoostPoint): Record<LossTerm, number> {
  const { frequency } = parts;
  const ripple = point.inductorRipple;
  // The ripple's share of the square is what the AC resistance sees; in discontinuous conduction all but the mean.
  const alternating = Math.max(0, point.inductorRms ** 2 - point.inductorMean ** 2);
  const valley = Math.max(0, point.inductorValley);
  const peak = point.inductorPeak;
  return {
    inductorCopper:
      parts.inductorResistance * point.inductorMean ** 2 + parts.inductorAcResistance * alternating,
    core: coreTerm(parts, point, ripple),
    switchConduction: parts.switchResistance * point.switchRms ** 2,
    switchOverlap:
      0.5 * point.switchVoltage * (valley * parts.turnOnTime + peak * parts.turnOffTime) * frequency,
    switchCapacitance: 0.5 * parts.switchCapacitance * point.outputVoltage ** 2 * frequency,
    gate: parts.gateCharge * parts.gateVoltage * frequency,
    rectifier:
      parts.rectifierDrop * point.outputCurrent + parts.rectifierResistance * point.rectifierRms ** 2,
    recovery: point.inductorValley > 0 ? parts.recoveryCharge * point.outputVoltage * frequency : 0,
    deadTime: parts.bodyDrop * (valley * parts.deadTimeOn + peak * parts.deadTimeOff) * frequency,
    capacitors:
      parts.capacitorResistance * point.outputCapacitorRms ** 2 +
      parts.inputCapacitorResistance * point.inputCapacitorRms ** 2,
    fixed: parts.fixedPower,
  };
}

function coreTerm(parts: BoostLossParts, point: BoostPoint, ripple: number): number {
  if (parts.core === null) return 0;
  const { coefficients, turns, area, volume } = parts.core;
  const swing = fluxSwing(parts.inductance, ripple, turns, area);
  return (
    volume * triangleCoreLoss(coefficients, parts.frequency, swing, point.switchDuty, point.rectifierDuty)
  );
}

export interface EfficiencyPointOfSweep {
  readonly inputVoltage: number;
  readonly outputCurrent: number;
  /** null where the ratio is not reachable. */
  readonly efficiency: number | null;
  readonly inputCurrent: number | null;
}

/** Efficiency over input voltages and output currents, one entry for each pair, currents running fastest. */
export function efficiencySweep(
  parts: BoostLossParts,
  outputVoltage: number,
  inputVoltages: readonly number[],
  outputCurrents: readonly number[],
): readonly EfficiencyPointOfSweep[] {
  return inputVoltages.flatMap((inputVoltage) =>
    outputCurrents.map((outputCurrent) => {
      const found = boostLosses(parts, inputVoltage, outputVoltage, outputCurrent);
      return {
        inputVoltage,
        outputCurrent,
        efficiency: found.ok ? found.value.efficiency : null,
        inputCurrent: found.ok ? found.value.inputCurrent : null,
      };
    }),
  );
}
