/** Peak voltage of a power in a matched line, V: √(2 P Z0). */
export function matchedPeakVoltage(power: number, impedance: number): number {
  return Math.sqrt(2 * power * impedance);
}

/** r.m.s. current of a power in a matched line, A: √(P/Z0). */
export function matchedCurrent(power: number, impedance: number): number {
  return Math.sqrt(power / impedance);
}

/**
 * Peak voltage at the worst place of a mismatched line, V, from the NET power into it: √(2 P Z0 s).
 *
 * Not to be mixed with `forwardPeakVoltage`. swr s >= 1.
 */
export function netPeakVoltage(netPower: number, impedance: number, swr: number): number {
  return Math.sqrt(2 * netPower * impedance * swr);
}

/** r.m.s. current at the worst place of a mismatched line from the NET power, A: √(P s/Z0). */
export function netCurrent(netPower: number, impedance: number, swr: number): number {
  return Math.sqrt((netPower * swr) / impedance);
}

/**
 * Peak voltage at the worst place of a mismatched line, V, from the FORWARD power: √(2 Pf Z0) (1 + |Γ|).
 *
 * |Γ| = (s − 1)/(s + 1); an open line is s = ∞, |Γ| = 1, twice the matched voltage.
 */
export function forwardPeakVoltage(forwardPower: number, impedance: number, swr: number): number {
  return matchedPeakVoltage(forwardPower, impedance) * (1 + reflection(swr));
}

/** r.m.s. current at the worst place of a mismatched line, A, from the FORWARD power: √(Pf/Z0) (1 + |Γ|). */
export function forwardCurrent(forwardPower: number, impedance: number, swr: number): number {
  return matchedCurrent(forwardPower, impedance) * (1 + reflection(swr));
}

/** Magnitude of the reflection coefficient at a standing-wave ratio; 1 for an open or shorted line. */
export function reflection(swr: number): number {
  if (!Number.isFinite(swr)) return 1;
  return (swr - 1) / (swr + 1);
}
