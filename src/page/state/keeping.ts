import { parseDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { keepText, parseJson, readText, type TextStore } from './storage.ts';
import type { Typed } from './store.ts';

const key = 'heat-and-rail.sheet';
const damagedKey = 'heat-and-rail.damaged';

/** What is kept in the browser between visits: the design and the texts as typed, wrong ones included. */
export interface Kept {
  readonly design: Design;
  readonly typed: Readonly<Record<string, Typed>>;
}

export type Found =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'kept'; readonly kept: Kept }
  /** Something is there but no design any more; its text was set aside, not thrown away. */
  | { readonly kind: 'damaged'; readonly faults: readonly string[] };

export function readKept(store: TextStore | undefined): Found {
  const text = readText(store, key);
  if (text === null) return { kind: 'nothing' };
  const raw = parseJson(text) as { design?: unknown; typed?: unknown } | null | undefined;
  // As a file would be read, so that a design of an older version is raised to this one.
  const checked = parseDesign(JSON.stringify(raw?.design ?? null));
  if (!checked.ok) {
    keepText(store, damagedKey, text);
    return { kind: 'damaged', faults: checked.faults.map((fault) => `${fault.path}: ${fault.message}`) };
  }
  return { kind: 'kept', kept: { design: checked.design, typed: readTyped(raw?.typed) } };
}

/** Writes the sheet; false when the browser does not keep it. */
export function keep(store: TextStore | undefined, kept: Kept): boolean {
  return keepText(store, key, JSON.stringify(kept));
}

function readTyped(raw: unknown): Readonly<Record<string, Typed>> {
  if (typeof raw !== 'object' || raw === null) return {};
  const entries = Object.entries(raw as Record<string, unknown>).filter((entry): entry is [string, Typed] => {
    const typed = entry[1] as Partial<Typed> | null;
    return (
      typeof typed === 'object' &&
      typed !== null &&
      typeof typed.text === 'string' &&
      typed.text.length <= 200
    );
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
