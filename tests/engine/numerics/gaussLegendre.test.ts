import { describe, expect, it } from 'vitest';
import { gaussLegendre, integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import { expectClose } from '../closeTo.ts';

describe('Gauss-Legendre rules', () => {
  // Abramowitz and Stegun (1964), table 25.4 (from memory).
  it.each([
    [2, [0.577350269189626], [1]],
    [3, [0, 0.774596669241483], [0.888888888888889, 0.555555555555556]],
    [4, [0.339981043584856, 0.861136311594053], [0.652145154862546, 0.347854845137454]],
    [5, [0, 0.538469310105683, 0.906179845938664], [0.568888888888889, 0.478628670499366, 0.236926885056189]],
  ])('has the printed %i-point nodes and weights', (count, nodes, weights) => {
    const rule = gaussLegendre(count);
    nodes.forEach((node, k) => {
      const i = count - nodes.length + k;
      expect(Math.abs(rule.node[i]! - node)).toBeLessThan(1e-14);
      expect(Math.abs(rule.weight[i]! - weights[k]!)).toBeLessThan(1e-14);
    });
  });

  it.each([1, 2, 7, 16, 32, 64, 200])('integrates powers exactly with %i points', (count) => {
    for (const degree of [0, 1, count, 2 * count - 1].filter((d) => d <= 2 * count - 1)) {
      expectClose(
        integrate((x) => x ** degree, 0, 1, count),
        1 / (degree + 1),
        2e-13,
      );
    }
  });

  it('keeps a rule after its first use', () => {
    expect(gaussLegendre(11)).toBe(gaussLegendre(11));
  });
});
