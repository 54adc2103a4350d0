import type { Edit } from '../../../shared/answers.ts';
import { withLoggedSinks } from '../../../shared/design/loggedSink.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { valueAt, withValue } from '../state/fields.ts';
import type { SheetStore, Snapshot } from '../state/store.ts';

/** An answer that was put into the design: the step it made, so that this step alone can be taken back. */
export interface Taken {
  readonly words: string;
  readonly paths: readonly string[];
  readonly before: Snapshot;
  readonly after: Snapshot;
}

/** Makes changes of the design as one step back; texts typed in those fields go with it. */
export function takeEdits(store: SheetStore, words: string, edits: readonly Edit[]): Taken {
  const before = store.snapshot();
  store.commit();
  for (const { path, value } of edits) {
    // Runs stay with the sink they were logged on, as the answer took them.
    store.change((design) => withValue(withLoggedSinks(design), path, value), path, 'answers');
  }
  store.commit();
  return { words, paths: edits.map(({ path }) => path), before, after: store.snapshot() };
}

/** `whole`: every value it gave still stands; `edited`: not all of them; `gone`: undone, or of another design. */
export type Standing = 'whole' | 'edited' | 'gone';

export function standingOf(store: SheetStore, { paths, before, after }: Taken): Standing {
  const now = store.snapshot();
  if (now.id !== after.id || !store.stands(after)) return 'gone';
  const as = (other: Design) => paths.every((path) => sameAt(now.design, other, path));
  if (as(after.design)) return 'whole';
  return as(before.design) ? 'gone' : 'edited';
}

/** Puts what the answer changed back to what it was, as a step of its own; whatever was edited since stays. */
export function withdraw(store: SheetStore, { paths, before, after }: Taken): void {
  const now = store.snapshot();
  const runs = now.design.bench === after.design.bench ? { bench: before.design.bench } : {};
  const design = paths.reduce((back, path) => withValue(back, path, valueAt(before.design, path)), {
    ...now.design,
    ...runs,
  });
  // A text in a field belongs to the value it said.
  const kept = Object.entries(now.typed).filter(([at]) => sameAt(now.design, design, at));
  const back = Object.entries(before.typed).filter(
    ([at]) => paths.some((path) => at.startsWith(path)) && sameAt(before.design, design, at),
  );
  store.replace(design, Object.fromEntries([...back, ...kept]));
}

function sameAt(one: Design, other: Design, path: string): boolean {
  const [here, there] = [valueAt(one, path), valueAt(other, path)];
  return here === there || JSON.stringify(here) === JSON.stringify(there);
}
