const eulerGamma = 0.5772156649015329;
/** Below this argument the power series is used, above it the integral. */
const seriesLimit = 2;
const trapezoidStep = 0.25;
/** exp(-u^2) at the last abscissa is 2e-17. */
const trapezoidSteps = 25;

/**
 * Modified Bessel function of the second kind, order 0.
 *
 * Power series up to z = 2; above, exp(-z) (2/sqrt(2z)) Int_0^inf exp(-u^2)/sqrt(1 + u^2/(2z)) du by the trapezoid
 * rule, which converges exponentially here.
 *
 * @param z greater than 0; above about 740 the result underflows to 0
 * @returns K0(z), relative error below 1e-13
 * @see Abramowitz and Stegun (1964), 9.6.13 and, with u = sqrt(2z) sinh(t/2), 9.6.24 (from memory)
 */
export function besselK0(z: number): number {
  return z <= seriesLimit ? seriesK0(z) : Math.exp(-z) * scaledIntegral(z, 0);
}

/**
 * Modified Bessel function of the second kind, order 1. Method, range and accuracy as for order 0; the integrand
 * carries the further factor 1 + u^2/z.
 *
 * @param z greater than 0
 * @see Abramowitz and Stegun (1964), 9.6.11 and 9.6.24 (from memory)
 */
export function besselK1(z: number): number {
  return z <= seriesLimit ? seriesK1(z) : Math.exp(-z) * scaledIntegral(z, 1);
}

/**
 * Modified Bessel function of the second kind, order 2: K2 = K0 + 2 K1/z.
 *
 * @param z greater than 0
 */
export function besselK2(z: number): number {
  return besselK0(z) + (2 * besselK1(z)) / z;
}

function seriesK0(z: number): number {
  const quarter = 0.25 * z * z;
  let harmonic = -Math.log(0.5 * z) - eulerGamma;
  let term = 1;
  let sum = harmonic;
  for (let k = 1; k < 30; k++) {
    term *= quarter / (k * k);
    harmonic += 1 / k;
    const part = term * harmonic;
    sum += part;
    if (Math.abs(part) < 1e-18 * Math.abs(sum)) break;
  }
  return sum;
}

function seriesK1(z: number): number {
  const quarter = 0.25 * z * z;
  const logarithm = Math.log(0.5 * z) + eulerGamma;
  let term = 0.5 * z;
  let harmonic = 0;
  let sum = 1 / z;
  for (let k = 0; k < 30; k++) {
    if (k > 0) {
      term *= quarter / (k * (k + 1));
      harmonic += 1 / k;
    }
    const part = term * (logarithm - harmonic - 0.5 / (k + 1));
    sum += part;
    if (Math.abs(part) < 1e-18 * Math.abs(sum)) break;
  }
  return sum;
}

function scaledIntegral(z: number, order: 0 | 1): number {
  let sum = 0.5;
  for (let k = 1; k <= trapezoidSteps; k++) {
    const u = k * trapezoidStep;
    const square = u * u;
    const factor = order === 0 ? 1 : 1 + square / z;
    sum += (Math.exp(-square) * factor) / Math.sqrt(1 + square / (2 * z));
  }
  return (sum * trapezoidStep * 2) / Math.sqrt(2 * z);
}
