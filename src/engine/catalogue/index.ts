import { amplifierQuantities } from './amplifier.ts';
import { benchQuantities } from './bench.ts';
import { converterQuantities } from './converter.ts';
import { heatQuantities } from './heat.ts';
import { peopleQuantities } from './people.ts';
import { serviceQuantities } from './service.ts';
import { stageQuantities } from './stage.ts';
import { supplyQuantities } from './supply.ts';
import { supplyDetailQuantities } from './supplyDetail.ts';
import type { QuantityEntry } from './types.ts';

export type { QuantityEntry, StationKey } from './types.ts';

const entries = [
  ...supplyQuantities,
  ...supplyDetailQuantities,
  ...converterQuantities,
  ...amplifierQuantities,
  ...stageQuantities,
  ...serviceQuantities,
  ...heatQuantities,
  ...benchQuantities,
  ...peopleQuantities,
];

/** Every named quantity, by key. */
export const quantities: Readonly<Record<string, QuantityEntry>> = Object.fromEntries(
  entries.map((entry) => [entry.key, entry]),
);

/** The same in the order in which energy flows, for lists and tables. */
export const quantityOrder: readonly string[] = entries.map((entry) => entry.key);

/** "ssb.junctionPeak" -> its catalogue entry. */
export function entryFor(valueKey: string): QuantityEntry | undefined {
  const dot = valueKey.indexOf('.');
  return quantities[dot < 0 ? valueKey : valueKey.slice(dot + 1)];
}
