/**
 * A remark that travels with a result: data, not prose alone, so that page, print and command line say the
 * same thing and a test can ask for the key.
 */
export interface Note {
  /** Stable name of the remark, for tests and for linking. */
  readonly key: string;
  /** What kind of doubt it is. */
  readonly kind: 'outside validity' | 'from memory' | 'assumed' | 'limit' | 'information';
  /** One sentence a builder understands, numbers already written into it. */
  readonly sentence: string;
  /** The numbers the sentence speaks of, SI. */
  readonly numbers?: Readonly<Record<string, number>>;
}

/** Why there is no result. */
export interface Reason {
  readonly key: string;
  readonly sentence: string;
  readonly numbers?: Readonly<Record<string, number>>;
}

export interface Success<T> {
  readonly ok: true;
  readonly value: T;
  readonly notes: readonly Note[];
}

export interface Failure {
  readonly ok: false;
  readonly reason: Reason;
}

/** What every model that can fail returns: a value with notes, or a named reason. Never NaN, never a throw. */
export type Outcome<T> = Success<T> | Failure;

export function success<T>(value: T, notes: readonly Note[] = []): Success<T> {
  return { ok: true, value, notes };
}

export function failure(key: string, sentence: string, numbers?: Readonly<Record<string, number>>): Failure {
  return {
    ok: false,
    reason: numbers ? { key, sentence, numbers } : { key, sentence },
  };
}

export function note(
  kind: Note['kind'],
  key: string,
  sentence: string,
  numbers?: Readonly<Record<string, number>>,
): Note {
  return numbers ? { key, kind, sentence, numbers } : { key, kind, sentence };
}
