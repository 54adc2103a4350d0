import type { Severity } from '../../../shared/solution.ts';

/** A note stands from this DC voltage, V: live parts are guarded from there (29 CFR 1910.303). */
export const noteVoltage = 50;
/** A warning stands from this DC voltage, V: end of extra-low voltage in appliance standards (IEC 60335-1). */
export const warningVoltage = 60;
/** End of extra-low voltage in dry places, V ripple-free DC (IEC terms database). */
export const dangerVoltage = 120;

/** A ring across the source is red-hot before it is off, A. Own choice after reported injuries. */
export const ringDanger = 200;
/** Sparks and hot tools from here, A. Own choice. */
export const shortWarning = 30;

/** How a DC voltage that a hand can reach is spoken of; null below 50 V. */
export function voltageSeverity(voltage: number): Severity | null {
  if (voltage >= dangerVoltage) return 'danger';
  if (voltage >= warningVoltage) return 'warning';
  return voltage >= noteVoltage ? 'note' : null;
}

/** How the current of a short across the source is spoken of. */
export function shortSeverity(faultCurrent: number): Severity {
  if (faultCurrent >= ringDanger) return 'danger';
  return faultCurrent >= shortWarning ? 'warning' : 'caution';
}

/** Greatest power that a short can turn into heat outside the source, W: V²/(4 R). resistance > 0. */
export function greatestShortPower(openVoltage: number, sourceResistance: number): number {
  return (openVoltage * openVoltage) / (4 * sourceResistance);
}
