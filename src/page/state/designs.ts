import { type Accessor, untrack } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { createKeeper, type KeeperParts } from './keeping.ts';
import { type Found, type Kept, newId } from './shelf.ts';
import { nameOfCopy, sameButForNumber, saysNothing } from './shelfWords.ts';

/** A kept design that was taken away, for bringing it back. */
export interface Removed {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  /** It stood on the sheet. */
  readonly wasOpen: boolean;
}

/** One line of the list of designs. */
export interface Row {
  readonly id: string;
  /** The text of the entry, which changes when anything of it does. */
  readonly text: string;
  readonly found: Exclude<Found, { kind: 'nothing' }>;
  /** Not in the browser, only in the memory of this page. */
  readonly unkept: boolean;
}

/** What can be done with the designs kept in this browser. */
export interface Designs {
  /** Every kept design, the one on the sheet included, latest change first. */
  readonly list: Accessor<readonly Row[]>;
  /** The design on the sheet. */
  readonly openId: Accessor<string>;
  readonly open: (id: string) => void;
  /**
   * Puts designs from outside beside those that are kept, under a name of their own where theirs is taken, and the
   * first of them onto the sheet.
   */
  readonly bringIn: (designs: readonly Design[]) => void;
  /** A copy of a kept design under a name of its own, put onto the sheet. */
  readonly duplicate: (id: string) => void;
  readonly rename: (id: string, name: string) => void;
  /** Takes a design away. If it stood on the sheet, another one takes its place: `begin` where there is none. */
  readonly remove: (id: string, begin: Design) => Removed | null;
  readonly restore: (removed: Removed) => void;
  /** Writes at once what was edited last. */
  readonly keepNow: () => void;
}

export function createDesigns(parts: KeeperParts): Designs {
  const { sheet, shelf } = parts;
  const keeper = createKeeper(parts);
  const seen = new Map<string, Row>();

  function row(id: string): readonly Row[] {
    const text = shelf.text(id);
    if (text === null) return [];
    const unkept = shelf.unkept(id);
    const known = seen.get(id);
    if (known?.text === text && known.unkept === unkept) return [known];
    const found = shelf.read(id);
    if (found.kind === 'nothing') return [];
    const fresh = { id, text, found, unkept };
    seen.set(id, fresh);
    return [fresh];
  }

  const rows = () => shelf.ids().flatMap(row).sort(latestFirst);
  const list = () => {
    shelf.changes();
    return rows();
  };
  const names = (counts: (kept: Kept) => boolean = () => true) =>
    rows().flatMap(({ found }) =>
      found.kind === 'kept' && counts(found.entry) ? [found.entry.design.name] : [],
    );

  function open(id: string): void {
    if (id === sheet.snapshot().id) return;
    keeper.keepNow();
    const found = shelf.read(id);
    if (found.kind !== 'kept') return;
    const snapshot = { id, design: found.entry.design, typed: found.entry.typed };
    keeper.seen(snapshot);
    sheet.open(snapshot);
  }

  /** The kept design that says the same, so that following a link twice does not make two. */
  function twinOf(design: Design): string | undefined {
    return rows().find(
      ({ found }) =>
        found.kind === 'kept' &&
        Object.keys(found.entry.typed).length === 0 &&
        sameButForNumber(found.entry.design, design),
    )?.id;
  }

  function put(design: Design): string {
    const twin = twinOf(design);
    if (twin !== undefined) return twin;
    const id = newId();
    const taken = names((entry) => !saysNothing(entry));
    const name = taken.includes(design.name) ? nameOfCopy(design.name, taken) : design.name;
    shelf.write(id, { design: { ...design, name }, typed: {} });
    return id;
  }

  function rename(id: string, name: string): void {
    if (id === sheet.snapshot().id) {
      sheet.edit('name', name);
      sheet.commit();
      return;
    }
    const found = shelf.read(id);
    if (found.kind !== 'kept') return;
    shelf.write(id, { design: { ...found.entry.design, name }, typed: found.entry.typed });
  }

  function remove(id: string, begin: Design): Removed | null {
    keeper.keepNow();
    const text = shelf.text(id);
    const wasOpen = id === sheet.snapshot().id;
    if (text === null && !wasOpen) return null;
    const found = shelf.read(id);
    const name = found.kind === 'kept' ? found.entry.design.name : 'A design that cannot be read';
    shelf.remove(id);
    keeper.forget(id);
    if (wasOpen) {
      const next = rows().find((each) => each.found.kind === 'kept');
      if (next) open(next.id);
      else sheet.open({ id: newId(), design: begin, typed: {} });
    }
    return text === null ? null : { id, name, text, wasOpen };
  }

  return {
    list,
    openId: () => sheet.snapshot().id,
    open,
    bringIn(designs) {
      keeper.keepNow();
      const [first] = designs.map(put);
      if (first !== undefined) open(first);
    },
    duplicate(id) {
      keeper.keepNow();
      const here = untrack(sheet.snapshot);
      const found = shelf.read(id);
      const source = id === here.id ? here : found.kind === 'kept' ? found.entry : undefined;
      if (source === undefined) return;
      const name = nameOfCopy(source.design.name, [...names(), here.design.name]);
      const copy = { id: newId(), design: { ...source.design, name }, typed: source.typed };
      shelf.write(copy.id, copy);
      open(copy.id);
    },
    rename,
    remove,
    restore({ id, text, wasOpen }) {
      shelf.restore(id, text);
      if (wasOpen) open(id);
    },
    keepNow: keeper.keepNow,
  };
}

function latestFirst(one: Row, other: Row): number {
  return changedOf(other) - changedOf(one);
}

function changedOf({ found }: Row): number {
  return found.kind === 'kept' ? found.entry.changed : 0;
}
