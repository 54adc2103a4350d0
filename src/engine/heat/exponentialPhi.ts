/**
 * The functions φ of exponential integrators: φ1 = (e^z - 1)/z, φ(n+1) = (φn - 1/n!)/z. Near 0 by their power series,
 * elsewhere by the recurrence, which then loses no more than 1e-10.
 *
 * Source: Hochbruck and Ostermann, Acta Numerica 19 (2010) (from memory).
 */
export function phi1(z: number): number {
  return Math.abs(z) < 1e-8 ? 1 + z / 2 : Math.expm1(z) / z;
}

export function phi2(z: number): number {
  if (Math.abs(z) < 0.02) return 1 / 2 + z * (1 / 6 + z * (1 / 24 + z * (1 / 120 + z / 720)));
  return (Math.expm1(z) / z - 1) / z;
}

export function phi3(z: number): number {
  if (Math.abs(z) < 0.05) return 1 / 6 + z * (1 / 24 + z * (1 / 120 + z * (1 / 720 + z / 5040)));
  return (phi2(z) - 1 / 2) / z;
}

export function phi4(z: number): number {
  if (Math.abs(z) < 0.1) return 1 / 24 + z * (1 / 120 + z * (1 / 720 + z * (1 / 5040 + z / 40320)));
  return (phi3(z) - 1 / 6) / z;
}

/** e^z - 1 and φ2 to φ4 of one argument. */
export interface PhiValues {
  expm1: number;
  second: number;
  third: number;
  fourth: number;
}

/** The functions above at one argument, with one exponential for all of them; written into `values`. */
export function phiValues(z: number, values: PhiValues): void {
  const grown = Math.expm1(z);
  const size = Math.abs(z);
  const second = size < 0.02 ? phi2(z) : (grown / z - 1) / z;
  const third = size < 0.05 ? phi3(z) : (second - 1 / 2) / z;
  values.expm1 = grown;
  values.second = second;
  values.third = third;
  values.fourth = size < 0.1 ? phi4(z) : (third - 1 / 6) / z;
}
