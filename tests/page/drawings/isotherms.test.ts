import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CellField, labelPlace, type Point, regionAbove } from '../../../src/page/drawings/isotherms.ts';

const columns = 40;
const rows = 30;
function fieldOf(value: (x: number, y: number) => number): CellField {
  const values = Array.from({ length: columns * rows }, (_, k) =>
    value(((k % columns) + 0.5) / columns, (Math.floor(k / columns) + 0.5) / rows),
  );
  return { columns, rows, values, width: 1, height: 1 };
}

/** Area inside closed lines; holes count negative (the warm side lies on the left). */
function area(loops: readonly (readonly Point[])[]): number {
  return loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((part, [x, y], k) => {
        const [nextX, nextY] = loop[(k + 1) % loop.length]!;
        return part + (x * nextY - nextX * y) / 2;
      }, 0),
    0,
  );
}

describe('isotherms', () => {
  it('of a slope are straight lines, closed along the edge', () => {
    const loops = regionAbove(
      fieldOf((x) => x),
      0.7,
    );
    expect(loops).toHaveLength(1);
    expect(area(loops)).toBeCloseTo(0.3, 6);
  });

  it('of a round hill are circles', () => {
    const hill = fieldOf((x, y) => -((x - 0.5) ** 2) - (y - 0.5) ** 2);
    expect(area(regionAbove(hill, -0.09))).toBeCloseTo(Math.PI * 0.09, 2);
  });

  it('around two hills are two lines, and a hollow is left out', () => {
    const hills = fieldOf((x, y) => Math.max(-Math.hypot(x - 0.25, y - 0.5), -Math.hypot(x - 0.75, y - 0.5)));
    expect(regionAbove(hills, -0.1)).toHaveLength(2);
    const hollow = fieldOf((x, y) => (x - 0.5) ** 2 + (y - 0.5) ** 2);
    const loops = regionAbove(hollow, 0.04);
    expect(loops).toHaveLength(2);
    expect(area(loops)).toBeCloseTo(1 - Math.PI * 0.04, 2);
  });

  it('hold everything below the lowest value and nothing above the highest', () => {
    const slope = fieldOf((x, y) => x + y);
    expect(area(regionAbove(slope, -1))).toBeCloseTo(1, 6);
    expect(regionAbove(slope, 3)).toEqual([]);
  });

  it('shrink as the level rises, whatever the field', () => {
    const rough = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: columns * rows,
      maxLength: columns * rows,
    });
    fc.assert(
      fc.property(rough, (values) => {
        const field: CellField = { columns, rows, values, width: 1, height: 1 };
        const areas = [0.2, 0.4, 0.6, 0.8].map((level) => area(regionAbove(field, level)));
        for (let k = 1; k < areas.length; k += 1) expect(areas[k]!).toBeLessThanOrEqual(areas[k - 1]! + 1e-9);
      }),
      { numRuns: 20 },
    );
  });
});

describe('the figure on a line', () => {
  const line: readonly Point[] = Array.from({ length: 21 }, (_, k) => [k / 20, 0.5]);
  const square = { width: 1, height: 1 };

  it('stands away from edges and parts', () => {
    expect(labelPlace([line], square, [], 0.05)?.[0]).toBeCloseTo(0.5);
    const part = { x: 0.3, y: 0.5, width: 0.2, height: 0.2 };
    expect(labelPlace([line], square, [part], 0.05)?.[0]).toBeGreaterThan(0.55);
  });

  it('is left out where there is no room', () => {
    expect(labelPlace([line], square, [{ x: 0.5, y: 0.5, width: 1, height: 1 }], 0.05)).toBeNull();
  });
});
