import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import {
  meanCosines,
  ownTail,
  type Plate,
  type PlateSource,
  type SeriesTerms,
  seriesSum,
  seriesTerms,
} from './plateSeries.ts';

/** A part to be placed: footprint and heat. */
export interface Part {
  /** Along x, m. */
  readonly width: number;
  /** Along y, m. */
  readonly length: number;
  /** W */
  readonly power: number;
  /** Rise of what must not get hot (the junction) over the plate under the part, K; 0 if only the plate counts. */
  readonly ownRise: number;
}

export interface PlacementRules {
  /** Least distance of a footprint from the edge of the plate, m. */
  readonly edge: number;
  /** Least distance between footprints, m. */
  readonly apart: number;
  /** Places to start from too, centre of each part; what is found is never worse. */
  readonly present?: readonly Place[];
  /**
   * Work the search may take, in rises of one part by another that are worked out (some microseconds each): with many
   * parts it ends on a good arrangement instead of going on for a better one. Default `usualEffort`.
   */
  readonly effort?: number;
}

/** Own choice: with up to six parts the search ends by itself; with more it loses less than a tenth of the gain. */
export const usualEffort = 60_000;

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Placement {
  readonly places: readonly Place[];
  /** Mean rise of each part over the plate's mean, own rise added, K. */
  readonly rises: readonly number[];
  readonly hottest: number;
}

/** Exponent of the norm that stands for the hottest part while parts are moved; smooth, so that all of them count. */
const normExponent = 12;
/** First and last step of a move, as shares of the longer plate side. */
const firstStep = 1 / 8;
const lastStep = 1 / 400;
/** Rounds of moves at one step. */
const mostRounds = 30;
/** A move must gain this share. */
const leastGain = 1e-7;

/** Parts on a plate with what each costs to move: cosines of its place and its rises per watt of the others. */
interface Board {
  readonly terms: SeriesTerms;
  readonly parts: readonly Part[];
  readonly rules: PlacementRules;
  /** Work that is left, as in the rules. */
  readonly effort: { left: number };
}

interface Layout {
  readonly places: readonly Place[];
  readonly cosinesX: readonly Float64Array[];
  readonly cosinesY: readonly Float64Array[];
  /** Mean rise of i per watt in j, K/W. */
  readonly matrix: readonly (readonly number[])[];
  readonly cost: number;
}

/**
 * Suggests places for parts on a plate: the hottest mean temperature as low as it gets, all parts on the plate and
 * apart. Deterministic: a search by moves and swaps from rows, columns, grids and the present places, the coolest
 * first, with ever smaller steps and within the effort of the rules; it finds a good arrangement, not provably the best.
 *
 * @param plate film on its cooled face as for `plateSpread`
 * @param parts at least one
 * @returns failure `partsDoNotFit` when no start keeps the rules
 */
export function suggestPlaces(
  plate: Plate,
  parts: readonly Part[],
  rules: PlacementRules,
): Outcome<Placement> {
  const smallestWidth = Math.min(...parts.map((part) => part.width));
  const smallestLength = Math.min(...parts.map((part) => part.length));
  const terms = seriesTerms(plate, smallestWidth, smallestLength);
  const board: Board = { terms, parts, rules, effort: { left: rules.effort ?? usualEffort } };
  const starts = startsOf(board)
    .filter((places) => allowed(board, places))
    .map((places) => layoutOf(board, places))
    .sort((a, b) => a.cost - b.cost);
  let best = starts[0];
  if (best === undefined) {
    return failure('partsDoNotFit', 'The parts do not fit on the plate with these distances.');
  }
  for (const start of starts) {
    if (board.effort.left <= 0) break;
    const found = improve(board, start);
    if (found.cost < best.cost * (1 - leastGain)) best = found;
  }
  const rises = risesOf(board, best.matrix);
  return success({ places: best.places, rises, hottest: Math.max(...rises) });
}

const alike = (parts: readonly Part[]) =>
  parts.every(
    ({ width, length, power, ownRise }) =>
      width === parts[0]!.width &&
      length === parts[0]!.length &&
      power === parts[0]!.power &&
      ownRise === parts[0]!.ownRise,
  );

/** Rows of 1, 2, 3 … parts, evenly spread, in the given order and (of unlike parts) reversed, and the present places. */
function startsOf({ terms, parts, rules }: Board): (readonly Place[])[] {
  const { width, length } = terms.plate;
  const same = alike(parts);
  const starts: (readonly Place[])[] = [];
  for (let columns = 1; columns <= parts.length; columns++) {
    const rows = Math.ceil(parts.length / columns);
    const grid = parts.map((_, k) => {
      const row = Math.floor(k / columns);
      const inRow = Math.min(columns, parts.length - row * columns);
      return {
        x: (((k % columns) + 0.5) * width) / inRow,
        y: ((row + 0.5) * length) / rows,
      };
    });
    starts.push(grid, ...(same ? [] : [[...grid].reverse()]));
  }
  if (rules.present?.length === parts.length) starts.push(rules.present);
  return starts;
}

