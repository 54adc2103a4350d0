/** A list of snapshots to step through. `group` names the edit in progress, so that one field is one step. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  readonly group: string | null;
}

/** Snapshots kept; designs weigh a few kilobytes. */
const longest = 100;

export function startHistory<T>(present: T): History<T> {
  return { past: [], present, future: [], group: null };
}

/**
 * A new present. Edits of the same open group replace one another and count as one step back; one that leads back to
 * where the group began is no step at all.
 */
export function record<T>(
  history: History<T>,
  present: T,
  group: string | null,
  isSame: (before: T, now: T) => boolean = Object.is,
): History<T> {
  const continues = group !== null && group === history.group;
  const before = history.past.at(-1);
  if (continues && before !== undefined && isSame(before, present))
    return { past: history.past.slice(0, -1), present: before, future: [], group: null };
  const past = continues ? history.past : [...history.past, history.present].slice(-longest);
  return { past, present, future: [], group };
}

/** Ends the edit in progress: the next one is a step of its own. */
export function closeGroup<T>(history: History<T>): History<T> {
  return history.group === null ? history : { ...history, group: null };
}

export function undo<T>(history: History<T>): History<T> {
  const before = history.past.at(-1);
  if (before === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: before,
    future: [history.present, ...history.future],
    group: null,
  };
}

export function redo<T>(history: History<T>): History<T> {
  const [next, ...rest] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future: rest, group: null };
}
