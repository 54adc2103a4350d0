import { type Accessor, createComputed, createMemo, createSignal, type Signal, untrack } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { applies } from './applies.ts';
import { type Leaf, withLeaf } from './fields.ts';
import { closeGroup, type History, record, redo, startHistory, undo } from './history.ts';
import { keepSame } from './keepSame.ts';

/** The text of a field as the builder typed it, and why it could not be read; null when it could. */
export interface Typed {
  readonly text: string;
  readonly reason: string | null;
  /** The unit of the field while it was typed: a bare "3/8" means nothing without it. */
  readonly unit: string;
}

/** One step of the history: the design, always valid, and the texts that stand in the fields. */
export interface Snapshot {
  /** Which of the kept designs it is a state of: opening another one is a step, too. */
  readonly id: string;
  readonly design: Design;
  readonly typed: Readonly<Record<string, Typed>>;
}

export interface SheetStore {
  readonly design: Accessor<Design>;
  /** The same design read section by section: who reads the sink is not called when the source changes. */
  readonly view: Design;
  readonly typed: (path: string) => Typed | undefined;
  readonly snapshot: Accessor<Snapshot>;
  /** Fields in sight whose text cannot be read: the design holds their last good value. */
  readonly wrong: Accessor<readonly string[]>;
  /** Takes a good value, with the text that said it where the value alone would not show it. */
  readonly edit: (path: string, value: Leaf, said?: Omit<Typed, 'reason'>) => void;
  /** Takes a change that a typed text stands for (a pasted log); the text stays as typed, one step until `commit`. */
  readonly take: (path: string, update: (design: Design) => Design, said: Omit<Typed, 'reason'>) => void;
  /** Keeps a text that could not be read; the design stays as it was. */
  readonly refuse: (path: string, typed: Typed) => void;
  /**
   * Any other change of the design, one step back. Texts of fields below `prefix` are forgotten with it. Changes of one
   * `group` are one step until `commit`.
   */
  readonly change: (update: (design: Design) => Design, prefix?: string, group?: string) => void;
  /** Another state of the same design, one step back. */
  readonly replace: (design: Design, typed: Snapshot['typed']) => void;
  /** Whether a state was lived through on the way to the present one: not undone, nor too long ago. */
  readonly stands: (state: Snapshot) => boolean;
  /** Ends the edit in progress (the field was left). */
  readonly commit: () => void;
  /** Another design altogether; undo brings the old one back. */
  readonly open: (snapshot: Snapshot) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly canUndo: Accessor<boolean>;
  readonly canRedo: Accessor<boolean>;
}

function without(typed: Snapshot['typed'], path: string): Snapshot['typed'] {
  if (!(path in typed)) return typed;
  const { [path]: _gone, ...rest } = typed;
  return rest;
}

function withoutBelow(typed: Snapshot['typed'], prefix: string): Snapshot['typed'] {
  return Object.fromEntries(Object.entries(typed).filter(([path]) => !path.startsWith(prefix)));
}

/**
 * Untouched sections are shared between designs, so the news of an edit stops at their borders. They are signals set
 * one by one: from a memo each, an edit would call on every field of the sheet to see whether it is meant.
 */
function sectionView(first: Design, design: Accessor<Design>): Design {
  const view = {} as Record<string, unknown>;
  const followers = (Object.keys(first) as (keyof Design)[]).map((key) => {
    const [section, setSection] = createSignal<unknown>(first[key]);
    Object.defineProperty(view, key, { get: section, enumerable: true });
    return (now: Design) => setSection(() => now[key]);
  });
  createComputed(() => {
    const now = design();
    for (const follow of followers) follow(now);
  });
  return view as unknown as Design;
}

/** The texts read field by field: who shows one is not called when another is typed. Signals, as above. */
function textsByField(texts: Accessor<Snapshot['typed']>): SheetStore['typed'] {
  const followers = new Map<string, Signal<Typed | undefined>>();
  createComputed<Snapshot['typed']>((before) => {
    const now = texts();
    for (const path of new Set([...Object.keys(before), ...Object.keys(now)]))
      followers.get(path)?.[1](now[path]);
    return now;
  }, untrack(texts));
  return (path) => {
    const known = followers.get(path) ?? createSignal(untrack(texts)[path]);
    followers.set(path, known);
    return known[0]();
  };
}

const sameList = (before: readonly string[], now: readonly string[]) =>
  before.length === now.length && before.every((each, index) => each === now[index]);

const sameState = (before: Snapshot, now: Snapshot) => keepSame(before, now) === before;

/** The state of the sheet: one valid design, the texts as typed, and every step back and forth. */
export function createSheetStore(first: Snapshot): SheetStore {
  const [history, setHistory] = createSignal<History<Snapshot>>(startHistory(first));
  const snapshot = createMemo(() => history().present);
  const design = createMemo(() => snapshot().design);
  // An edit that leaves the texts and the wrong entries as they are calls nobody who reads them.
  const texts = createMemo(() => snapshot().typed);
  const wrong = createMemo(
    () =>
      Object.entries(texts())
        .filter(([path, typed]) => typed.reason !== null && applies(design(), path))
        .map(([path]) => path),
    [],
    { equals: sameList },
  );
  const view = sectionView(first.design, design);
  const push = (next: Omit<Snapshot, 'id'>, group: string | null) =>
    setHistory((now) => record(now, { id: now.present.id, ...next }, group, sameState));

  return {
    design,
    view,
    snapshot,
    wrong,
    typed: textsByField(texts),
    edit(path, value, said) {
      const rest = without(snapshot().typed, path);
      const typed = said === undefined ? rest : { ...rest, [path]: { ...said, reason: null } };
      push({ design: withLeaf(design(), path, value), typed }, path);
    },
    take(path, update, said) {
      const typed = { ...snapshot().typed, [path]: { ...said, reason: null } };
      push({ design: update(design()), typed }, path);
    },
    refuse(path, typed) {
      push({ design: design(), typed: { ...snapshot().typed, [path]: typed } }, path);
    },
    change(update, prefix, group) {
      const typed = prefix === undefined ? snapshot().typed : withoutBelow(snapshot().typed, prefix);
      push({ design: update(design()), typed }, group ?? null);
    },
    replace: (next, said) => push({ design: next, typed: said }, null),
    stands: (state) => history().present === state || history().past.includes(state),
    commit: () => setHistory(closeGroup),
    open: (next) => setHistory((now) => record(now, next, null)),
    undo: () => setHistory(undo),
    redo: () => setHistory(redo),
    canUndo: () => history().past.length > 0,
    canRedo: () => history().future.length > 0,
  };
}
