import { type Accessor, createEffect, createSignal, on } from 'solid-js';
import { defaultUnit, offeredUnits, type UnitSystem } from '../../engine/quantity/units.ts';
import type { NumberField } from './fields.ts';
import { keepText, parseJson, readText, type TextStore } from './storage.ts';

export type Theme = 'auto' | 'light' | 'dark';

interface Kept {
  readonly theme: Theme;
  readonly system: UnitSystem;
  /** Units chosen field by field. */
  readonly units: Readonly<Record<string, string>>;
}

export interface Preferences {
  readonly theme: Accessor<Theme>;
  readonly setTheme: (theme: Theme) => void;
  readonly system: Accessor<UnitSystem>;
  /** Chooses the family and forgets what was chosen field by field. */
  readonly setSystem: (system: UnitSystem) => void;
  readonly unitOf: (path: string, spec: NumberField) => string;
  readonly setUnit: (path: string, unit: string) => void;
}

const key = 'heat-and-rail.preferences';
const usual: Kept = { theme: 'auto', system: 'metric', units: {} };

function readKept(store: TextStore | undefined): Kept {
  const raw = parseJson(readText(store, key)) as Partial<Kept> | null | undefined;
  if (typeof raw !== 'object' || raw === null) return usual;
  return {
    theme: raw.theme === 'light' || raw.theme === 'dark' ? raw.theme : 'auto',
    system: raw.system === 'inch' ? 'inch' : 'metric',
    units: typeof raw.units === 'object' && raw.units !== null ? raw.units : {},
  };
}

/** Light or dark, metric or inch, and the unit of each field. Kept in this browser only. */
export function createPreferences(store: TextStore | undefined): Preferences {
  const [kept, setKept] = createSignal(readKept(store));
  const change = (part: Partial<Kept>) => setKept((before) => ({ ...before, ...part }));
  createEffect(on(kept, (now) => keepText(store, key, JSON.stringify(now)), { defer: true }));
  createEffect(() => showTheme(kept().theme));
  return {
    theme: () => kept().theme,
    setTheme: (theme) => change({ theme }),
    system: () => kept().system,
    setSystem: (system) => change({ system, units: {} }),
    unitOf: (path, spec) => {
      const chosen = kept().units[path];
      const known = offeredUnits(spec.dimension).some((unit) => unit.symbol === chosen);
      return chosen !== undefined && known ? chosen : defaultUnit(spec, kept().system);
    },
    setUnit: (path, unit) => change({ units: { ...kept().units, [path]: unit } }),
  };
}

function showTheme(theme: Theme): void {
  const root = document.documentElement;
  if (theme === 'auto') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', theme);
}
