/** JSON with the keys of every object in order: two values that say the same give the same text. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(ordered(value));
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  const tree = value as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    Object.keys(tree)
      .sort()
      .map((key) => [key, ordered(tree[key])]),
  );
}
