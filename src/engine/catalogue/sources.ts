import amplifier from '../../../reference-data/sources-amplifier.json' with { type: 'json' };
import coupling from '../../../reference-data/sources-coupling.json' with { type: 'json' };
import hazard from '../../../reference-data/sources-hazard.json' with { type: 'json' };
import heat from '../../../reference-data/sources-heat.json' with { type: 'json' };
import supply from '../../../reference-data/sources-supply.json' with { type: 'json' };

/** Where a formula or a table comes from. */
export interface Source {
  readonly title: string;
  /** Equation, table, section. */
  readonly part?: string;
  readonly year?: number | string | null;
  /** primary | secondary | from memory | common practice | own choice | own computation */
  readonly status: string;
}

/** Every source, by key. A key that two tables share must mean the same thing; a test checks it. */
export const sources: Readonly<Record<string, Source>> = {
  ...amplifier,
  ...heat,
  ...supply,
  ...hazard,
  ...coupling,
};
