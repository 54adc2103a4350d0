import { createSignal } from 'solid-js';
import type { RemedyList } from '../../../shared/answers.ts';
import type { Design } from '../../../shared/design/schema.ts';

interface Kept {
  readonly design: Design;
  readonly list: RemedyList;
}

const [kept, setKept] = createSignal<Kept | null>(null);

/** Keeps the list of changes found last, with the design it belongs to. */
export function rememberRemedies(design: Design, list: RemedyList): void {
  setKept({ design, list });
}

/** The changes found for a design as it stands now; null when none were asked for or it has been edited since. */
export function remediesFor(design: Design): RemedyList | null {
  const found = kept();
  return found !== null && found.design === design ? found.list : null;
}
