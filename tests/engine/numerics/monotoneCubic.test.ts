import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateCubic, monotoneCubic } from '../../../src/engine/numerics/monotoneCubic.ts';
import { expectClose } from '../closeTo.ts';

describe('monotone cubic', () => {
  it('passes through its points and is straight between two', () => {
    const line = monotoneCubic([
      [1, 2],
      [3, 8],
    ]);
    for (const [x, y] of [
      [1, 2],
      [2, 5],
      [3, 8],
      [4, 11],
      [0, -1],
    ] as const)
      expectClose(evaluateCubic(line, x), y, 1e-12);
  });

  it('reproduces straight lines through any points', () => {
    const cubic = monotoneCubic([0, 0.3, 1, 1.1, 4].map((x) => [x, 2 - 3 * x] as const));
    for (const x of [-1, 0.1, 0.7, 1.05, 2, 3.9, 6]) expectClose(evaluateCubic(cubic, x), 2 - 3 * x, 1e-12);
  });

  it('comes close to a smooth rising curve', () => {
    const cubic = monotoneCubic([0, 0.2, 0.4, 0.6, 0.8, 1].map((x) => [x, Math.exp(x)] as const));
    for (let x = 0; x <= 1; x += 0.01) expectClose(evaluateCubic(cubic, x), Math.exp(x), 2e-3);
  });

  it('rises wherever its points rise, for any points', () => {
    const step = fc.double({ min: 0.01, max: 10, noNaN: true });
    const rise = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(step, rise), { minLength: 2, maxLength: 8 }), (steps) => {
        let x = 0;
        let y = 0;
        const points = steps.map(([dx, dy]) => {
          x += dx;
          y += dy;
          return [x, y] as const;
        });
        const cubic = monotoneCubic(points);
        let before = Number.NEGATIVE_INFINITY;
        for (let i = 0; i <= 100; i++) {
          const at = points[0]![0] + (i / 100) * (x - points[0]![0]);
          const value = evaluateCubic(cubic, at);
          expect(value).toBeGreaterThanOrEqual(before - 1e-9);
          before = value;
        }
        for (const [px, py] of points) expect(Math.abs(evaluateCubic(cubic, px) - py)).toBeLessThan(1e-9);
      }),
    );
  });
});
