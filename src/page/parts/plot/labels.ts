/** A label's room on the drawing. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a label must not cover: dots, and lines from point to point (null: the line has a gap). */
export interface Drawn {
  readonly dots: readonly (readonly [number, number])[];
  readonly lines: readonly (readonly (readonly [number, number] | null)[])[];
}

/** Room left around a dot. */
const dotSize = 5;

function coversDot(box: Box, [x, y]: readonly [number, number]): boolean {
  return (
    x > box.left - dotSize && x < box.right + dotSize && y > box.top - dotSize && y < box.bottom + dotSize
  );
}

/** Whether a straight piece passes through the box: its part between the box's sides reaches the box's height. */
function passes(box: Box, a: readonly [number, number], b: readonly [number, number]): boolean {
  const [first, second] = a[0] <= b[0] ? [a, b] : [b, a];
  if (second[0] < box.left || first[0] > box.right) return false;
  const wide = second[0] - first[0];
  const at = (x: number) => first[1] + ((x - first[0]) / wide) * (second[1] - first[1]);
  const ends =
    wide === 0
      ? [first[1], second[1]]
      : [at(Math.max(first[0], box.left)), at(Math.min(second[0], box.right))];
  return Math.max(...ends) > box.top && Math.min(...ends) < box.bottom;
}

function crosses(box: Box, line: Drawn['lines'][number]): boolean {
  return line.some((point, index) => {
    const before = line[index - 1];
    return point !== null && before != null && passes(box, before, point);
  });
}

function isFree(box: Box, { dots, lines }: Drawn): boolean {
  return !dots.some((dot) => coversDot(box, dot)) && !lines.some((line) => crosses(box, line));
}

/** The first of several places of a label that covers nothing; the first of all where there is none. */
export function freePlace<Spot extends { readonly box: Box }>(places: readonly Spot[], drawn: Drawn): Spot {
  return places.find(({ box }) => isFree(box, drawn)) ?? places[0]!;
}

/** A place a label may take, and how much it is worth to have a better one, in rows away from the best. */
export interface Place {
  readonly row: number;
  readonly side: 'left' | 'right';
  readonly box: Box;
  readonly cost: number;
}

/** What it costs to cover something, in rows: a label that strays further is no longer seen to belong to its mark. */
const overLabel = 100;
const overDot = 6;
const overLine = 4;
const aboveMark = 8;
const otherSide = 1.5;

/** Every place of a mark's label: rows from the axis upwards, on either side of the mark's upright line. */
export function placesOf(
  rows: number,
  boxAt: (row: number, side: Place['side']) => Box,
  likes: Place['side'],
  within: readonly [number, number],
  top: number,
): readonly Place[] {
  return (['left', 'right'] as const).flatMap((side) =>
    Array.from({ length: rows }, (_, row) => {
      const box = boxAt(row, side);
      const cost = row + (side === likes ? 0 : otherSide) + (box.bottom < top ? aboveMark : 0);
      return { row, side, box, cost };
    }).filter(({ box }) => side === likes || (box.left >= within[0] && box.right <= within[1])),
  );
}

/** One place for each label: near the axis, and where it covers least of dots, lines and other labels. */
export function placeLabels(labels: readonly (readonly Place[])[], drawn: Drawn): readonly Place[] {
  const taken: Place[] = [];
  for (const places of labels) {
    const costs = places.map(
      ({ box, cost }) =>
        cost +
        (taken.some((other) => overlap(box, other.box)) ? overLabel : 0) +
        (drawn.dots.some((dot) => coversDot(box, dot)) ? overDot : 0) +
        (drawn.lines.some((line) => crosses(box, line)) ? overLine : 0),
    );
    taken.push(places[costs.indexOf(Math.min(...costs))]!);
  }
  return taken;
}

function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
