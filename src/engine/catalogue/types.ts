import type { Dimension } from '../../../shared/design/fields.ts';

export type StationKey =
  | 'source'
  | 'converter'
  | 'amplifier'
  | 'device'
  | 'sink'
  | 'surroundings'
  | 'service'
  | 'people';

/**
 * One named quantity of the solution. Declared once; the working on the page, the command line, the files and the
 * print all read it. `formula` is an expression over other catalogue keys (per-service keys resolve to the same
 * service first), which a test evaluates with units. Where the number comes from a search, a table or a series,
 * there is no closed expression and `method` says in words how it is found.
 */
export interface QuantityEntry {
  readonly key: string;
  readonly symbol: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly station: StationKey;
  /** One value for each service, keyed "ssb.KEY", "cw.KEY", "keyDown.KEY". */
  readonly perService?: boolean;
  /** Entered by the builder (echoed so that formulas can be followed). */
  readonly given?: boolean;
  readonly formula?: string;
  readonly method?: string;
  /** Key into the table of sources; absent for given values and for definitions. */
  readonly source?: string;
}
