import type { JSX } from 'solid-js';
import { followInSight } from '../state/follow.ts';
import { usePace } from '../state/pace.ts';
import { SheetProvider, useSheet } from '../state/sheet.ts';
import { createNear } from './near.ts';

/**
 * A part of the page: what stands in it follows the figures at once while it is in sight. Places stand in places. One of
 * figures says in its class whether they are older than an entry, and whether their bands are on the way.
 */
export function Place(props: { class?: string; ofFigures?: true; children: JSX.Element }) {
  let place!: HTMLDivElement;
  const followed = followInSight(
    useSheet(),
    createNear(() => place),
    usePace(),
  );
  const { older, results } = followed;
  return (
    <div
      ref={place}
      class={props.class ?? 'place'}
      classList={{
        older: props.ofFigures === true && older().length > 0,
        'band-coming': props.ofFigures === true && results.band() === undefined,
      }}
    >
      <SheetProvider value={followed}>{props.children}</SheetProvider>
    </div>
  );
}
