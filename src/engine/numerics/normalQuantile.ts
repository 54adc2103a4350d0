const centre = {
  top: [
    -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716,
    2.506628277459239,
  ],
  bottom: [
    -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1,
  ],
} as const;

const tail = {
  top: [
    -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ],
  bottom: [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1],
} as const;

/** Where the form for the centre ends. */
const tailBegin = 0.02425;

/** The distance from the median within which nine of ten values of a normal distribution fall, in standard deviations. */
export const ninetyPercent = 1.6448536269514722;

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * x + coefficient;
  return sum;
}

function tailQuantile(share: number): number {
  const q = Math.sqrt(-2 * Math.log(share));
  return polynomial(tail.top, q) / polynomial(tail.bottom, q);
}

/**
 * Standard normal quantile: the value below which this share lies.
 *
 * @param share above 0 and below 1
 *
 * Source: P. J. Acklam's rational approximation (2003), relative error below 1.2e-9 (from memory; tested against printed
 * values).
 */
export function normalQuantile(share: number): number {
  if (share < tailBegin) return tailQuantile(share);
  if (share > 1 - tailBegin) return -tailQuantile(1 - share);
  const q = share - 0.5;
  const r = q * q;
  return (q * polynomial(centre.top, r)) / polynomial(centre.bottom, r);
}
