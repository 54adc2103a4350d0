/** Smallest and largest tabulated rise, K. */
export const lowestRise = 0.05;
export const highestRise = 400;
/** Nodes beyond either end, so that the slopes inside are centred. */
export const margin = 2;

/**
 * The abscissa x = rise^(1/4): laminar conductance is linear in it, and two square roots are quicker than a logarithm.
 */
export function abscissa(rise: number): number {
  return Math.sqrt(Math.sqrt(rise));
}
export const lowestAbscissa = abscissa(lowestRise);
export const abscissaSpan = abscissa(highestRise) - lowestAbscissa;

/** Conductance G = Q/rise at even nodes of the abscissa, margins included, and its slope per node step. */
export interface RiseNodes {
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/**
 * Tabulates one smooth heat law.
 *
 * @param law heat at a positive rise, W
 * @param nodeCount nodes from the lowest to the highest rise, without the margins
 */
export function tabulateNodes(law: (rise: number) => number, nodeCount: number): RiseNodes {
  const step = abscissaSpan / (nodeCount - 1);
  const values = new Float64Array(nodeCount + 2 * margin);
  for (let i = 0; i < values.length; i++) {
    const rise = (lowestAbscissa + (i - margin) * step) ** 4;
    values[i] = law(rise) / rise;
  }
  return { values, slopes: nodeSlopes(values) };
}

/** Fourth-order centred slopes of a smooth function on even nodes, per step; the margin's own slopes are not used. */
function nodeSlopes(values: Float64Array): Float64Array {
  const slopes = new Float64Array(values.length);
  for (let i = margin; i < values.length - margin; i++) {
    slopes[i] = (values[i - 2]! - 8 * values[i - 1]! + 8 * values[i + 1]! - values[i + 2]!) / 12;
  }
  return slopes;
}

/** Laws closer than this to the smallest are kept. */
const idleShare = 1 + 1e-3;

/** True when the law is somewhere the smallest, or nearly so; others need not be read. */
export function isNeeded(nodes: RiseNodes, others: readonly RiseNodes[]): boolean {
  return others.every(
    (other) => other === nodes || nodes.values.some((value, i) => value < other.values[i]! * idleShare),
  );
}
