import { type Accessor, createEffect, createSignal, on, onCleanup } from 'solid-js';
import type { SheetState } from './sheet.ts';

/** So long after the last entry a builder reads rather than types, ms. */
const restAfterEditing = 5000;

/**
 * Whether the builder is at a field or has just changed something. Plots out of sight are hidden then: a browser that
 * draws without a graphics processor copies each canvas anew for every frame, seen or not.
 */
export function createEditing({ focused, store }: Pick<SheetState, 'focused' | 'store'>): Accessor<boolean> {
  const [editing, setEditing] = createSignal(false);
  let resting: ReturnType<typeof setTimeout> | undefined;
  createEffect(
    on(
      [focused, store.design],
      () => {
        clearTimeout(resting);
        setEditing(true);
        resting = setTimeout(() => setEditing(false), restAfterEditing);
      },
      { defer: true },
    ),
  );
  onCleanup(() => clearTimeout(resting));
  return editing;
}
