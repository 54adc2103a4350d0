import fuseTable from '../../../reference-data/fuses.json';
import type { FuseKind } from '../../../shared/design/supplyChoices.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';

const zeroCelsius = 273.15;

/** Opening time of a fuse at a percentage of its rating, s; `null` where no bound is given. */
export interface FuseGate {
  readonly percent: number;
  readonly shortest: number | null;
  readonly longest: number | null;
}

export interface FuseType {
  readonly kind: FuseKind;
  /** Standard ratings, A, rising. */
  readonly ratings: readonly number[];
  /** `iec`: meant to carry its rating; `blade`: run at 75 %. */
  readonly rule: 'iec' | 'blade';
  readonly gates: readonly FuseGate[];
  /** Gates of the larger ratings, where the maker's figures differ. */
  readonly gatesAbove30: readonly FuseGate[] | null;
  /** V DC; null where only an AC voltage is stated. */
  readonly voltage: number | null;
  /** DC breaking capacity, A; null where none is published. */
  readonly breakingCapacity: number | null;
  /** Ω by rating, where known. */
  readonly coldResistance: Readonly<Record<string, number>>;
  /** I² t that melts it, A² s by rating, where known. */
  readonly meltingIntegral: Readonly<Record<string, number>>;
  /** Keys into the sources of the supply tables. */
  readonly source: string;
  readonly gatesSource: string;
}

/** Share of its rating at which a blade or UL fuse is run at 25 °C. Fuse guides. */
export const bladeShare = 0.75;
/** Share for IEC 60127 fuses, which are meant for their rating at room temperature. Own choice below 100 %. */
export const iecShare = 0.9;
/** Peak over rating that a fuse sized by the average may see. Own choice, below the 135 % gate. */
export const peakShare = 1.1;
/** Relative slack before the next rating is taken, so that 20.000000001 A still finds the 20 A fuse. */
const ratingSlack = 1e-9;

type FuseRow = Omit<FuseType, 'kind' | 'breakingCapacity'> & { readonly breakingCapacity: unknown };

function readTypes(): Readonly<Record<FuseKind, FuseType>> {
  const rows = fuseTable.kinds as unknown as Readonly<Record<FuseKind, FuseRow>>;
  const types: Partial<Record<FuseKind, FuseType>> = {};
  for (const kind of Object.keys(rows) as FuseKind[]) {
    const row = rows[kind];
    // A breaking capacity printed for AC only is text in the table and says nothing about a battery.
    const breakingCapacity = typeof row.breakingCapacity === 'number' ? row.breakingCapacity : null;
    types[kind] = { ...row, kind, breakingCapacity };
  }
  return types as Record<FuseKind, FuseType>;
}

const types = readTypes();

/** The data of a kind of fuse. */
export function fuseType(kind: FuseKind): FuseType {
  return types[kind];
}

/**
 * Share of its rating that a fuse carries at an ambient temperature, over that at 20 °C.
 *
 * Linear between 1.00 at 20 °C, 0.85 at 65, 0.75 at 85, 0.625 at 110 and 0.55 at 125 °C, held outside.
 * Source: maker data of a 40 A large blade fuse; other kinds differ, use as a default. ambient: K.
 */
export function fuseDerating(ambient: number): number {
  const { temperature, factor } = fuseTable.derating;
  const celsius = ambient - zeroCelsius;
  if (celsius <= temperature[0]!) return factor[0]!;
  for (let index = 1; index < temperature.length; index++) {
    if (celsius > temperature[index]!) continue;
    const share = (celsius - temperature[index - 1]!) / (temperature[index]! - temperature[index - 1]!);
    return factor[index - 1]! + share * (factor[index]! - factor[index - 1]!);
  }
  return factor[factor.length - 1]!;
}

export interface FuseLoad {
  readonly kind: FuseKind;
  /** Root mean square over the longest over, A. */
  readonly rmsCurrent: number;
  /** At the peak of the envelope, A. */
  readonly pepCurrent: number;
  /** The transmitter can never send a carrier. */
  readonly ssbOnly: boolean;
  /** K */
  readonly ambient: number;
}

export interface PickedFuse {
  /** The standard rating, A. */
  readonly rating: number;
  /** The least rating the rule asks for, A. */
  readonly needed: number;
  readonly derating: number;
}

/**
 * Least rating that carries the load, A.
 *
 * In = I_PEP/(s kT), or for a transmitter that never sends a carrier max(I_rms/(s kT), I_PEP/(1.1 kT)); s = 0.75 for
 * blade and UL fuses, 0.9 for IEC 60127; kT from `fuseDerating`.
 */
export function neededRating(load: FuseLoad): number {
  const share = fuseType(load.kind).rule === 'iec' ? iecShare : bladeShare;
  const derating = fuseDerating(load.ambient);
  if (!load.ssbOnly) return load.pepCurrent / (share * derating);
  return Math.max(load.rmsCurrent / (share * derating), load.pepCurrent / (peakShare * derating));
}

