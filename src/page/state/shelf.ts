import { type Accessor, createSignal, onCleanup } from 'solid-js';
import { parseDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { faultLines } from './faultLines.ts';
import {
  dropText,
  keepText,
  keysBelow,
  parseJson,
  readText,
  type TextStore,
  type Trouble,
} from './storage.ts';
import type { Typed } from './store.ts';

const beginning = 'heat-and-rail.design.';

/** What is kept of a design between visits: the design and the texts as typed, wrong ones included. */
export interface Kept {
  readonly design: Design;
  readonly typed: Readonly<Record<string, Typed>>;
}

export interface Entry extends Kept {
  /** Changes with every write and differs between tabs, so that none writes over what it has not seen. */
  readonly stamp: string;
  /** When it was last written, ms since 1970. */
  readonly changed: number;
}

export type Found =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'kept'; readonly entry: Entry }
  /** Something is there but no design any more; it is left where it is. */
  | { readonly kind: 'damaged'; readonly faults: readonly string[] };

/** The designs kept in this browser, one entry each. */
export interface Shelf {
  readonly ids: () => readonly string[];
  readonly read: (id: string) => Found;
  /** The entry as it is stored; null where there is none. */
  readonly text: (id: string) => string | null;
  readonly stampOf: (id: string) => string | null;
  /** Writes an entry and gives its stamp. What the browser does not take stays in memory, see `trouble`. */
  readonly write: (id: string, kept: Kept) => string;
  readonly remove: (id: string) => void;
  /** Puts back the text of an entry that was removed. */
  readonly restore: (id: string, text: string) => void;
  /** Whether an entry is in memory only. */
  readonly unkept: (id: string) => boolean;
  /** What stands in the way of keeping something; null when everything is kept. */
  readonly trouble: Accessor<Trouble | null>;
  /** Changes whenever an entry changes, here or in another tab. */
  readonly changes: Accessor<number>;
  /** Calls back with the design that another tab wrote or removed. */
  readonly watch: (listener: (id: string) => void) => void;
}

/** A name of its own for a design or a tab. */
export function newId(): string {
  const words = crypto.getRandomValues(new Uint32Array(2));
  return Array.from(words, (word) => word.toString(36)).join('');
}

export function createShelf(store: TextStore | undefined, now: () => number = Date.now): Shelf {
  const tab = newId().slice(0, 6);
  const spare = new Map<string, string>();
  const [trouble, setTrouble] = createSignal<Trouble | null>(null);
  const [changes, setChanges] = createSignal(0);
  const changed = () => setChanges((count) => count + 1);

  const text = (id: string) => spare.get(id) ?? readText(store, beginning + id);
  const stampOf = (id: string) => {
    const content = text(id);
    return content === null ? null : stampIn(content);
  };

  function put(id: string, content: string): Trouble | null {
    const found = keepText(store, beginning + id, content);
    if (found === null) spare.delete(id);
    else spare.set(id, content);
    return found;
  }

  /** What was left over is tried again whenever there may be room. */
  function settle(latest: Trouble | null): void {
    let found = latest;
    for (const [id, content] of [...spare]) found = put(id, content) ?? found;
    setTrouble(spare.size === 0 ? null : found);
    changed();
  }

  return {
    ids: () => {
      const stored = keysBelow(store, beginning).map((key) => key.slice(beginning.length));
      return [...new Set([...stored, ...spare.keys()])];
    },
    text,
    stampOf,
    read: (id) => {
      const content = text(id);
      return content === null ? { kind: 'nothing' } : readEntry(content);
    },
    write: (id, { design, typed }) => {
      const revision = Number.parseInt(stampOf(id) ?? '0', 10) + 1;
      const stamp = `${revision}-${tab}`;
      settle(put(id, JSON.stringify({ stamp, changed: now(), design, typed })));
      return stamp;
    },
    remove: (id) => {
      spare.delete(id);
      dropText(store, beginning + id);
      settle(trouble());
    },
    restore: (id, content) => settle(put(id, content)),
    unkept: (id) => spare.has(id),
    trouble,
    changes,
    watch: (listener) => {
      const listen = ({ key }: StorageEvent) => {
        if (key !== null && !key.startsWith(beginning)) return;
        changed();
        if (key !== null) listener(key.slice(beginning.length));
      };
      globalThis.addEventListener?.('storage', listen);
      onCleanup(() => globalThis.removeEventListener?.('storage', listen));
    },
  };
}

function stampIn(content: string): string {
  const raw = parseJson(content) as { stamp?: unknown } | null | undefined;
  return typeof raw?.stamp === 'string' ? raw.stamp : '';
}

/** Reads an entry as a file would be read, so that a design of an older version is raised to this one. */
function readEntry(content: string): Found {
  const raw = parseJson(content) as Partial<Record<keyof Entry, unknown>> | null | undefined;
  const checked = parseDesign(JSON.stringify(raw?.design ?? null));
  if (!checked.ok) return { kind: 'damaged', faults: faultLines(checked) };
  const entry: Entry = {
    stamp: typeof raw?.stamp === 'string' ? raw.stamp : '',
    changed: typeof raw?.changed === 'number' ? raw.changed : 0,
    design: checked.design,
    typed: readTyped(raw?.typed),
  };
  return { kind: 'kept', entry };
}

function readTyped(raw: unknown): Readonly<Record<string, Typed>> {
  if (typeof raw !== 'object' || raw === null) return {};
  const entries = Object.entries(raw as Record<string, unknown>).filter((entry): entry is [string, Typed] => {
    const typed = entry[1] as Partial<Typed> | null;
    return typeof typed === 'object' && typed !== null && typeof typed.text === 'string';
  });
  return Object.fromEntries(entries.map(([path, typed]) => [path, cleaned(typed)]));
}

function cleaned(typed: Partial<Typed> & { readonly text: string }): Typed {
  return {
    text: typed.text,
    reason: typeof typed.reason === 'string' ? typed.reason : null,
    unit: typeof typed.unit === 'string' ? typed.unit : '',
  };
}
