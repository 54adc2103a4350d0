import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../../src/engine/numerics/bracketedRoot.ts';
import { resultOf } from '../resultOf.ts';

describe('bracketed root', () => {
  it.each([
    ['cosine', Math.cos, 0, 3, Math.PI / 2],
    ['cube root of two', (x: number) => x ** 3 - 2, 0, 2, Math.cbrt(2)],
    ['a flat root', (x: number) => (x - 1) ** 9, 0, 3, 1],
    ['a steep step', (x: number) => Math.atan(1e6 * (x - 0.3)), 0, 1, 0.3],
    ['ends given the wrong way round', (x: number) => Math.exp(x) - 5, 3, 0, Math.log(5)],
  ])('finds %s', (_, f, low, high, root) => {
    const found = resultOf(bracketedRoot(f, low, high, { tolerance: 1e-12, maxIterations: 200 }));
    expect(Math.abs(found.root - root)).toBeLessThan(1e-10);
  });

  it('finds the root of any rising cubic', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (root, b) => {
          const found = resultOf(
            bracketedRoot((x) => (x - root) ** 3 + b * (x - root), -10, 11, { tolerance: 1e-10 }),
          );
          expect(Math.abs(found.root - root)).toBeLessThan(1e-4);
          expect(found.iterations).toBeLessThan(100);
        },
      ),
    );
  });

  // Bisection alone would need thirty; the secant hits a line at once, the last call closes the bracket.
  it.each([
    ['a line', (x: number) => 3 * x - 1, 2],
    ['a gentle curve', (x: number) => x ** 0.8 - 0.4, 7],
  ])('needs few calls for %s', (_, f, calls) => {
    const found = resultOf(bracketedRoot(f, 0, 1, { tolerance: 1e-9 }));
    expect(found.iterations).toBeLessThanOrEqual(calls);
  });

  it('takes an end that is the root', () => {
    expect(resultOf(bracketedRoot((x) => x, 0, 1)).root).toBe(0);
    expect(resultOf(bracketedRoot((x) => x - 1, 0, 1)).root).toBe(1);
  });

  it.each([
    ['the signs agree', (x: number) => x * x + 1, 'root not bracketed'],
    ['an end is not finite', (x: number) => Math.log(x), 'value not finite'],
    [
      'the middle is not finite',
      (x: number) => (x > 0.2 && x < 0.8 ? Number.NaN : x - 0.5),
      'value not finite',
    ],
  ])('gives a reason when %s', (_, f, key) => {
    const outcome = bracketedRoot(f, 0, 1);
    expect(outcome.ok ? '' : outcome.reason.key).toBe(key);
  });

  it('gives a reason when it runs out of steps', () => {
    const outcome = bracketedRoot((x) => x ** 3 - 0.1, -1, 1, { tolerance: 1e-15, maxIterations: 2 });
    expect(outcome.ok ? '' : outcome.reason.key).toBe('root not found in time');
  });
});
