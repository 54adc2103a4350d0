import type { Note, Outcome } from './outcome.ts';

/** A run against the model, K; the sensor's place is in all three. */
export interface BenchCurve {
  /** s */
  readonly time: readonly number[];
  readonly measured: readonly number[];
  /** By the estimate from the drawing. */
  readonly before: readonly number[];
  /** By the corrected sink. */
  readonly after: readonly number[];
  /** Readings left out as outliers, by their place in the log. */
  readonly rejected: readonly number[];
}

/** What one run says alone. */
export interface BenchFinding {
  readonly filmFactor: number;
  /** Standard deviation of ln(film factor). */
  readonly uncertainty: number;
  /** J/K; null for steady readings, which do not show it. */
  readonly heatCapacity: number | null;
  readonly capacityUncertainty: number | null;
  /** Length of the run in time constants; null for steady readings. */
  readonly lengthOverTime: number | null;
  /** Root mean square of what the fit leaves, K; null for steady readings. */
  readonly scatter: number | null;
  /** False when it was left out of the correction. */
  readonly counts: boolean;
}

export interface BenchRunReport {
  readonly found: Outcome<BenchFinding>;
  readonly curve: BenchCurve | null;
}

/** All runs together, weighed with the estimate. */
export interface BenchReport {
  readonly runs: readonly BenchRunReport[];
  /** The estimate before any run: standard deviation of ln(film factor), heat capacity, J/K, and its doubt. */
  readonly before: {
    readonly uncertainty: number;
    readonly heatCapacity: number;
    readonly capacityUncertainty: number;
  };
  readonly filmFactor: number;
  readonly uncertainty: number;
  /** J/K */
  readonly heatCapacity: number;
  readonly capacityUncertainty: number;
  /** Runs that count. */
  readonly counted: number;
  readonly notes: readonly Note[];
}
