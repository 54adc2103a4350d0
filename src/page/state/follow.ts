import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup, untrack } from 'solid-js';
import { type Service, services } from '../../../shared/solution.ts';
import type { Pace } from './pace.ts';
import type { Results } from './results.ts';
import type { SheetState } from './sheet.ts';

/** What is out of sight follows once the figures rest this long, ms: longer than between two turns of a value. */
const restBeforeFollowing = 700;

/** Edits and page must have rested this long before long drawings out of sight are drawn, ms. */
export const restBeforeFarDrawings = 1500;

/**
 * The sheet as one band of the page sees it: in sight its figures are the newest at once; out of sight they follow in
 * a free moment, so that a key stroke pays only for what its reader can see change.
 */
export function followInSight(within: SheetState, near: Accessor<boolean>, pace: Pace): SheetState {
  // A part of a band follows the sheet itself: after the band it would come late twice over.
  const sheet = within.followed ?? within;
  const { results } = sheet;
  const [turn, setTurn] = createSignal(0);
  const held = <T>(newest: Accessor<T>): Accessor<T> =>
    createMemo(() => {
      turn();
      return near() ? newest() : untrack(newest);
    });
  const followed: Results = {
    ...results,
    solution: held(results.solution),
    solved: held(results.solved),
    curves: held(results.curves),
    band: held(results.band),
    bandProgress: held(results.bandProgress),
  };
  catchUp([results.solution, results.curves, results.band, sheet.older], near, pace, () =>
    setTurn((now) => now + 1),
  );
  return {
    ...sheet,
    results: followed,
    older: held(sheet.older),
    nameOf: createNames(sheet, followed.solution),
    followed: sheet,
  };
}

/** Names seldom change; who writes one is not called at every new figure. */
function createNames(sheet: SheetState, solution: Results['solution']): SheetState['nameOf'] {
  const names = {} as Record<Service, Accessor<string>>;
  for (const service of services)
    names[service] = createMemo(
      () => solution()?.words[service].name ?? untrack(() => sheet.nameOf(service)),
    );
  return (service) => names[service]();
}

/** Calls for a catching up some time after the figures have changed out of sight. */
function catchUp(
  figures: readonly Accessor<unknown>[],
  near: Accessor<boolean>,
  pace: Pace,
  follow: () => void,
): void {
  let resting: ReturnType<typeof setTimeout> | undefined;
  let queued = false;
  let come: readonly boolean[] = [];
  const queue = () => {
    queued = true;
    pace.later(() => {
      queued = false;
      follow();
    });
  };
  createEffect(
    on([...figures], (now) => {
      // What comes for the first time makes the page longer: the sooner it stands, the less moves under a reader.
      const isFirst = now.some((value, index) => value !== undefined && !come[index]);
      come = now.map((value, index) => value !== undefined || come[index] === true);
      if (untrack(near) || queued) return;
      clearTimeout(resting);
      if (isFirst) queue();
      else resting = setTimeout(queue, restBeforeFollowing);
    }),
  );
  onCleanup(() => clearTimeout(resting));
}

/** What takes long to draw: the newest while it is in sight, else the newest of when the page last came to rest. */
export function followAtRest<T>(newest: Accessor<T>, near: Accessor<boolean>, pace: Pace): Accessor<T> {
  const [followed, setFollowed] = createSignal(untrack(newest));
  let resting: ReturnType<typeof setTimeout> | undefined;
  const follow = () => setFollowed(() => untrack(newest));
  createEffect(() => {
    newest();
    clearTimeout(resting);
    if (near()) follow();
    else resting = setTimeout(() => pace.last(follow), restBeforeFarDrawings);
  });
  onCleanup(() => clearTimeout(resting));
  return followed;
}
