/** What the page needs of localStorage, so that a test or a private window can stand in. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
  keys(): readonly string[];
}

/** Why the browser did not keep a text. */
export type Trouble = 'full' | 'blocked';

/** The browser's store, or undefined where even touching it is forbidden. */
export function browserStore(): TextStore | undefined {
  return wrap(() => globalThis.localStorage);
}

/** The same for this tab alone, until it is closed. */
export function tabStore(): TextStore | undefined {
  return wrap(() => globalThis.sessionStorage);
}

function wrap(get: () => Storage | null): TextStore | undefined {
  try {
    const storage = get();
    if (!storage) return undefined;
    return {
      getItem: (key) => storage.getItem(key),
      setItem: (key, value) => storage.setItem(key, value),
      removeItem: (key) => storage.removeItem(key),
      keys: () => Object.keys(storage),
    };
  } catch {
    return undefined;
  }
}

/** Reads a text; a store that is missing or refuses is the same as an empty one. */
export function readText(store: TextStore | undefined, key: string): string | null {
  try {
    return store?.getItem(key) ?? null;
  } catch {
    return null;
  }
}

/** Writes a text; says what stood in the way, or null once it is kept. */
export function keepText(store: TextStore | undefined, key: string, text: string): Trouble | null {
  if (store === undefined) return 'blocked';
  try {
    store.setItem(key, text);
    return null;
  } catch (error) {
    const name = (error as { name?: unknown } | null)?.name;
    return typeof name === 'string' && /quota/i.test(name) ? 'full' : 'blocked';
  }
}

/** Takes a text away; a store that refuses keeps it. */
export function dropText(store: TextStore | undefined, key: string): void {
  try {
    store?.removeItem(key);
  } catch {
    // Nothing can be done, and nothing is lost by it.
  }
}

/** Every key that begins so. */
export function keysBelow(store: TextStore | undefined, beginning: string): readonly string[] {
  try {
    return (store?.keys() ?? []).filter((key) => key.startsWith(beginning));
  } catch {
    return [];
  }
}

export function parseJson(text: string | null): unknown {
  if (text === null) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
