import type { JSX } from 'solid-js';
import { followInSight } from '../state/follow.ts';
import { usePace } from '../state/pace.ts';
import { SheetProvider, useSheet } from '../state/sheet.ts';
import { createNear } from './near.ts';

/** The place of one band on the page: what stands in it follows the figures at once while it is in sight. */
export function Place(props: { class?: string; children: JSX.Element }) {
  const sheet = useSheet();
  let place!: HTMLDivElement;
  const near = createNear(() => place);
  return (
    <div ref={place} class={props.class ?? 'place'}>
      <SheetProvider value={followInSight(sheet, near, usePace())}>{props.children}</SheetProvider>
    </div>
  );
}
