import { gaussLegendre } from '../numerics/gaussLegendre.ts';

/**
 * Distribution of a transmitter's output amplitude while it is on the air, as nodes and weights: the mean of any
 * function g of the amplitude r is the sum of weight times g(amplitude).
 */
export interface EnvelopeTable {
  /** Output amplitude over the amplitude at PEP, 0 to 1, rising. */
  readonly amplitude: Float64Array;
  /** Share of the time at that amplitude; the sum is 1. */
  readonly weight: Float64Array;
  /** Mean of r squared: average RF power over PEP. */
  readonly averageToPeak: number;
  /** Mean of r. */
  readonly meanAmplitude: number;
  /** Shape c of the speech law; null for other envelopes. */
  readonly shape: number | null;
}

/**
 * Mean of a function of the amplitude over an envelope.
 *
 * @param g any function of the amplitude r in [0, 1]
 */
export function meanOver(table: EnvelopeTable, g: (amplitude: number) => number): number {
  const { amplitude, weight } = table;
  let sum = 0;
  for (let i = 0; i < amplitude.length; i++) sum += weight[i]! * g(amplitude[i]!);
  return sum;
}

/** Makes a table of nodes and unscaled weights: nodes rising, weights scaled to the sum 1, moments filled in. */
export function envelopeTable(
  nodes: readonly (readonly [amplitude: number, weight: number])[],
  shape: number | null = null,
): EnvelopeTable {
  const sorted = nodes.filter(([, weight]) => weight > 0).sort((a, b) => a[0] - b[0]);
  const amplitude = Float64Array.from(sorted, ([r]) => r);
  const weight = Float64Array.from(sorted, ([, w]) => w);
  const total = weight.reduce((sum, w) => sum + w, 0);
  for (let i = 0; i < weight.length; i++) weight[i]! /= total;
  let averageToPeak = 0;
  let meanAmplitude = 0;
  for (let i = 0; i < weight.length; i++) {
    meanAmplitude += weight[i]! * amplitude[i]!;
    averageToPeak += weight[i]! * amplitude[i]! * amplitude[i]!;
  }
  return { amplitude, weight, averageToPeak, meanAmplitude, shape };
}

/**
 * Nodes of a density on [low, high] by Gauss-Legendre panels.
 *
 * @param density any smooth density, of the variable integrated over
 * @param breaks inner ends of the panels, in any order; those outside the range are left out
 * @param count nodes per panel
 * @param amplitudeOf amplitude r belonging to the variable integrated over
 */
export function panelNodes(
  density: (x: number) => number,
  low: number,
  high: number,
  breaks: readonly number[],
  count: number,
  amplitudeOf: (x: number) => number = (x) => x,
): [number, number][] {
  const inner = breaks.filter((x) => x > low && x < high).sort((a, b) => a - b);
  const ends = [low, ...inner, high];
  const { node, weight } = gaussLegendre(count);
  const nodes: [number, number][] = [];
  for (let panel = 1; panel < ends.length; panel++) {
    const half = 0.5 * (ends[panel]! - ends[panel - 1]!);
    const middle = 0.5 * (ends[panel]! + ends[panel - 1]!);
    if (half <= 0) continue;
    for (let i = 0; i < count; i++) {
      const x = middle + half * node[i]!;
      nodes.push([amplitudeOf(x), half * weight[i]! * density(x)]);
    }
  }
  return nodes;
}
