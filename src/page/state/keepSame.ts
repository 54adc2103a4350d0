/**
 * The newer value, with every part that is as it was before taken from before. What reads such a part sees that nothing
 * has changed and draws nothing anew, although each answer of the engine comes as a copy.
 */
export function keepSame<T>(before: unknown, now: T): T {
  if (Object.is(before, now)) return now;
  if (!isCompound(before) || !isCompound(now) || Array.isArray(before) !== Array.isArray(now)) return now;
  const kept: Record<string, unknown> = Array.isArray(now) ? ([] as never) : {};
  const keys = Object.keys(now);
  let same = keys.length === Object.keys(before).length;
  for (const key of keys) {
    kept[key] = keepSame(before[key], now[key]);
    same &&= key in before && Object.is(kept[key], before[key]);
  }
  return (same ? before : kept) as T;
}

/** Lists and plain objects; all that the engine answers is made of them. */
function isCompound(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !ArrayBuffer.isView(value);
}
