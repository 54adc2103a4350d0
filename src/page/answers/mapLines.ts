import type { LimitMap, MapLine } from '../../../shared/answers.ts';

export interface ClosedLine {
  /** Where the service stands at its limit, lowest first, a list each column; SI. */
  readonly heights: readonly (readonly number[])[];
  /** Columns that hold the end of a stretch that runs straight up or down beside them. */
  readonly steep: ReadonlySet<number>;
}

/**
 * The line of a service with its steep stretches. The map looks for limits column by column; where the line runs up
 * between two columns and leaves the map, one column has a limit and the next has none. The stretch between them goes to
 * the edge of the map at which the two columns differ.
 */
export function closedLine({ fineBelow, crossings }: MapLine, { y }: Pick<LimitMap, 'y'>): ClosedLine {
  const heights: (readonly number[])[] = [...crossings];
  const steep = new Set<number>();
  const put = (column: number, height: number) => {
    if (heights[column]!.length > 0) return;
    heights[column] = [height];
    steep.add(column);
  };
  for (let left = 0; left + 1 < crossings.length; left += 1) {
    const right = left + 1;
    const [here, there] = [fineBelow[left], fineBelow[right]];
    if (here === null || there === null) continue;
    const [hereLimits, thereLimits] = [crossings[left]!.length, crossings[right]!.length];
    // Alike below the limit, so the two differ above it, and the other way round.
    const end = here === there ? y.to : y.from;
    if (hereLimits === 1 && thereLimits === 0) put(right, end);
    if (hereLimits === 0 && thereLimits === 1) put(left, end);
    if (hereLimits === 0 && thereLimits === 0 && here !== there) {
      put(left, y.from);
      put(right, y.to);
    }
  }
  return { heights, steep };
}

/** On which side of its line a service is within its limit, in words; undefined where that changes along the line. */
export function fineSide({ fineBelow }: MapLine): string | undefined {
  const told = fineBelow.filter((one) => one !== null);
  const changes = told.filter((one, index) => index > 0 && one !== told[index - 1]).length;
  if (told.length === 0 || changes > 1) return undefined;
  if (changes === 0) return told[0] ? 'below' : 'above';
  return told[0] ? 'below and to the left' : 'below and to the right';
}