function allowed({ terms, parts, rules }: Board, places: readonly Place[]): boolean {
  const { width, length } = terms.plate;
  const slack = 1e-12;
  return places.every(({ x, y }, i) => {
    const part = parts[i]!;
    const marginX = part.width / 2 + rules.edge - slack;
    const marginY = part.length / 2 + rules.edge - slack;
    if (x < marginX || x > width - marginX || y < marginY || y > length - marginY) return false;
    return places.every((other, j) => {
      if (j >= i) return true;
      const clearX = (part.width + parts[j]!.width) / 2 + rules.apart - slack;
      const clearY = (part.length + parts[j]!.length) / 2 + rules.apart - slack;
      return Math.abs(x - other.x) >= clearX || Math.abs(y - other.y) >= clearY;
    });
  });
}

function cosinesAt({ terms, parts }: Board, i: number, { x, y }: Place): [Float64Array, Float64Array] {
  const { plate, countX, countY } = terms;
  return [
    meanCosines(countX, plate.width, x, parts[i]!.width),
    meanCosines(countY, plate.length, y, parts[i]!.length),
  ];
}

function layoutOf(board: Board, places: readonly Place[]): Layout {
  const cosines = places.map((place, i) => cosinesAt(board, i, place));
  const cosinesX = cosines.map(([x]) => x);
  const cosinesY = cosines.map(([, y]) => y);
  const matrix = places.map((_, i) =>
    places.map((__, j) => pairRise(board, places, cosinesX, cosinesY, i, j)),
  );
  return { places, cosinesX, cosinesY, matrix, cost: costOf(board, matrix) };
}

function pairRise(
  { terms, parts }: Board,
  places: readonly Place[],
  cosinesX: readonly Float64Array[],
  cosinesY: readonly Float64Array[],
  i: number,
  j: number,
): number {
  const sum = seriesSum(terms, cosinesX[i]!, cosinesX[j]!, cosinesY[i]!, cosinesY[j]!);
  if (i !== j) return sum;
  const source: PlateSource = { ...places[i]!, width: parts[i]!.width, length: parts[i]!.length };
  return sum + ownTail(terms, source, cosinesX[i]!, cosinesY[i]!);
}

function risesOf({ parts }: Board, matrix: readonly (readonly number[])[]): number[] {
  return matrix.map((row, i) =>
    row.reduce((sum, value, j) => sum + value * parts[j]!.power, parts[i]!.ownRise),
  );
}

function costOf(board: Board, matrix: readonly (readonly number[])[]): number {
  const rises = risesOf(board, matrix);
  const hottest = Math.max(...rises, Number.MIN_VALUE);
  const sum = rises.reduce((total, rise) => total + (Math.max(rise, 0) / hottest) ** normExponent, 0);
  return hottest * sum ** (1 / normExponent);
}

/** The layout with the parts of some places moved; the rest of the matrix is kept. */
function moved(board: Board, layout: Layout, moves: ReadonlyMap<number, Place>): Layout | null {
  const places = layout.places.map((place, i) => moves.get(i) ?? place);
  if (board.effort.left <= 0 || !allowed(board, places)) return null;
  board.effort.left -= moves.size * places.length;
  const cosinesX = [...layout.cosinesX];
  const cosinesY = [...layout.cosinesY];
  for (const [i, place] of moves) [cosinesX[i], cosinesY[i]] = cosinesAt(board, i, place);
  const matrix = layout.matrix.map((row) => [...row]);
  for (const i of moves.keys()) {
    for (let j = 0; j < places.length; j++) {
      const rise = pairRise(board, places, cosinesX, cosinesY, i, j);
      matrix[i]![j] = rise;
      matrix[j]![i] = rise;
    }
  }
  return { places, cosinesX, cosinesY, matrix, cost: costOf(board, matrix) };
}

const directions = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const;

function improve(board: Board, start: Layout): Layout {
  const side = Math.max(board.terms.plate.width, board.terms.plate.length);
  let layout = start;
  for (let step = firstStep * side; step > lastStep * side; step /= 2) {
    for (let round = 0; round < mostRounds; round++) {
      const better = roundOfMoves(board, layout, step);
      if (better === layout) break;
      layout = better;
    }
    layout = roundOfSwaps(board, layout);
  }
  return layout;
}

function roundOfMoves(board: Board, start: Layout, step: number): Layout {
  let layout = start;
  for (let i = 0; i < layout.places.length; i++) {
    for (const [dx, dy] of directions) {
      const { x, y } = layout.places[i]!;
      const next = moved(board, layout, new Map([[i, { x: x + dx * step, y: y + dy * step }]]));
      if (next && next.cost < layout.cost * (1 - leastGain)) layout = next;
    }
  }
  return layout;
}

function roundOfSwaps(board: Board, start: Layout): Layout {
  let layout = start;
  for (let i = 1; i < layout.places.length; i++) {
    for (let j = 0; j < i; j++) {
      const swap = new Map([
        [i, layout.places[j]!],
        [j, layout.places[i]!],
      ]);
      const next = moved(board, layout, swap);
      if (next && next.cost < layout.cost * (1 - leastGain)) layout = next;
    }
  }
  return layout;
}
