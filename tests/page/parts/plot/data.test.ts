import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lastPoint, niceRange, niceTicks, spread } from '../../../../src/page/parts/plot/data.ts';
import { thinned } from '../../../../src/page/parts/plot/Plot.tsx';

describe('ticks and ranges', () => {
  it.each([
    [0, 100, 5, [0, 20, 40, 60, 80, 100]],
    [0, 1, 5, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    [-20, 70, 4, [0, 50]],
  ])('from %s to %s in about %s: %j', (from, to, count, ticks) => {
    expect(niceTicks(from, to, count)).toEqual(ticks);
  });
  it('keeps every value inside the range, on round numbers', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1 }), (values) => {
        const [low, high] = niceRange(values);
        const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        for (const value of values) expect(value >= low - slack && value <= high + slack).toBe(true);
      }),
    );
  });
});

describe('labels at the ends of the lines', () => {
  it('keep their order, stand apart and stay inside while there is room', () => {
    const middles = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(middles, (wanted) => {
        const placed = spread(wanted, 16, 0, 300);
        const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
        for (let i = 1; i < order.length; i++) {
          expect(placed[order[i]!]! - placed[order[i - 1]!]!).toBeGreaterThanOrEqual(16 - 1e-9);
        }
        for (const middle of placed) expect(middle >= -1e-9 && middle <= 300 + 1e-9).toBe(true);
      }),
    );
  });
});

describe('series', () => {
  const series = { key: 's', label: 's', tone: '--ink', dash: [] };
  it('end where their last value is', () => {
    expect(lastPoint({ ...series, values: [1, 2, null] })).toEqual({ index: 1, value: 2 });
    expect(lastPoint({ ...series, values: [null] })).toBeUndefined();
  });
  it('are thinned for the table with both ends kept', () => {
    expect(thinned(5, 41)).toEqual([0, 1, 2, 3, 4]);
    const rows = thinned(1000, 41);
    expect(rows.length).toBe(41);
    expect(rows[0]).toBe(0);
    expect(rows.at(-1)).toBe(999);
  });
});
