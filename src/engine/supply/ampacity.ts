import ampacityTable from '../../../reference-data/ampacity.json';
import { type Note, note } from '../../../shared/outcome.ts';
import { type Conductor, conductorBySize } from './conductor.ts';
import { modelAmpacity, togetherFactor } from './wireTemperature.ts';

const zeroCelsius = 273.15;

/** Share of the modelled ampacity that keeps the model inside the free-air table of NFPA 70: 1/1.135. Own choice. */
export const modelShare = 0.88;

export interface Ampacity {
  /** Allowed current, A: the smaller of table and model. */
  readonly limit: number;
  /** What the published table allows here, A; null where it has no row or no column. */
  readonly table: number | null;
  /** 0.88 times the modelled current, A. */
  readonly model: number;
  readonly notes: readonly Note[];
}

export interface AmpacityTable {
  readonly ambient: number;
  readonly insulation: readonly number[];
  readonly rows: Readonly<Record<string, readonly (number | null)[]>>;
}

/** The published tables, temperatures in °C as printed. */
export const ampacityTables = {
  boat: ampacityTable.boat as AmpacityTable,
  freeAir: ampacityTable.freeAir as AmpacityTable,
  cable: ampacityTable.cable as AmpacityTable,
  militaryWire: ampacityTable.militaryWire as AmpacityTable,
  crowdedBundle: ampacityTable.crowdedBundle as AmpacityTable,
} as const;

/**
 * Factor that carries an ampacity from the ambient of its table to another: √((Tc − Ta')/(Tc − Ta)).
 *
 * limit, ambient, tableAmbient: K. Zero when the ambient reaches the limit of the insulation.
 * Agrees with the printed factors of 33 CFR 183.425 and NFPA 70 within 0.007, but for the 1.00 printed for 200 °C insulation.
 */
export function ambientFactor(limit: number, ambient: number, tableAmbient: number): number {
  if (ambient >= limit) return 0;
  if (tableAmbient >= limit) return 0;
  return Math.sqrt((limit - ambient) / (limit - tableAmbient));
}

/**
 * Ampacity printed in a table for a gauge size, at the table's own ambient, A.
 *
 * The column is the warmest one that is not above the limit of the insulation; null when there is no row, or the
 * limit lies below the first column. limit: K.
 */
export function tabulatedAmpacity(
  table: AmpacityTable,
  gauge: number,
  limit: number,
): { readonly current: number; readonly column: number } | null {
  const row = table.rows[String(gauge)];
  if (!row) return null;
  let found: { current: number; column: number } | null = null;
  for (let index = 0; index < table.insulation.length; index++) {
    const column = table.insulation[index]! + zeroCelsius;
    const current = row[index];
    // Half a kelvin of slack: 105 °C typed as 378 K still finds its column.
    if (typeof current === 'number' && column <= limit + 0.5) found = { current, column };
  }
  return found;
}

/**
 * Allowed current of a supply wire, A: min(table, 0.88 · model).
 *
 * Table: 33 CFR 183.425 table 5 for gauge sizes, times the ambient factor and the factor for wires that lie together.
 * Model: heat balance of the wire in still air (`modelAmpacity`). Metric sizes have no published row here and use the
 * model alone. The two wires of a supply count as 2, for which both use the model's 0.87.
 *
 * limit: insulation limit, K; ambient: K; together: loaded wires side by side; pressure: Pa.
 */
export function ampacity(
  conductor: Conductor,
  limit: number,
  ambient: number,
  together = 2,
  pressure?: number,
): Ampacity {
  const surroundings = { ambient, together, ...(pressure === undefined ? {} : { pressure }) };
  const model = modelShare * modelAmpacity(conductor, limit, surroundings);
  if (limit <= ambient) {
    return { limit: 0, table: null, model: 0, notes: [hotterThanInsulation(limit, ambient)] };
  }
  if (conductor.system === 'metric') {
    return { limit: model, table: null, model, notes: [noPublishedRow(conductor)] };
  }
  const printed = tabulatedAmpacity(ampacityTables.boat, conductor.number, limit);
  if (!printed) return { limit: model, table: null, model, notes: [noPublishedRow(conductor)] };
  const factor = ambientFactor(printed.column, ambient, ampacityTables.boat.ambient + zeroCelsius);
  const table = printed.current * factor * tableTogetherFactor(together) * cladFactor(conductor);
  return { limit: Math.min(table, model), table, model, notes: [] };
}

/** A wire of another metal gives off the same heat: its current falls with the root of its resistance. */
function cladFactor(conductor: Conductor): number {
  if (conductor.material !== 'copperClad') return 1;
  return Math.sqrt(conductorBySize(conductor.size).resistancePerLength / conductor.resistancePerLength);
}

/** Factor for wires side by side: the model's for a pair, the printed note 2 of 33 CFR 183.425 from three wires on. */
export function tableTogetherFactor(together: number): number {
  if (together <= 2) return togetherFactor(together);
  const row = ampacityTable.boat.together.find(
    (entry) => together >= entry.from && (entry.to === null || together <= entry.to),
  );
  return row ? row.factor : togetherFactor(together);
}

function noPublishedRow(conductor: Conductor): Note {
  return note(
    'information',
    'ampacityByModel',
    `${conductor.size.replace('mm2', 'mm²')} has no row in the published table: its allowed current is 0.88 times that of the heat-balance model.`,
  );
}

function hotterThanInsulation(limit: number, ambient: number): Note {
  return note(
    'limit',
    'ambientAboveInsulation',
    'The air is as warm as the insulation allows the wire to be: no current is left.',
    {
      limit,
      ambient,
    },
  );
}
