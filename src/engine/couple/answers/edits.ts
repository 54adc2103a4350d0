import type { Edit } from '../../../../shared/answers.ts';
import { fieldAt, withValue } from '../../../../shared/design/leaves.ts';
import { withLoggedSinks } from '../../../../shared/design/loggedSink.ts';
import type { Design } from '../../../../shared/design/schema.ts';

/** A design with some places changed; the old one stays as it was, and bench runs stay with the old sink. */
export function applyEdits(design: Design, edits: readonly Edit[]): Design {
  return edits.reduce((changed, { path, value }) => withValue(changed, path, value), withLoggedSinks(design));
}

/** Figures of the last place go when a value comes out of a sum or a product. */
const keptDigits = 10;

/** A number as it would be typed: without the dust of arithmetic. */
export function tidy(value: number): number {
  return Number(value.toPrecision(keptDigits));
}

/** Whether every number of the edits lies in the range of its field. */
export function withinRanges(edits: readonly Edit[]): boolean {
  return edits.every(({ path, value }) => {
    const spec = fieldAt(path);
    if (spec?.kind !== 'number' || typeof value !== 'number') return true;
    return value >= spec.min && value <= spec.max;
  });
}
