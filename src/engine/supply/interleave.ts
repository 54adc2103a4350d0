/**
 * Input ripple of N interleaved equal phases over that of one phase.
 *
 * δ(1 − δ)/(N D D'), δ = N D − ⌊N D⌋; zero where N D is whole; 1 for one phase. duty: 0 < D < 1.
 * Equal inductors and currents; 5 % of mismatch leaves about 5 % of one phase's ripple at fs. Own derivation, exact.
 */
export function interleavedRippleShare(phases: number, duty: number): number {
  if (!(duty > 0) || !(duty < 1)) return 0;
  const rest = fraction(phases * duty);
  return (rest * (1 - rest)) / (phases * duty * (1 - duty));
}

/**
 * r.m.s. current of the output capacitor with N interleaved phases, A: Io/(N D') √(δ(1 − δ)), δ the fraction of N D'.
 *
 * Flat-topped current pulses, ripple neglected. outputCurrent: A.
 */
export function interleavedCapacitorRms(phases: number, duty: number, outputCurrent: number): number {
  const complement = 1 - duty;
  if (!(complement > 0)) return 0;
  const rest = fraction(phases * complement);
  return (outputCurrent / (phases * complement)) * Math.sqrt(rest * (1 - rest));
}

/** Fraction of a number, with whole numbers in floating disguise taken as whole. */
function fraction(value: number): number {
  const rest = value - Math.floor(value);
  return rest < 1e-12 || rest > 1 - 1e-12 ? 0 : rest;
}
