import { canonicalJson } from '../../../shared/design/canonical.ts';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import type { State, Verdict } from '../../../shared/solution.ts';
import type { Kept } from './shelf.ts';

export function sameDesign(one: Design, other: Design): boolean {
  return one === other || canonicalJson(one) === canonicalJson(other);
}

export function sameContent(one: Kept, other: Kept): boolean {
  return sameDesign(one.design, other.design) && canonicalJson(one.typed) === canonicalJson(other.typed);
}

/** Whether a state holds nothing of the builder's: an example or the fresh sheet as they come. */
export function saysNothing({ design, typed }: Kept): boolean {
  if (Object.keys(typed).length > 0) return false;
  return [startDesign, ...examples.map((each) => each.design)].some((known) => sameDesign(known, design));
}

/** "Field station" -> "Field station (2)", or the next number that is free. */
export function nameOfCopy(name: string, taken: readonly string[]): string {
  const stem = name.replace(/ \(\d+\)$/, '').slice(0, 112);
  for (let number = 2; ; number += 1) {
    const next = `${stem} (${number})`;
    if (!taken.includes(next)) return next;
  }
}

/** Whether a design is another one as it stands, or as it was brought in beside one of the same name. */
export function sameButForNumber(kept: Design, design: Design): boolean {
  const isCopyName =
    kept.name.replace(/ \(\d+\)$/, '') === design.name.replace(/ \(\d+\)$/, '').slice(0, 112);
  return sameDesign(kept, design) || (isCopyName && sameDesign({ ...kept, name: design.name }, design));
}

/** The verdicts in a few words: what is over, what is close, or that every line is fine. */
export function verdictWords(verdicts: readonly Verdict[]): string {
  const lines = (state: State) => verdicts.filter((line) => line.state === state).map((line) => line.name);
  const named = (word: string, names: readonly string[]) =>
    names.length === 0 ? [] : [`${word}: ${names.join(', ')}`];
  const parts = [...named('over', lines('over')), ...named('close', lines('close'))];
  if (parts.length > 0) return parts.join('; ');
  return verdicts.length === 0 ? '' : 'every line fine';
}
