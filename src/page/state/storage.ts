/** What the page needs of localStorage, so that a test or a private window can stand in. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

/** The browser's store, or undefined where even touching it is forbidden. */
export function browserStore(): TextStore | undefined {
  try {
    return globalThis.localStorage;
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

/** Writes a text and says whether it is kept: a full or blocked store must be told to the builder. */
export function keepText(store: TextStore | undefined, key: string, text: string): boolean {
  if (store === undefined) return false;
  try {
    store.setItem(key, text);
    return true;
  } catch {
    return false;
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
