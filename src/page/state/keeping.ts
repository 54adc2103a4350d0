import { createEffect, on, onCleanup, untrack } from 'solid-js';
import type { Notices } from './notices.ts';
import { saveFile } from './saveFile.ts';
import { newId, type Shelf } from './shelf.ts';
import { nameOfCopy, sameContent, saysNothing } from './shelfWords.ts';
import { keepText, type TextStore, type Trouble } from './storage.ts';
import type { SheetStore, Snapshot } from './store.ts';

/** How long typing rests before the sheet is written to the browser's store, ms. */
const restBeforeKeeping = 250;

/** Where a tab remembers which design it shows, and the browser which was shown last. */
export const openKey = 'heat-and-rail.open';

export interface KeeperParts {
  readonly sheet: SheetStore;
  readonly shelf: Shelf;
  readonly notices: Notices;
  /** For what the next visit begins with: of this tab, and of the browser. */
  readonly memories: readonly (TextStore | undefined)[];
}

export interface Keeper {
  /** Writes at once what is not yet written. */
  readonly keepNow: () => void;
  /** Notes that this state of a design is what is kept of it: it was just read. */
  readonly seen: (snapshot: Snapshot) => void;
  /** Notes that the builder took the design away. */
  readonly forget: (id: string) => void;
}

/** The design was changed elsewhere while it stands here. */
interface Conflict {
  readonly id: string;
  /** Where this tab keeps its own state until the builder has chosen; null while there is nothing of its own. */
  readonly copyId: string | null;
  /** What stood here when the change was noticed. */
  readonly base: Snapshot;
}

/**
 * Keeps every state of the sheet, soon after each edit and at the latest when the page is left. It never writes over
 * what another tab wrote: then the builder is asked, and until the answer the state here goes into an entry of its own.
 */
export function createKeeper({ sheet, shelf, notices, memories }: KeeperParts): Keeper {
  /** The stamp under which this tab last saw each design, and the state it saw or wrote. */
  const stamps = new Map<string, string>();
  const states = new Map<string, Snapshot>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pending: Snapshot | undefined;
  let conflict: Conflict | undefined;

  const noteSeen = (snapshot: Snapshot) => {
    const stamp = shelf.stampOf(snapshot.id);
    if (stamp !== null) stamps.set(snapshot.id, stamp);
    states.set(snapshot.id, snapshot);
  };
  const forget = (id: string) => {
    stamps.delete(id);
    states.delete(id);
    if (pending?.id === id) stopTimer();
  };

  function stopTimer(): void {
    clearTimeout(timer);
    timer = undefined;
    pending = undefined;
  }

  function put(snapshot: Snapshot): void {
    stamps.set(snapshot.id, shelf.write(snapshot.id, snapshot));
    states.set(snapshot.id, snapshot);
  }

  function write(snapshot: Snapshot): void {
    if (conflict?.id === snapshot.id) {
      if (snapshot !== conflict.base) putCopy(snapshot);
      return;
    }
    const there = shelf.stampOf(snapshot.id);
    if (there === null || there === stamps.get(snapshot.id)) put(snapshot);
    else meet(snapshot, true);
  }

  /** Another tab wrote this design: the same, or something to choose between. */
  function meet(snapshot: Snapshot, ownEdits: boolean): void {
    const found = shelf.read(snapshot.id);
    if (found.kind === 'kept' && sameContent(found.entry, snapshot)) {
      noteSeen(snapshot);
      if (conflict !== undefined) endConflict(true);
      return;
    }
    conflict ??= { id: snapshot.id, copyId: null, base: snapshot };
    if (ownEdits || conflict.copyId !== null) putCopy(snapshot);
    else ask();
  }

  function putCopy(snapshot: Snapshot): void {
    if (conflict === undefined) return;
    const copyId = conflict.copyId ?? newId();
    conflict = { ...conflict, copyId };
    const name = nameOfCopy(snapshot.design.name, takenNames(copyId));
    const design = { ...snapshot.design, name };
    stamps.set(copyId, shelf.write(copyId, { design, typed: snapshot.typed }));
    remember(copyId);
    ask();
  }

  function takenNames(except: string): readonly string[] {
    return shelf.ids().flatMap((id) => {
      const found = id === except ? null : shelf.read(id);
      return found?.kind === 'kept' ? [found.entry.design.name] : [];
    });
  }

  function ask(): void {
    const { id, design } = untrack(sheet.snapshot);
    const found = shelf.read(id);
    const readable = found.kind === 'kept';
    const copied = conflict?.copyId != null;
    notices.show({
      key: 'conflict',
      title: `“${design.name}” was changed in another tab or window.`,
      lines: [
        'The sheet here still shows your own state of it.',
        ...(copied ? ['What you entered here since is kept as a copy until you have chosen.'] : []),
      ],
      asks: true,
      actions: [
        ...(readable ? [{ label: 'Take theirs', run: takeTheirs }] : []),
        { label: 'Keep mine', run: keepMine },
        { label: 'Keep both', run: keepBoth },
      ],
    });
  }

  function endConflict(dropCopy: boolean): void {
    notices.dismiss('conflict');
    const copyId = conflict?.copyId ?? null;
    conflict = undefined;
    if (copyId === null || !dropCopy) return;
    shelf.remove(copyId);
    forget(copyId);
    remember(sheet.snapshot().id);
  }

  function takeTheirs(): void {
    const { id } = sheet.snapshot();
    stopTimer();
    const found = shelf.read(id);
    endConflict(true);
    if (found.kind !== 'kept') return;
    const theirs: Snapshot = { id, design: found.entry.design, typed: found.entry.typed };
    noteSeen(theirs);
    sheet.open(theirs);
  }

  function keepMine(): void {
    stopTimer();
    endConflict(true);
    put(sheet.snapshot());
  }

  function keepBoth(): void {
    stopTimer();
    const mine = sheet.snapshot();
    const id = conflict?.copyId ?? newId();
    const name = nameOfCopy(mine.design.name, takenNames(id));
    endConflict(false);
    forget(mine.id);
    sheet.open({ ...mine, id, design: { ...mine.design, name } });
    keepNow();
  }

  function remember(id: string): void {
    for (const memory of memories) keepText(memory, openKey, id);
  }

  function keepNow(): void {
    if (pending === undefined) return;
    const snapshot = pending;
    stopTimer();
    write(snapshot);
  }

  /** A design that says no more than an example leaves nothing behind when another one comes onto the sheet. */
  function leaveBehind(left: Snapshot): void {
    if (pending?.id === left.id) keepNow();
    if (conflict?.id === left.id) endConflict(false);
    if (!saysNothing(left) || stamps.get(left.id) !== shelf.stampOf(left.id)) return;
    shelf.remove(left.id);
    forget(left.id);
  }

  function lookAgain(): void {
    const snapshot = untrack(sheet.snapshot);
    const there = shelf.stampOf(snapshot.id);
    const known = stamps.get(snapshot.id);
    if (there === null) {
      if (known !== undefined) notices.show(deletedElsewhere(snapshot.design.name));
      stamps.delete(snapshot.id);
    } else if (there !== known) meet(pending ?? snapshot, pending !== undefined);
  }

  let shown = untrack(sheet.snapshot);
  createEffect(
    on(
      sheet.snapshot,
      (now) => {
        const before = shown;
        shown = now;
        if (before.id !== now.id) {
          leaveBehind(before);
          notices.dismiss('deleted');
          remember(now.id);
        }
        if (states.get(now.id) === now && conflict === undefined) {
          stopTimer();
          return;
        }
        clearTimeout(timer);
        pending = now;
        timer = setTimeout(keepNow, restBeforeKeeping);
      },
      { defer: true },
    ),
  );
  createEffect(on(shelf.trouble, (trouble) => showTrouble(trouble, sheet, notices)));
  shelf.watch((id) => {
    if (id === untrack(sheet.snapshot).id) lookAgain();
  });
  onLeaving(keepNow, lookAgain, () => untrack(shelf.trouble) !== null);
  onCleanup(() => clearTimeout(timer));
  noteSeen(untrack(sheet.snapshot));
  remember(untrack(sheet.snapshot).id);
  return { keepNow, seen: noteSeen, forget };
}

