import coreTable from '../../../reference-data/coreMaterials.json';

export type CoreMaterial = keyof typeof coreTable.materials;

/** Coefficients of the improved generalised Steinmetz form, SI: Hz, T, W/m³. */
export interface CoreCoefficients {
  readonly ki: number;
  readonly alpha: number;
  readonly beta: number;
}

/** Coefficients of a ferrite at about 25 °C without DC bias, and the range of their fit, Hz. */
export function coreMaterial(
  material: CoreMaterial,
): CoreCoefficients & { readonly from: number; readonly to: number } {
  return coreTable.materials[material];
}

/** Gamma function for x > 0.5 by Stirling's series after a shift upwards; 12 figures. Abramowitz and Stegun 6.1.40. */
function gamma(x: number): number {
  let shift = 1;
  let z = x;
  while (z < 12) {
    shift *= z;
    z += 1;
  }
  const series = 1 / (12 * z) - 1 / (360 * z ** 3) + 1 / (1260 * z ** 5) - 1 / (1680 * z ** 7);
  return Math.exp((z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series) / shift;
}

/** ∫ |cos θ|^α over a turn: 2 √π Γ((α + 1)/2)/Γ(α/2 + 1). */
function cosineIntegral(alpha: number): number {
  return (2 * Math.sqrt(Math.PI) * gamma((alpha + 1) / 2)) / gamma(alpha / 2 + 1);
}

/**
 * ki from the Steinmetz coefficients of a sine, p = k f^α B^β: ki = k/((2 π)^(α−1) 2^(β−α) ∫|cos|^α).
 *
 * Source: Venkatachalam, Sullivan, Abdallah and Tacca, Accurate prediction of ferrite core loss with nonsinusoidal
 * waveforms using only Steinmetz parameters (2002).
 */
export function generalisedCoefficient(k: number, alpha: number, beta: number): number {
  return k / ((2 * Math.PI) ** (alpha - 1) * 2 ** (beta - alpha) * cosineIntegral(alpha));
}

/** Loss density of a sine of the given peak flux density, W/m³: k f^α B^β with k from ki. */
export function sineCoreLoss(core: CoreCoefficients, frequency: number, peakFlux: number): number {
  const { ki, alpha, beta } = core;
  const k = ki * (2 * Math.PI) ** (alpha - 1) * 2 ** (beta - alpha) * cosineIntegral(alpha);
  return k * frequency ** alpha * peakFlux ** beta;
}

/**
 * Loss density of a triangular flux, W/m³: p = ki ΔB^β fs^α (D^(1−α) + D2^(1−α)).
 *
 * swing: peak to peak, T; duty, otherDuty: rising and falling share of the period. Without DC bias; a biased choke
 * loses often 1.2 to 2 times as much: one figure is all that can be shown. Zero without swing.
 * Source: Venkatachalam et al. (2002), integral over the triangle by our own derivation.
 */
export function triangleCoreLoss(
  core: CoreCoefficients,
  frequency: number,
  swing: number,
  duty: number,
  otherDuty: number,
): number {
  if (!(swing > 0) || !(duty > 0) || !(otherDuty > 0)) return 0;
  const { ki, alpha, beta } = core;
  return ki * swing ** beta * frequency ** alpha * (duty ** (1 - alpha) + otherDuty ** (1 - alpha));
}

/** Peak-to-peak flux density of a choke, T: L ΔI/(N Ae). area: m². */
export function fluxSwing(inductance: number, ripple: number, turns: number, area: number): number {
  return (inductance * ripple) / (turns * area);
}

/** Powder core by the maker's coefficients, W/m³: a Bpk^b f^c in mW/cm³, T and kHz; Bpk half the swing. */
export function powderCoreLoss(
  coefficients: { readonly a: number; readonly b: number; readonly c: number },
  frequency: number,
  swing: number,
): number {
  const { a, b, c } = coefficients;
  return 1000 * a * (swing / 2) ** b * (frequency / 1000) ** c;
}
