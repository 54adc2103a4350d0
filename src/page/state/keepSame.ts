/**
 * The newer value, with every part that is as it was before taken from before. What reads such a part sees that nothing
 * has changed and draws nothing anew, although each answer of the engine comes as a copy.
 */
export function keepSame<T>(before: unknown, now: T): T {
  if (Object.is(before, now)) return now;
  if (!isCompound(before) || !isCompound(now) || Array.isArray(before) !== Array.isArray(now)) return now;
  return (Array.isArray(now) ? sameItems(before as never, now) : sameParts(before, now)) as T;
}

function sameItems(before: readonly unknown[], now: readonly unknown[]): readonly unknown[] {
  const kept = now.map((item, index) => (index < before.length ? keepSame(before[index], item) : item));
  const same = now.length === before.length && kept.every((item, index) => Object.is(item, before[index]));
  return same ? before : kept;
}

function sameParts(before: Parts, now: Parts): Parts {
  const keys = Object.keys(now);
  let same = keys.length === Object.keys(before).length;
  let kept: Record<string, unknown> | undefined;
  for (const key of keys) {
    const part = now[key];
    const was = before[key];
    const keep = keepSame(was, part);
    if (!Object.is(keep, was) || (keep === undefined && !(key in before))) same = false;
    // A copy is made only where an old part takes the place of a new one.
    if (Object.is(keep, part)) continue;
    kept ??= { ...now };
    kept[key] = keep;
  }
  if (same) return before;
  return kept ?? now;
}

type Parts = Readonly<Record<string, unknown>>;

/** Lists and plain objects; all that the engine answers is made of them. */
function isCompound(value: unknown): value is Parts {
  return typeof value === 'object' && value !== null && !ArrayBuffer.isView(value);
}
