import type { Edit, Effort } from '../../../../shared/answers.ts';
import type { Dimension } from '../../../../shared/design/fields.ts';
import { knownField } from '../../../../shared/design/leaves.ts';
import { writeEcho } from '../../quantity/write.ts';
import type { Judged } from './standing.ts';

/** One definite change, ready to be made. */
export interface Change {
  /** What to do, with the figure. */
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly sideEffects?: readonly string[];
}

/** Something that could be changed, from weak (step 1) to strong (step `count`), in buildable steps. */
export interface Offer {
  readonly key: string;
  readonly effort: Effort;
  readonly count: number;
  readonly at: (step: number) => Change;
  /** The strongest step helps most; false where too much can be worse than less. Default true. */
  readonly steady?: boolean;
  /** Only steps at which the rail still makes the power. */
  readonly keepsPower?: boolean;
}

/** What could be changed about a design, given how it stands. */
export type Offers = (base: Judged) => readonly Offer[];

/** A change without degrees. */
export function single(key: string, effort: Effort, change: Change): Offer {
  return { key, effort, count: 1, at: () => change };
}

/** Changes from weak to strong as a list. */
export function listed(
  key: string,
  effort: Effort,
  changes: readonly Change[],
  steady = true,
): readonly Offer[] {
  if (changes.length === 0) return [];
  return [{ key, effort, count: changes.length, at: (step) => changes[step - 1]!, steady }];
}

/** A value with its unit as a builder writes it: "155 mm", "4.5 mΩ". */
export function said(value: number, dimension: Dimension, unit: string): string {
  return writeEcho(Number(value.toPrecision(4)), dimension, unit);
}

/** The words of a choice. */
export function optionWords(path: string, value: string): string {
  const spec = knownField(path);
  return spec.kind === 'choice' ? (spec.options[value] ?? value) : value;
}
