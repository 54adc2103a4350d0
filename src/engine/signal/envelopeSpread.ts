import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { type EnvelopeTable, envelopeTable, panelNodes } from './envelopeTable.ts';

/**
 * Other laws for the amplitude of speech with the same average-to-peak ratio, to show how far the heat depends on the law.
 *
 * 'rayleigh': Gaussian process, many talkers or heavy filtering, limited at PEP: P(A > r) = exp(-r^2/s^2).
 * 'exponential': density in proportion to exp(-k r) on [0, 1] (W. B. Davenport, 1950, for the tail).
 * 'logUniform': logarithm of the amplitude uniform down from PEP (P. T. Brady, 1965, for the levels).
 */
export type EnvelopeLaw = 'rayleigh' | 'exponential' | 'logUniform';

const nodesPerPanel = 16;
const panelEnds = [0.05, 0.15, 0.4, 0.7];
const ratioRange = [1e-3, 0.9] as const;
const largestRate = 700;
/** Below this rate the closed form loses digits to cancellation. */
const seriesRate = 0.02;

/**
 * Table of an alternative envelope law.
 *
 * @param averageToPeak average RF power over PEP during the over, 0.001 to 0.9
 * @param breaks amplitudes at which the function to be averaged has a kink
 */
export function alternativeEnvelope(
  law: EnvelopeLaw,
  averageToPeak: number,
  breaks: readonly number[] = [],
): Outcome<EnvelopeTable> {
  if (!(averageToPeak >= ratioRange[0] && averageToPeak <= ratioRange[1])) {
    return failure(
      'average-to-peak out of range',
      'The other envelope laws are worked out for average-to-peak ratios of 0.1 % to 90 %.',
      { averageToPeak },
    );
  }
  if (law === 'rayleigh') return rayleigh(averageToPeak, breaks);
  if (law === 'exponential') return exponential(averageToPeak, breaks);
  return logUniform(averageToPeak, breaks);
}

/**
 * Half-width of the 90 % band of SSB heat from the envelope law, as a share of it: 15 % from a ratio of 0.2 up, 30 %
 * from 0.1 down, a straight line over the logarithm between. Own choice, from the spread of the laws above; there is no
 * published measurement of this heat.
 *
 * @param averageToPeak above 0
 */
export function speechHeatDoubt(averageToPeak: number): number {
  const share = Math.log2(averageToPeak / 0.1);
  return 0.3 - 0.15 * Math.min(1, Math.max(0, share));
}

/** averageToPeak = q (1 - exp(-1/q)), q = s^2. */
function rayleigh(averageToPeak: number, breaks: readonly number[]): Outcome<EnvelopeTable> {
  const square = bracketedRoot((q) => -q * Math.expm1(-1 / q) - averageToPeak, 1e-4, 100);
  if (!square.ok) return square;
  const q = square.value.root;
  const density = (r: number) => ((2 * r) / q) * Math.exp((-r * r) / q);
  const nodes = panelNodes(density, 0, 1, [...panelEnds, ...breaks], nodesPerPanel);
  nodes.push([1, Math.exp(-1 / q)]);
  return success(envelopeTable(nodes));
}

/** Mean square of the density exp(-k r) on [0, 1]; above 1/3 the rate k is negative. */
function exponential(averageToPeak: number, breaks: readonly number[]): Outcome<EnvelopeTable> {
  const rate = bracketedRoot((k) => exponentialMeanSquare(k) - averageToPeak, -largestRate, largestRate, {
    tolerance: 1e-11,
  });
  if (!rate.ok) return rate;
  const k = rate.value.root;
  // Scaled so that the larger end is 1.
  const density = (r: number) => Math.exp(k > 0 ? -k * r : k * (1 - r));
  return success(
    envelopeTable(panelNodes(density, 0, 1, [...panelEnds, ...tail(k), ...breaks], nodesPerPanel)),
  );
}

/** Panel ends near the end of the range at which a steep exponential lives. */
function tail(rate: number): number[] {
  return [2, 8, 25].map((x) => (rate > 0 ? x / rate : 1 + x / rate));
}

function exponentialMeanSquare(k: number): number {
  if (Math.abs(k) < seriesRate) {
    // Series of the two integrals in k, up to k^3: 1e-9 here.
    const top = 1 / 3 - k / 4 + (k * k) / 10 - k ** 3 / 36;
    const bottom = 1 - k / 2 + (k * k) / 6 - k ** 3 / 24;
    return top / bottom;
  }
  if (k < 0) {
    // With y = 1 - r the rate is positive and the mean of (1 - y)^2 follows from the first two moments.
    const [first, second] = truncatedMoments(-k);
    return 1 - 2 * first + second;
  }
  return truncatedMoments(k)[1];
}

/** Mean and mean square of exp(-k x) on [0, 1], k > 0. */
function truncatedMoments(k: number): readonly [number, number] {
  const end = Math.exp(-k);
  const total = -Math.expm1(-k) / k;
  const first = (1 - end * (1 + k)) / (k * k);
  const second = (2 - end * (k * k + 2 * k + 2)) / (k * k * k);
  return [first / total, second / total];
}

/** averageToPeak = (1 - exp(-2 L))/(2 L), amplitude exp(-x) with x uniform on [0, L]. */
function logUniform(averageToPeak: number, breaks: readonly number[]): Outcome<EnvelopeTable> {
  const length = bracketedRoot((l) => -Math.expm1(-2 * l) / (2 * l) - averageToPeak, 1e-3, 1e3);
  if (!length.ok) return length;
  const l = length.value.root;
  const kinks = [...panelEnds, ...breaks].filter((r) => r > 0).map((r) => -Math.log(r));
  return success(
    envelopeTable(
      panelNodes(
        () => 1 / l,
        0,
        l,
        [...kinks, 5, 8],
        nodesPerPanel,
        (x) => Math.exp(-x),
      ),
    ),
  );
}
