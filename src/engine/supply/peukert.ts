import batteryTable from '../../../reference-data/batteries.json';

export type BatteryKind = keyof typeof batteryTable.kinds;

export interface BatteryFigures {
  /** Peukert's exponent: usual value and range. */
  readonly exponent: { readonly usual: number; readonly from: number; readonly to: number };
}

/** Usual exponent of a kind of battery and its published range. */
export function batteryFigures(kind: BatteryKind): BatteryFigures {
  return batteryTable.kinds[kind];
}

/**
 * Time a battery lasts at a constant current, h: t = H (C/(I H))^k.
 *
 * capacity: Ah at the rate of `ratedHours` (lead-acid normally 20 h); current: A, > 0; exponent k: 1 for an ideal one.
 * The form with the capacity at 1 A uses another capacity and is not this one. Doubt ±30 %.
 */
export function runTime(capacity: number, ratedHours: number, current: number, exponent: number): number {
  return ratedHours * (capacity / (current * ratedHours)) ** exponent;
}

/** Part of a cycle at a constant current. */
export interface CurrentShare {
  /** A */
  readonly current: number;
  /** Of the time, all shares together 1. */
  readonly share: number;
}

/** Mean current over shares of time, A: on the hopeful side for the run time when k > 1. */
export function meanCurrent(shares: readonly CurrentShare[]): number {
  let sum = 0;
  for (const { current, share } of shares) sum += share * current;
  return sum;
}

/** Constant current that empties the battery as fast by Peukert's law, A: (mean of I^k)^(1/k), the cautious figure. */
export function equivalentCurrent(shares: readonly CurrentShare[], exponent: number): number {
  let sum = 0;
  for (const { current, share } of shares) sum += share * current ** exponent;
  return sum ** (1 / exponent);
}
