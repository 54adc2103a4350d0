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

/** A bleeder takes the rail to 5 % of its voltage in three time constants. */
const timeConstants = 3;

/**
 * Bleeder across the rail: resistance R = t/(3 C) that takes it to 5 % in a time, and its heat V²/R while the rail is on.
 *
 * capacitance: F, > 0; voltage: V; time: s, > 0.
 */
export function bleederFor(
  capacitance: number,
  voltage: number,
  time: number,
): { readonly resistance: number; readonly power: number } {
  const resistance = time / (timeConstants * capacitance);
  return { resistance, power: (voltage * voltage) / resistance };
}