function deletedElsewhere(name: string) {
  return {
    key: 'deleted',
    title: `“${name}” was deleted in another tab or window.`,
    lines: ['It still stands here; your next change keeps it again.'],
    news: true,
  };
}

const troubleWords: Readonly<Record<Trouble, string>> = {
  full: 'The storage of this browser is full: your last changes are not kept in it.',
  blocked: 'This browser keeps nothing for this page: its storage is blocked, as in some private windows.',
};

function showTrouble(trouble: Trouble | null, sheet: SheetStore, notices: Notices): void {
  if (trouble === null) {
    notices.dismiss('keeping');
    return;
  }
  notices.show({
    key: 'keeping',
    title: troubleWords[trouble],
    lines: [
      'You can work on, and nothing is lost while the page stays open. Save the design as a file before you close or reload it.',
      ...(trouble === 'full' ? ['Deleting kept designs under “Designs” makes room.'] : []),
    ],
    actions: [{ label: 'Save as a file', run: () => saveFile(sheet.design()), stays: true }],
  });
}

/** What must be done when the page is left, comes back from sleep, or would be closed with something not kept. */
function onLeaving(keepNow: () => void, lookAgain: () => void, unkept: () => boolean): void {
  const back = () => {
    if (document.visibilityState === 'visible') lookAgain();
    else keepNow();
  };
  const warn = (event: BeforeUnloadEvent) => {
    if (unkept()) event.preventDefault();
  };
  globalThis.addEventListener?.('pagehide', keepNow);
  globalThis.addEventListener?.('beforeunload', warn);
  document.addEventListener('visibilitychange', back);
  onCleanup(() => {
    globalThis.removeEventListener?.('pagehide', keepNow);
    globalThis.removeEventListener?.('beforeunload', warn);
    document.removeEventListener('visibilitychange', back);
  });
}
