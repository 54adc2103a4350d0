import { describe, expect, it } from 'vitest';
import { ninetyPercent, normalQuantile } from '../../../src/engine/numerics/normalQuantile.ts';

describe('normal quantile', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.5, to its digits.
  it.each([
    [0.5, 0],
    [0.75, 0.67449],
    [0.9, 1.28155],
    [0.95, 1.64485],
    [0.975, 1.95996],
    [0.995, 2.57583],
    [0.999, 3.09023],
  ])('%f -> %f', (share, expected) => {
    expect(normalQuantile(share)).toBeCloseTo(expected, 5);
    expect(normalQuantile(1 - share)).toBeCloseTo(-expected, 5);
  });

  it('knows the edge of nine in ten', () => {
    expect(normalQuantile(0.95)).toBeCloseTo(ninetyPercent, 7);
  });

  it('is smooth where its two forms meet', () => {
    expect(normalQuantile(0.02425 + 1e-9)).toBeCloseTo(normalQuantile(0.02425 - 1e-9), 6);
  });
});
