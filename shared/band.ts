import type { BurnRow, Caution, Label, Service, Solution, State, Verdict } from './solution.ts';

/** Edges of a 90 % band: 5th and 95th percentile. `high` is null where it has no end (a hold time without limit). */
export interface Edges {
  readonly low: number;
  readonly high: number | null;
}

/** How much one unknown has to do with the spread of a temperature: a service's junction, or the metal. */
export interface UnknownShare {
  readonly key: string;
  readonly label: string;
  readonly advice: string;
  /** Field to go to, if there is one. */
  readonly path: string | null;
  /** Share of the variance, 0..1. */
  readonly share: number;
  /** What its own 90 % half-width moves the temperature by, K; positive when more of it heats. */
  readonly effect: number;
}

/** A curve's edges; x as in the curve it belongs to. */
export interface BandCurve {
  readonly x: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** What people are told when the hottest place is taken at the pessimistic edge. */
export interface PeopleAtEdge {
  readonly cautions: readonly Caution[];
  readonly labels: readonly Label[];
  readonly burns: readonly BurnRow[];
  /** Named quantities that stand for the pessimistic edge anyway, by the band in place of a usual distance. */
  readonly values: Readonly<Record<string, number>>;
}

/**
 * A solution in which what is pessimistic follows its band, where it has one: one figure of the metal wherever it is
 * read, in quantities, cautions, labels and burns.
 */
export function solutionAtEdge(solution: Solution, band: Band | null | undefined): Solution {
  if (!band?.people) return solution;
  const { values, ...told } = band.people;
  return { ...solution, ...told, values: { ...solution.values, ...values } };
}

/** The 90 % band of a design's results, from samples of everything that is not exactly known. */
export interface Band {
  readonly samples: number;
  readonly seed: number;
  /** By catalogue key as in `Solution.values`. */
  readonly edges: Readonly<Record<string, Edges>>;
  readonly states: Readonly<Partial<Record<Service, State>>>;
  /** Verdicts of services and people with the band in them. */
  readonly verdicts: readonly Verdict[];
  /** Cautions, labels and burns with the touchable temperature at the edge of its band; null without one. */
  readonly people: PeopleAtEdge | null;
  /** Most important first, by service. */
  readonly ranking: Readonly<Partial<Record<Service, readonly UnknownShare[]>>>;
  /** The same for the hottest place a hand can touch; empty without one. */
  readonly metalRanking: readonly UnknownShare[];
  /** Junction temperature against duty. */
  readonly duty: Readonly<Partial<Record<Service, BandCurve>>>;
  /** Sink resistance against heat; null without a sink. */
  readonly rating: BandCurve | null;
  /** Share of samples that ran away, by service. */
  readonly runaway: Readonly<Partial<Record<Service, number>>>;
  /** The sink carries a correction by bench runs. */
  readonly measured: boolean;
}

export interface BandOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** Called now and then with the share done. */
  readonly onProgress?: (share: number) => void;
  /** Asked now and then; true stops the work. */
  readonly cancelled?: () => boolean;
}
