import { createRoot } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { createDesigns, type Designs } from '../../../src/page/state/designs.ts';
import { createNotices, type Notices } from '../../../src/page/state/notices.ts';
import { createShelf, type Shelf } from '../../../src/page/state/shelf.ts';
import type { TextStore } from '../../../src/page/state/storage.ts';
import { createSheetStore, type SheetStore } from '../../../src/page/state/store.ts';
import { memoryStore } from '../support.tsx';

export interface Tab {
  readonly sheet: SheetStore;
  readonly designs: Designs;
  readonly shelf: Shelf;
  readonly notices: Notices;
  readonly memory: ReturnType<typeof memoryStore>;
  readonly dispose: () => void;
}

/** A tab that shows a design, on a store that other tabs may share. */
export function openTab(store: TextStore | undefined, id: string, design: Design): Tab {
  return createRoot((dispose) => {
    const shelf = createShelf(store);
    const found = shelf.read(id);
    const notices = createNotices();
    const memory = memoryStore();
    const kept = found.kind === 'kept' ? found.entry : { design, typed: {} };
    const sheet = createSheetStore({ id, design: kept.design, typed: kept.typed });
    const designs = createDesigns({ sheet, shelf, notices, memories: [memory] });
    return { sheet, designs, shelf, notices, memory, dispose };
  });
}

/** What a browser tells the other tabs after one wrote or removed an entry. */
export function tellOthers(id: string): void {
  window.dispatchEvent(new StorageEvent('storage', { key: `heat-and-rail.design.${id}` }));
}