/**
 * The standard rating for a load: the first that is not below the needed one by more than 1e-9 of it.
 *
 * Errors: `noFuseRating` when the kind is not made that large.
 */
export function pickFuse(load: FuseLoad): Outcome<PickedFuse> {
  const type = fuseType(load.kind);
  const needed = neededRating(load);
  const rating = type.ratings.find((candidate) => candidate >= needed * (1 - ratingSlack));
  if (rating === undefined) {
    const largest = type.ratings[type.ratings.length - 1]!;
    return failure(
      'noFuseRating',
      `This kind of fuse is made up to ${largest} A and at least ${needed.toPrecision(3)} A are needed: choose a larger kind.`,
      { needed, largest },
    );
  }
  return success({ rating, needed, derating: fuseDerating(load.ambient) }, pickNotes(load));
}

function pickNotes(load: FuseLoad): Note[] {
  if (load.kind === 'bladeHigh' || load.ambient <= 25 + zeroCelsius) return [];
  return [
    note(
      'assumed',
      'fuseDeratingBorrowed',
      'The derating with temperature is that of a large blade fuse; other kinds differ a little.',
    ),
  ];
}

/** Bounds of the opening time at a current; `null` means no bound on that side. */
export interface GateBand {
  /** Current over rating. */
  readonly multiple: number;
  /** It holds at least so long, s; null when nothing is promised. */
  readonly shortest: number | null;
  /** It opens at the latest after so long, s; null when it may never open. */
  readonly longest: number | null;
}

/** Gates of a kind of fuse at a rating, rising; the larger blade fuses have their own. */
export function fuseGates(kind: FuseKind, rating: number): readonly FuseGate[] {
  const type = fuseType(kind);
  return type.gatesAbove30 !== null && rating > 30 ? type.gatesAbove30 : type.gates;
}

/**
 * Band of opening times of a fuse at a current, from the gates at or around it; never interpolated.
 *
 * Between two gates the fuse opens not sooner than the upper gate allows and not later than the lower one demands.
 * Below the first gate it carries the current.
 */
export function gateBand(kind: FuseKind, rating: number, current: number): GateBand {
  const gates = fuseGates(kind, rating);
  const multiple = current / rating;
  const percent = multiple * 100;
  let shortest: number | null = null;
  let longest: number | null = null;
  let foundShortest = false;
  for (const gate of gates) {
    const reached = percent >= gate.percent * (1 - ratingSlack);
    if (reached && gate.longest !== null) longest = gate.longest;
    const notBelow = percent <= gate.percent * (1 + ratingSlack);
    if (notBelow && !foundShortest && gate.shortest !== null) {
      shortest = gate.shortest;
      foundShortest = true;
    }
  }
  return { multiple, shortest, longest };
}

/** A gate band in words: "between 0.15 and 5 s". */
export function gateBandWords(band: GateBand): string {
  const { shortest, longest } = band;
  if (shortest !== null && longest !== null) {
    return shortest === longest
      ? `in ${duration(longest)}`
      : `between ${duration(shortest)} and ${duration(longest)}`;
  }
  if (longest !== null) return `within ${duration(longest)}`;
  if (shortest !== null) return `not before ${duration(shortest)}, and perhaps never`;
  return 'at no promised time';
}

/** A time as people say it; a time in seconds keeps its figures. */
function duration(seconds: number): string {
  if (seconds >= 7200) return `${Number((seconds / 3600).toPrecision(2))} h`;
  if (seconds >= 600) return `${Number((seconds / 60).toPrecision(2))} min`;
  return `${Number(seconds.toPrecision(2))} s`;
}

/** Melting I² t grows with the rating to this power: 4100 to 8500 A² s from 30 to 40 A in one maker's row. */
const meltingExponent = 2.5;

/**
 * I² t that melts a fuse, A² s: the tabulated rating, or scaled with the rating to the power 2.5 from the nearest one.
 *
 * null where no figure of the kind is at hand. rating: A. Source: maker data of large blade fuses; scaling own choice.
 */
export function fuseMeltingIntegral(kind: FuseKind, rating: number): number | null {
  const known = nearestRating(fuseType(kind).meltingIntegral, rating);
  return known ? known.value * (rating / known.rating) ** meltingExponent : null;
}

function nearestRating(
  table: Readonly<Record<string, number>>,
  rating: number,
): { readonly rating: number; readonly value: number } | null {
  let nearest: { rating: number; value: number } | null = null;
  for (const [key, value] of Object.entries(table)) {
    const known = Number(key);
    if (!nearest || Math.abs(known - rating) < Math.abs(nearest.rating - rating)) {
      nearest = { rating: known, value };
    }
  }
  return nearest;
}

/**
 * Cold resistance of a fuse, Ω, where known: the tabulated rating, or scaled as 1/rating from the nearest one.
 *
 * null when no figure of this kind is at hand. rating: A.
 */
export function fuseResistance(kind: FuseKind, rating: number): number | null {
  const known = nearestRating(fuseType(kind).coldResistance, rating);
  return known ? (known.value * known.rating) / rating : null;
}
