/**
 * Ideal relations of the switching classes and the separate loss terms of class D.
 */

const pi2 = Math.PI * Math.PI;

/**
 * Class E with 50 % on-time, an infinite choke and the switch closing at zero voltage and zero slope.
 *
 * Derived: the switch current is Idc (1 + a sin(wt + psi)) while on, with tan psi = -2/pi and
 * a = sqrt(pi^2 + 4)/2.
 *
 * @see N. O. Sokal and A. D. Sokal, IEEE Journal of Solid-State Circuits SC-10 (1975); F. H. Raab, IEEE Transactions on
 *   Circuits and Systems CAS-24 (1977) (from memory); 3.56, 0.5768 and 0.1836 are the printed values
 */
export const classE = {
  /** P R/Vdd^2 = 8/(pi^2 + 4). */
  power: 8 / (pi2 + 4),
  /** Peak drain voltage over the rail: 2 pi atan(2/pi). */
  peakVoltage: 2 * Math.PI * Math.atan(2 / Math.PI),
  /** Peak switch current over the mean: 1 + sqrt(pi^2 + 4)/2. */
  peakCurrent: 1 + 0.5 * Math.sqrt(pi2 + 4),
  /** Shunt capacitance: w C1 R = 8/(pi (pi^2 + 4)). */
  shuntSusceptance: 8 / (Math.PI * (pi2 + 4)),
  /** DC resistance Vdd/Idc over the load: (pi^2 + 4)/8. */
  dcResistance: (pi2 + 4) / 8,
  /** RMS over mean current of the switch: sqrt(3/2 + (pi^2 + 4)/16). */
  switchRmsOverMean: Math.sqrt(1.5 + (pi2 + 4) / 16),
  /** On-resistance loss over output for Ron/R = 1, to first order: 1.3652. */
  conductionFactor: (1.5 + (pi2 + 4) / 16) / ((pi2 + 4) / 8),
} as const;

/** Class E efficiency with on-resistance alone: 1/(1 + 1.3652 Ron/R), first order in Ron/R. */
export function classEEfficiency(onResistance: number, load: number): number {
  return 1 / (1 + (classE.conductionFactor * onResistance) / load);
}

export interface HalfBridge {
  readonly rail: number;
  /** Series-resonant load, ohms. */
  readonly load: number;
  /** Of each device, ohms. */
  readonly onResistance: number;
  /** Of each device, farads. */
  readonly outputCapacitance: number;
  /** Hertz. */
  readonly frequency: number;
  /** Time of one transition during which voltage and current overlap, seconds; 0 if the transitions are fast. */
  readonly overlapTime?: number;
}

export interface HalfBridgePowers {
  readonly rfPower: number;
  readonly conductionLoss: number;
  readonly capacitanceLoss: number;
  readonly overlapLoss: number;
  readonly efficiency: number;
}

/**
 * Class D half bridge, voltage switching: I = (2/pi) Vdd/(R + Ron), output I^2 R/2, conduction loss I^2 Ron/2,
 * capacitance loss 2 Coss Vdd^2 f (two hard transitions a cycle of both output capacitances), overlap loss
 * Vdd I t f/6. Derived; the load current is taken as a sine.
 */
export function classDHalfBridge(bridge: HalfBridge): HalfBridgePowers {
  const { rail, load, onResistance, outputCapacitance, frequency } = bridge;
  const current = ((2 / Math.PI) * rail) / (load + onResistance);
  const rfPower = 0.5 * current * current * load;
  const conductionLoss = 0.5 * current * current * onResistance;
  const capacitanceLoss = 2 * outputCapacitance * rail * rail * frequency;
  const overlapLoss = (rail * current * (bridge.overlapTime ?? 0) * frequency) / 6;
  const input = rfPower + conductionLoss + capacitanceLoss + overlapLoss;
  return { rfPower, conductionLoss, capacitanceLoss, overlapLoss, efficiency: rfPower / input };
}

/** Output of an ideal class D push-pull stage with transformer: 8 Vdd^2/(pi^2 R'), R' the load across one half-primary. */
export function classDPushPullPower(rail: number, halfPrimaryLoad: number): number {
  return (8 * rail * rail) / (pi2 * halfPrimaryLoad);
}

export type VoltageHarmonics = 'fundamental' | 'to third' | 'to fifth' | 'all';
export type CurrentHarmonics = 'fundamental' | 'to second' | 'to fourth' | 'all';

/** Greatest fundamental, over the mean, of a voltage that never goes negative, made of odd harmonics. */
const voltageFactor: Readonly<Record<VoltageHarmonics, number>> = {
  fundamental: 1,
  'to third': 2 / Math.sqrt(3),
  'to fifth': (1 + Math.SQRT2) / 2,
  all: 4 / Math.PI,
};

/** Greatest fundamental, over the mean, of a current that never goes negative, made of even harmonics. */
const currentFactor: Readonly<Record<CurrentHarmonics, number>> = {
  fundamental: 1,
  'to second': Math.SQRT2,
  'to fourth': 1.5,
  all: Math.PI / 2,
};

/**
 * Greatest efficiency of class F with a limited number of harmonics: the product of the two factors over 2.
 *
 * @see F. H. Raab, Maximum efficiency and output of class-F power amplifiers, IEEE Transactions on Microwave Theory and
 *   Techniques 49 (2001)
 */
export function classFEfficiency(voltage: VoltageHarmonics, current: CurrentHarmonics): number {
  return 0.5 * voltageFactor[voltage] * currentFactor[current];
}

/** Class F with a maximally flat third-harmonic voltage and a half-sine current: (9/8)(pi/4) = 88.4 %. */
export const classFMaximallyFlat = (9 / 8) * (Math.PI / 4);
