import { createEffect, on, onCleanup } from 'solid-js';
import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { keep, readKept } from './keeping.ts';
import { createNotices, type Notices } from './notices.ts';
import { createPreferences } from './preferences.ts';
import { createResults, type Engine, type Schedule } from './results.ts';
import { createSheetState, type SheetState } from './sheet.ts';
import type { TextStore } from './storage.ts';
import { createSheetStore, type SheetStore, type Snapshot } from './store.ts';

/** How long typing rests before the sheet is written to the browser's store, ms. */
const restBeforeKeeping = 250;

/** Builds the sheet's state from what the browser has kept, or from the first example. */
export function startSheet(engine: Engine, store: TextStore | undefined, schedule?: Schedule): SheetState {
  const notices = createNotices();
  const sheetStore = createSheetStore(firstSnapshot(store, notices));
  keepAlways(sheetStore, store, notices);
  return createSheetState({
    store: sheetStore,
    notices,
    preferences: createPreferences(store),
    results: createResults(sheetStore.design, engine, schedule),
  });
}

function firstSnapshot(store: TextStore | undefined, notices: Notices): Snapshot {
  const found = readKept(store);
  if (found.kind === 'kept') return found.kept;
  if (found.kind === 'damaged') {
    notices.show({
      key: 'damaged',
      title:
        'The design kept in this browser could not be read. It was set aside, and the sheet starts with an example.',
      lines: found.faults.slice(0, 6),
    });
  }
  return { design: examples[0]?.design ?? startDesign, typed: {} };
}

/** Writes every state of the sheet, soon after each edit and at the latest when the page is left. */
function keepAlways(sheet: SheetStore, store: TextStore | undefined, notices: Notices): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = () => {
    clearTimeout(timer);
    timer = undefined;
    if (keep(store, sheet.snapshot())) notices.dismiss('keeping');
    else notices.show(notKept);
  };
  createEffect(
    on(
      sheet.snapshot,
      () => {
        clearTimeout(timer);
        timer = setTimeout(write, restBeforeKeeping);
      },
      { defer: true },
    ),
  );
  const leave = () => {
    if (timer !== undefined) write();
  };
  globalThis.addEventListener?.('pagehide', leave);
  onCleanup(() => {
    clearTimeout(timer);
    globalThis.removeEventListener?.('pagehide', leave);
  });
}

const notKept = {
  key: 'keeping',
  title: 'This browser does not keep the sheet: its storage is full or blocked.',
  lines: ['Save the design as a file before you close or reload the page.'],
};
