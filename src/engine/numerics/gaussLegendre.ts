/** Nodes and weights of a Gauss-Legendre rule on [-1, 1], nodes rising. */
export interface GaussRule {
  readonly node: Float64Array;
  readonly weight: Float64Array;
}

const rules = new Map<number, GaussRule>();

/**
 * Gauss-Legendre quadrature rule: the integral of f from -1 to 1 is about the sum of weight times f(node), exact
 * for polynomials up to degree 2n - 1. The rule is kept after its first use.
 *
 * Nodes are the zeros of the Legendre polynomial P_n, found by Newton's method from
 * x = cos(pi (i - 1/4)/(n + 1/2)); weights are 2/((1 - x^2) P_n'(x)^2).
 *
 * @param count number of nodes, a whole number from 1 to 200
 * @see M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 25.4.29 (from memory)
 */
export function gaussLegendre(count: number): GaussRule {
  const known = rules.get(count);
  if (known) return known;
  const node = new Float64Array(count);
  const weight = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step++) {
      const [value, derivative] = legendre(count, x);
      slope = derivative;
      const change = value / derivative;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    node[i] = x;
    weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { node, weight };
  rules.set(count, rule);
  return rule;
}

/** The Legendre polynomial of a degree and its derivative, by the three-term recurrence. */
function legendre(degree: number, x: number): readonly [number, number] {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return [value, (degree * (x * value - before)) / (x * x - 1)];
}

/**
 * Integral of a function from low to high by one Gauss-Legendre panel.
 *
 * @param f smooth on [low, high]; break the range at kinks
 * @param count number of nodes
 */
export function integrate(f: (x: number) => number, low: number, high: number, count = 16): number {
  const { node, weight } = gaussLegendre(count);
  const half = 0.5 * (high - low);
  const middle = 0.5 * (high + low);
  let sum = 0;
  for (let i = 0; i < count; i++) sum += weight[i]! * f(middle + half * node[i]!);
  return sum * half;
}
