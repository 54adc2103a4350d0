/** Permeability of free space, H/m. */
const vacuumPermeability = 4e-7 * Math.PI;

/** Greatest share of the converter's input resistance that the filter may show. Own choice. */
export const impedanceShare = 0.3;

/**
 * Inductance of a pair of wires, there and back, H per metre of pair: (μ0/π)(acosh(s/d) + 1/4).
 *
 * spacing of the axes and diameter of the copper, m; touching wires have spacing = outside diameter >= diameter.
 */
export function pairInductance(spacing: number, diameter: number): number {
  return (vacuumPermeability / Math.PI) * (Math.acosh(Math.max(1, spacing / diameter)) + 0.25);
}

/** Input resistance of a converter inside its control bandwidth, Ω: −V²/P, negative. power > 0. */
export function negativeResistance(voltage: number, power: number): number {
  return -(voltage * voltage) / power;
}

export interface FilterParts {
  /** Cable and choke, H. */
  readonly inductance: number;
  /** In series with it, source included, Ω. */
  readonly resistance: number;
  /** Input capacitor, F. */
  readonly capacitance: number;
  /** Its series resistance, Ω. */
  readonly capacitorResistance: number;
}

/**
 * Least input capacitance for a stable supply, F: L P/(r V²), ideal capacitor; null when r >= V²/P, where no capacitor
 * helps. Own derivation; agrees with the eigenvalues of the circuit.
 */
export function leastInputCapacitance(
  inductance: number,
  resistance: number,
  voltage: number,
  power: number,
): number | null {
  const negative = (voltage * voltage) / power;
  if (!(resistance > 0) || resistance >= negative) return null;
  return inductance / (resistance * negative);
}

/**
 * Greatest real part of the eigenvalues of L, r and C with series resistance feeding a constant-power load, 1/s:
 * negative when stable.
 *
 * L di/dt = −r i − v, C dvC/dt = i + v/R with v = (vC + esr i)/(1 − esr/R), R = V²/P.
 */
export function filterDamping(parts: FilterParts, voltage: number, power: number): number {
  const { inductance, resistance, capacitance, capacitorResistance: esr } = parts;
  const negative = (voltage * voltage) / power;
  const scale = 1 / (1 - esr / negative);
  const a11 = -(resistance + esr * scale) / inductance;
  const a12 = -scale / inductance;
  const a21 = (1 + (esr * scale) / negative) / capacitance;
  const a22 = scale / negative / capacitance;
  const half = (a11 + a22) / 2;
  const discriminant = half * half - (a11 * a22 - a12 * a21);
  return discriminant > 0 ? half + Math.sqrt(discriminant) : half;
}

export function isFilterStable(parts: FilterParts, voltage: number, power: number): boolean {
  return filterDamping(parts, voltage, power) < 0;
}

export interface DampingBranch {
  /** Of the capacitor in the branch, F. */
  readonly capacitance: number;
  /** Ω */
  readonly resistance: number;
  /** Greatest output impedance of the damped filter, Ω. */
  readonly peakImpedance: number;
}

/**
 * Best resistor for a damping branch Rd + n C across the filter capacitor, and the peak impedance left.
 *
 * Rd = R0 √((2 + n)(4 + 3 n)/(2 n² (4 + n))), |Z|max = R0 √(2 (2 + n))/n, R0 = √(L/C).
 * Source: Erickson and Maksimović, Fundamentals of Power Electronics, chapter 10, from memory; a numeric sweep agrees.
 */
export function dampingBranch(inductance: number, capacitance: number, ratio: number): DampingBranch {
  const characteristic = Math.sqrt(inductance / capacitance);
  const shape = ((2 + ratio) * (4 + 3 * ratio)) / (2 * ratio * ratio * (4 + ratio));
  return {
    capacitance: ratio * capacitance,
    resistance: characteristic * Math.sqrt(shape),
    peakImpedance: (characteristic * Math.sqrt(2 * (2 + ratio))) / ratio,
  };
}

/**
 * Whether the filter's peak impedance stays within 0.3 of the converter's input resistance at all frequencies.
 *
 * Sufficient and cautious (Middlebrook 1976). peakImpedance: Ω.
 */
export function impedanceFits(peakImpedance: number, voltage: number, power: number): boolean {
  return peakImpedance <= (impedanceShare * voltage * voltage) / power;
}
