import type { Severity } from '../../../shared/solution.ts';

/** From this energy: discharge before work, no tool across it, J. Own choice. */
export const dischargeFrom = 1;
/** From this energy a bleeder belongs across it, J. Own choice. */
export const bleederFrom = 100;

/** Energy of a charged capacitor, J: C V²/2. */
export function storedEnergy(capacitance: number, voltage: number): number {
  return (capacitance * voltage * voltage) / 2;
}

/** How stored energy is spoken of; null below 1 J. */
export function storedEnergySeverity(energy: number): Severity | null {
  if (energy >= bleederFrom) return 'warning';
  return energy >= dischargeFrom ? 'caution' : null;
}

/**
 * Bleeder that takes a capacitor from one voltage to another in a time, Ω: R = t/(C ln(V/Vend)).
 *
 * To 5 % of the voltage it takes 3 R C. Zero when the voltage is not above the end voltage.
 */
export function bleederResistance(
  capacitance: number,
  voltage: number,
  endVoltage: number,
  time: number,
): number {
  if (!(voltage > endVoltage) || !(endVoltage > 0) || !(capacitance > 0)) return 0;
  return time / (capacitance * Math.log(voltage / endVoltage));
}
