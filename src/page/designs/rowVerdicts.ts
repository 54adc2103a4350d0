import { createEffect, createSignal, onCleanup, untrack } from 'solid-js';
import { useSheet } from '../state/sheet.ts';
import { verdictWords } from '../state/shelfWords.ts';

interface Known {
  readonly text: string;
  readonly words: string;
}

/**
 * The verdicts of every kept design in a few words, from its nominal figures. They are asked for one after the other,
 * so that the engine stays free for the sheet, and once for each state of a design.
 */
export function createRowVerdicts(): (id: string) => string {
  const { designs, results } = useSheet();
  const [known, setKnown] = createSignal<Readonly<Record<string, Known>>>({});
  let busy = false;
  let gone = false;
  onCleanup(() => {
    gone = true;
  });

  async function findNext(): Promise<void> {
    const next = untrack(designs.list).find((row) => untrack(known)[row.id]?.text !== row.text);
    if (busy || gone || next === undefined) return;
    busy = true;
    const words = await wordsOf(next.found.kind === 'kept' ? next.found.entry.design : null);
    busy = false;
    setKnown((all) => ({ ...all, [next.id]: { text: next.text, words } }));
    void findNext();
  }

  async function wordsOf(design: Parameters<typeof results.engine.solve>[0] | null): Promise<string> {
    try {
      return design === null ? '' : verdictWords((await results.engine.solve(design)).verdicts);
    } catch {
      return '';
    }
  }

  createEffect(() => {
    designs.list();
    void findNext();
  });
  return (id) => known()[id]?.words ?? '';
}
