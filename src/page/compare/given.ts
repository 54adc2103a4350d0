import type { Design } from '../../../shared/design/schema.ts';
import { valueAt, withValue } from '../state/fields.ts';
import { type GivenRow, givenGroups, type UnitOf } from '../state/given.ts';

/** A given value that is not the same in two designs. */
export interface GivenDifference {
  readonly path: string;
  readonly group: string;
  readonly label: string;
  readonly mine: string;
  readonly theirs: string;
  /** Theirs has such a value, so that it can be taken. */
  readonly takeable: boolean;
}

const doubts = 'doubts.';
/** What stands where a design has no such row: an empty list, or something that has no meaning in it. */
function without(design: Design, path: string): string {
  const value = rawAt(design, path);
  return Array.isArray(value) && value.length === 0 ? 'none' : 'does not apply';
}

/** What stands at the path of a row; how well something is known is kept by the path of what it speaks of. */
function rawAt(design: Design, path: string): unknown {
  if (!path.startsWith(doubts)) return valueAt(design, path);
  return (design.doubts as Readonly<Record<string, unknown>>)[path.slice(doubts.length)];
}

/** Only what differs, in the order of the file, as text in the builder's units. */
export function givenDifferences(mine: Design, theirs: Design, unitOf: UnitOf): readonly GivenDifference[] {
  const rowsOf = (design: Design) =>
    new Map<string, GivenRow & { readonly group: string }>(
      givenGroups(design, unitOf).flatMap(({ title, rows }) =>
        rows.map((row) => [row.path, { ...row, group: title }] as const),
      ),
    );
  const here = rowsOf(mine);
  const there = rowsOf(theirs);
  const paths = [...new Set([...here.keys(), ...there.keys()])];
  return paths.flatMap((path) => {
    const [own, other] = [here.get(path), there.get(path)];
    const known = own ?? other!;
    const same = JSON.stringify(rawAt(mine, path)) === JSON.stringify(rawAt(theirs, path));
    if ((own && other && same) || ((!own || !other) && known.idle)) return [];
    const { group, label } = known;
    const texts = {
      mine: own?.value ?? without(mine, path),
      theirs: other?.value ?? without(theirs, path),
    };
    return [{ path, group, label, ...texts, takeable: other !== undefined }];
  });
}

/** My design with this one value, or this list, as it is in theirs. */
export function withTheirs(mine: Design, theirs: Design, path: string): Design {
  if (!path.startsWith(doubts)) return withValue(mine, path, valueAt(theirs, path));
  const key = path.slice(doubts.length);
  const { [key]: _gone, ...rest } = mine.doubts as Readonly<Record<string, unknown>>;
  const value = rawAt(theirs, path);
  return { ...mine, doubts: (value === undefined ? rest : { ...rest, [key]: value }) as Design['doubts'] };
}

/** Everything as in theirs but the name. */
export function withAllOfTheirs(mine: Design, theirs: Design): Design {
  return { ...theirs, name: mine.name };
}
