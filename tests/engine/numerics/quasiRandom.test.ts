import { describe, expect, it } from 'vitest';
import { quasiRandom, sobolDimensions } from '../../../src/engine/numerics/quasiRandom.ts';

function points(dimensions: number, seed: number, count: number): Float64Array[] {
  const next = quasiRandom(dimensions, seed);
  return Array.from({ length: count }, (_, i) => {
    const point = new Float64Array(dimensions);
    next(i, point);
    return point;
  });
}

describe('quasi-random points', () => {
  it('put exactly one of 2^k points into every 2^k-th of each axis', () => {
    const dimensions = sobolDimensions + 4;
    for (const count of [16, 256, 1024]) {
      const all = points(dimensions, 7, count);
      for (let d = 0; d < dimensions; d++) {
        const cells = new Set(all.map((point) => Math.floor(point[d]! * count)));
        expect(cells.size, `axis ${d} of ${count}`).toBe(count);
      }
    }
  });

  // A net in base 2: the first two axes share out every rectangle of area 1/n evenly.
  it('put exactly one of 256 points into every box of the first two axes, whatever its sides', () => {
    const all = points(2, 3, 256);
    for (let k = 0; k <= 8; k++) {
      const cells = new Set(
        all.map(([x, y]) => `${Math.floor(x! * 2 ** k)},${Math.floor(y! * 2 ** (8 - k))}`),
      );
      expect(cells.size).toBe(256);
    }
  });

  it('fill every pair of axes evenly: a 4 x 4 raster holds 64 of 1024 points a cell, within a fifth', () => {
    const all = points(16, 1, 1024);
    for (let a = 0; a < 16; a++) {
      for (let b = 0; b < a; b++) {
        const cells = new Int32Array(16);
        for (const point of all) cells[Math.floor(point[a]! * 4) * 4 + Math.floor(point[b]! * 4)]! += 1;
        expect(Math.max(...cells.map((n) => Math.abs(n - 64))), `axes ${a}, ${b}`).toBeLessThanOrEqual(13);
      }
    }
  });

  it('are the same for the same seed and others for another', () => {
    expect(points(5, 11, 32)).toEqual(points(5, 11, 32));
    expect(points(5, 12, 32)).not.toEqual(points(5, 11, 32));
  });

  it('never reach 0 or 1', () => {
    const all = points(8, 5, 4096).flatMap((point) => [...point]);
    expect(Math.min(...all)).toBeGreaterThan(0);
    expect(Math.max(...all)).toBeLessThan(1);
  });

  // ∫ over the cube of Π (1 + (x_i - 1/2)/2) is 1; a random sample of 1024 points misses by 0.5 % one time in three.
  it('integrate a smooth product over ten axes within 0.05 %', () => {
    const all = points(10, 2, 1024);
    const mean = all.reduce((sum, p) => sum + p.reduce((f, x) => f * (1 + (x - 0.5) / 2), 1), 0) / all.length;
    expect(Math.abs(mean - 1)).toBeLessThan(5e-4);
  });
});
