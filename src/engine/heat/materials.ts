import alloysTable from '../../../reference-data/alloys.json' with { type: 'json' };
import finishesTable from '../../../reference-data/finishes.json' with { type: 'json' };
import type { SinkInput } from '../../../shared/design/schema.ts';

export interface Metal {
  /** kg/m³ */
  readonly density: number;
  /** J/(kg K) */
  readonly specificHeat: number;
  /** W/(m K) */
  readonly conductivity: number;
}

/** Density, specific heat and conductivity of the metals of sinks near 300 K. Source: reference-data/alloys.json. */
export function metalOf(alloy: SinkInput['alloy']): Metal {
  return alloysTable.rows[alloy];
}

/** The conductivities that should hold nine of ten sinks of an alloy, W/(m K). */
export function conductivityRange(alloy: SinkInput['alloy']): {
  readonly low: number;
  readonly high: number;
} {
  const { range } = alloysTable.rows[alloy];
  return { low: range[0]!, high: range[1]! };
}

/**
 * Total hemispherical emissivity of a sink's surface. Bare copper has its own rows; a coating hides the metal.
 *
 * @param finish as in the design
 * @param ownEmissivity used with the finish "own"
 * Source: reference-data/finishes.json.
 */
export function emissivityOf(
  finish: SinkInput['finish'],
  alloy: SinkInput['alloy'],
  ownEmissivity: number,
): number {
  return finish === 'own' ? ownEmissivity : rowOf(finish, alloy).emissivity;
}

function rowOf(finish: Exclude<SinkInput['finish'], 'own'>, alloy: SinkInput['alloy']) {
  const rows = finishesTable.rows;
  if (alloy === 'copper' && finish === 'bare') return rows.copperBare;
  if (alloy === 'copper' && finish === 'weathered') return rows.copperWeathered;
  return rows[finish];
}

/** The emissivities that should hold nine of ten surfaces of a finish; the own value alone for "own". */
export function emissivityRange(
  finish: SinkInput['finish'],
  alloy: SinkInput['alloy'],
  ownEmissivity: number,
): { readonly low: number; readonly high: number } {
  if (finish === 'own') return { low: ownEmissivity, high: ownEmissivity };
  const { range } = rowOf(finish, alloy);
  return { low: range[0]!, high: range[1]! };
}
