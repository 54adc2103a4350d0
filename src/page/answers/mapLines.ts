import type { LimitMap, MapLine } from '../../../shared/answers.ts';

export interface ClosedLine {
  /** Where the service stands at its limit, lowest first, a list each column; SI. */
  readonly heights: readonly (readonly number[])[];
  /** Heights among them at which no limit was found: ends of stretches that run straight up or down. */
  readonly ends: ReadonlySet<number>;
}

/**
 * The line of a service with its steep stretches. The map looks for limits column by column; where the line runs up
 * between two columns, one of them has fewer limits than the other. The stretch between them goes to the edge of the map
 * at which the two columns differ, or closes where two limits meet.
 */
export function closedLine({ fineBelow, crossings }: MapLine, { y }: Pick<LimitMap, 'y'>): ClosedLine {
  const heights: (readonly number[])[] = [...crossings];
  const ends = new Set<number>();
  /** Adds what is missing in a column, unless its other neighbour has done so. */
  const put = (column: number, ...missing: readonly number[]) => {
    if (heights[column] !== crossings[column]) return;
    heights[column] = [...crossings[column]!, ...missing].sort((one, other) => one - other);
    for (const end of missing) ends.add(end);
  };
  /** From a column with more limits to its neighbour with fewer. */
  const close = (from: number, to: number, isAlikeBelow: boolean) => {
    const [limits, fewer] = [crossings[from]!, crossings[to]!.length];
    // Alike below the limit, so the two differ above it, and the other way round.
    if (limits.length === fewer + 1 && fewer < 2) put(to, isAlikeBelow ? y.to : y.from);
    const [low, high] = limits;
    if (limits.length === 2 && fewer === 0 && isAlikeBelow) put(to, (low! + high!) / 2, (low! + high!) / 2);
  };
  for (let left = 0; left + 1 < crossings.length; left += 1) {
    const right = left + 1;
    const [here, there] = [fineBelow[left], fineBelow[right]];
    if (here === null || there === null) continue;
    const [hereLimits, thereLimits] = [crossings[left]!.length, crossings[right]!.length];
    if (hereLimits > thereLimits) close(left, right, here === there);
    if (thereLimits > hereLimits) close(right, left, here === there);
    if (hereLimits === 0 && thereLimits === 0 && here !== there) {
      put(left, y.from);
      put(right, y.to);
    }
  }
  return { heights, ends };
}

/** Where, seen from its line, a service is within its limit; undefined where that changes along the line. */
export function fineSide({ fineBelow }: MapLine): string | undefined {
  const told = fineBelow.filter((one) => one !== null);
  const changes = told.filter((one, index) => index > 0 && one !== told[index - 1]).length;
  if (told.length === 0 || changes > 1) return undefined;
  if (changes === 0) return told[0] ? 'below' : 'above';
  return told[0] ? 'below and to the left of' : 'below and to the right of';
}
