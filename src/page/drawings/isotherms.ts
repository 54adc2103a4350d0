/** Values at the middles of even cells over a rectangle, row by row from the lower left corner. */
export interface CellField {
  readonly columns: number;
  readonly rows: number;
  readonly values: ArrayLike<number>;
  /** Of the rectangle, in the units of the result. */
  readonly width: number;
  readonly height: number;
}

export type Point = readonly [number, number];

/** Far below every value, so that the outermost ring closes each line along the edge of the rectangle. */
const outside = -1e9;

/** The field with its outermost cells carried to the edge, and a ring of nothing around it. */
interface Grid {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly at: (i: number, j: number) => number;
}

function positions(count: number, size: number): number[] {
  const middles = Array.from({ length: count }, (_, i) => ((i + 0.5) * size) / count);
  return [0, 0, ...middles, size, size];
}

function gridOf({ columns, rows, values, width, height }: CellField): Grid {
  const clamp = (k: number, count: number) => Math.min(Math.max(k - 2, 0), count - 1);
  return {
    x: positions(columns, width),
    y: positions(rows, height),
    at: (i, j) => {
      if (i === 0 || j === 0 || i === columns + 3 || j === rows + 3) return outside;
      return values[clamp(j, rows) * columns + clamp(i, columns)]!;
    },
  };
}

/** Sides of a cell: below, right, above, left. A line enters by one and leaves by another, the warm side on its left. */
type Side = 0 | 1 | 2 | 3;

/** By which sides the warm corners (bits: lower left 1, lower right 2, upper right 4, upper left 8) are cut off. */
const crossings: readonly (readonly (readonly [Side, Side])[])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [
    [0, 3],
    [2, 1],
  ],
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [
    [1, 0],
    [3, 2],
  ],
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
];

/**
 * Closed lines around everything at or above a level: the isotherm, and the edge of the rectangle where the warmth
 * reaches it. Linear between the middles of the cells.
 */
export function regionAbove(field: CellField, level: number): readonly (readonly Point[])[] {
  const grid = gridOf(field);
  const width = field.columns + 4;
  const next = new Map<number, { to: number; point: Point }>();
  for (let j = 0; j < field.rows + 3; j += 1) {
    for (let i = 0; i < field.columns + 3; i += 1) {
      const corners =
        Number(grid.at(i, j) >= level) +
        2 * Number(grid.at(i + 1, j) >= level) +
        4 * Number(grid.at(i + 1, j + 1) >= level) +
        8 * Number(grid.at(i, j + 1) >= level);
      for (const [from, to] of crossings[corners]!) {
        next.set(edgeKey(i, j, from, width), {
          to: edgeKey(i, j, to, width),
          point: crossing(grid, i, j, from, level),
        });
      }
    }
  }
  return linked(next);
}

/** A number for each edge of the grid: level edges even, upright ones odd. */
function edgeKey(i: number, j: number, side: Side, width: number): number {
  if (side === 0) return 2 * (j * width + i);
  if (side === 2) return 2 * ((j + 1) * width + i);
  return 2 * (j * width + i + (side === 1 ? 1 : 0)) + 1;
}

function crossing(grid: Grid, i: number, j: number, side: Side, level: number): Point {
  const level1 = side === 2 ? j + 1 : j;
  const upright = side === 1 ? i + 1 : i;
  if (side === 0 || side === 2) {
    const share = (level - grid.at(i, level1)) / (grid.at(i + 1, level1) - grid.at(i, level1));
    return [grid.x[i]! + share * (grid.x[i + 1]! - grid.x[i]!), grid.y[level1]!];
  }
  const share = (level - grid.at(upright, j)) / (grid.at(upright, j + 1) - grid.at(upright, j));
  return [grid.x[upright]!, grid.y[j]! + share * (grid.y[j + 1]! - grid.y[j]!)];
}

function linked(next: Map<number, { to: number; point: Point }>): Point[][] {
  const loops: Point[][] = [];
  while (next.size > 0) {
    const loop: Point[] = [];
    let key = next.keys().next().value as number;
    for (let step = next.get(key); step; step = next.get(key)) {
      loop.push(step.point);
      next.delete(key);
      key = step.to;
    }
    loops.push(loop);
  }
  return loops;
}

/** Distance of a point from a rectangle's edge, negative inside it. */
function clearOf([x, y]: Point, box: { x: number; y: number; width: number; height: number }): number {
  return Math.max(Math.abs(x - box.x) - box.width / 2, Math.abs(y - box.y) - box.height / 2);
}

/**
 * Where the figure of a line stands best: on it, away from the edge, from the parts and from the other figures. Null
 * where there is no room.
 *
 * taken: middles and sizes of what must not be covered. room: least clear distance.
 */
export function labelPlace(
  loops: readonly (readonly Point[])[],
  size: { readonly width: number; readonly height: number },
  taken: readonly { x: number; y: number; width: number; height: number }[],
  room: number,
): Point | null {
  let best: Point | null = null;
  let most = room;
  for (const loop of loops) {
    for (const point of loop) {
      const toEdge = Math.min(point[0], size.width - point[0], point[1], size.height - point[1]);
      const clear = taken.reduce((least, box) => Math.min(least, clearOf(point, box)), toEdge);
      if (clear <= most) continue;
      most = clear;
      best = point;
    }
  }
  return best;
}
