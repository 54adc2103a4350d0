/** Parts of the zero and of the switching frequency that bound the crossover. Usual practice, from memory. */
const zeroShareCautious = 1 / 5;
const zeroShareBold = 1 / 3;
const switchingShare = 1 / 10;

/**
 * Right-half-plane zero of a step-up stage, Hz: R D'²/(2 π L) = Vo D'²/(2 π L Io).
 *
 * No control loop can be faster than a part of it. outputCurrent > 0. Source: own derivation; identical with the zero
 * of the averaged state-space model. Some notes divide by D: that is the buck-boost form.
 */
export function rightHalfPlaneZero(
  outputVoltage: number,
  outputCurrent: number,
  duty: number,
  inductance: number,
): number {
  return (outputVoltage * (1 - duty) ** 2) / (2 * Math.PI * inductance * outputCurrent);
}

/** Resonance of the power stage, Hz: D'/(2 π √(L C)). */
export function stageResonance(duty: number, inductance: number, capacitance: number): number {
  return (1 - duty) / (2 * Math.PI * Math.sqrt(inductance * capacitance));
}

/** Cautious and boldest usable crossover of the voltage loop, Hz: zero/5 and zero/3, never above a tenth of fs. */
export function usableCrossover(
  zero: number,
  frequency: number,
): { readonly cautious: number; readonly bold: number } {
  const most = switchingShare * frequency;
  return { cautious: Math.min(zeroShareCautious * zero, most), bold: Math.min(zeroShareBold * zero, most) };
}

/** Factor of the droop formula: 0.70 for 45 to 60° of phase margin, 0.75 at 75° and above, straight between. */
export function droopFactor(phaseMargin: number): number {
  const degrees = (phaseMargin * 180) / Math.PI;
  if (degrees <= 60) return 0.7;
  if (degrees >= 75) return 0.75;
  return 0.7 + (0.05 * (degrees - 60)) / 15;
}

/**
 * Dip of the rail after a load step, V: k ΔI/(2 π fc C) + esr ΔI.
 *
 * fc: crossover, Hz; phaseMargin: rad. For a loop of proportional-integral type without the right-half-plane zero: on
 * the hopeful side. Source: own computation.
 */
export function loadStepDroop(
  step: number,
  crossover: number,
  capacitance: number,
  capacitorResistance: number,
  phaseMargin = Math.PI / 3,
): number {
  return (
    (droopFactor(phaseMargin) * step) / (2 * Math.PI * crossover * capacitance) + capacitorResistance * step
  );
}

/** Output capacitance that keeps the dip within a voltage, F, without the part of the series resistance. */
export function capacitanceForDroop(
  step: number,
  crossover: number,
  droop: number,
  phaseMargin = Math.PI / 3,
): number {
  return (droopFactor(phaseMargin) * step) / (2 * Math.PI * crossover * droop);
}

/** Capacitance that would average a burst of a given length, F: (Ipk − Imean) t/ΔV. For speech it is out of reach. */
export function capacitanceForAveraging(peak: number, mean: number, time: number, droop: number): number {
  return ((peak - mean) * time) / droop;
}

/** Loss of peak power of a voltage-limited stage when the rail dips by a share, dB: 20 lg(1 − share). */
export function peakPowerLoss(share: number): number {
  return 20 * Math.log10(Math.max(1e-6, 1 - share));
}
