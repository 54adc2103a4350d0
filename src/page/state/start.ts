import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { createDesigns } from './designs.ts';
import { openKey } from './keeping.ts';
import { createNotices, type Notices } from './notices.ts';
import { createPreferences } from './preferences.ts';
import { createResults, type Engine, type Schedule } from './results.ts';
import { createSheetState, type SheetState } from './sheet.ts';
import { createShelf, newId, type Shelf } from './shelf.ts';
import { readText, type TextStore } from './storage.ts';
import { createSheetStore, type Snapshot } from './store.ts';

export interface StartOptions {
  /** What this tab alone remembers. */
  readonly tab?: TextStore | undefined;
  readonly schedule?: Schedule;
  /** When what follows the figures may be begun. */
  readonly painted?: Schedule;
}

/** Builds the sheet's state from what the browser has kept, or from the first example. */
export function startSheet(
  engine: Engine,
  store: TextStore | undefined,
  options: StartOptions = {},
): SheetState {
  const notices = createNotices();
  const shelf = createShelf(store);
  const memories = [options.tab, store];
  const first = firstSnapshot(shelf, memories, notices);
  const sheet = createSheetStore(first);
  const designs = createDesigns({ sheet, shelf, notices, memories });
  return createSheetState({
    store: sheet,
    notices,
    designs,
    preferences: createPreferences(store),
    results: createResults(sheet.design, engine, options.schedule, options.painted),
  });
}

/** The design this tab showed, or the one shown last in this browser, or the first example. */
function firstSnapshot(
  shelf: Shelf,
  memories: readonly (TextStore | undefined)[],
  notices: Notices,
): Snapshot {
  const wanted = memories.map((memory) => readText(memory, openKey));
  for (const id of [...new Set(wanted)]) {
    if (id === null) continue;
    const found = shelf.read(id);
    if (found.kind === 'kept') return { id, design: found.entry.design, typed: found.entry.typed };
    if (found.kind === 'damaged') notices.show(cannotBeRead(found.faults));
  }
  return { id: newId(), design: examples[0]?.design ?? startDesign, typed: {} };
}

function cannotBeRead(faults: readonly string[]) {
  return {
    key: 'damaged',
    title: 'The design kept in this browser could not be read. It is left as it is, under “Designs”.',
    lines: faults.slice(0, 6),
  };
}
