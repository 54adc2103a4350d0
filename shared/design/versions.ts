import { designVersion } from './schema.ts';

type Raw = Record<string, unknown>;

/** Raises a raw design by one version; entry n turns version n into n + 1. */
export type Steps = Readonly<Record<number, (raw: Raw) => Raw>>;

/** None is needed yet: there is one version only. */
const steps: Steps = {};

export type Migrated =
  | { readonly ok: true; readonly raw: Raw }
  | { readonly ok: false; readonly message: string };

/**
 * Raises an older raw design to the present version, step by step.
 * Fails when the version is missing, not a whole number, newer than this build or has no way up.
 */
export function migrate(raw: Raw, present = designVersion, ways: Steps = steps): Migrated {
  const version = raw.version;
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return {
      ok: false,
      message: `version is missing or not a whole number; this sheet writes version ${present}`,
    };
  }
  if (version > present) {
    return {
      ok: false,
      message: `version ${version} is newer than this sheet, which reads up to version ${present}; open it with a newer copy of the sheet`,
    };
  }
  let current = raw;
  for (let v = version; v < present; v += 1) {
    const step = ways[v];
    if (!step) return { ok: false, message: `version ${version} is unknown to this sheet` };
    current = { ...step(current), version: v + 1 };
  }
  return { ok: true, raw: current };
}
