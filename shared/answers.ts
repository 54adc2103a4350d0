import type { Dimension } from './design/fields.ts';
import type { Caution, Service, State, Verdict } from './solution.ts';

export type VerdictKey = Verdict['key'];

/** One place of the design and what would stand there: what a remedy changes. */
export interface Edit {
  /** Dotted path such as "sink.length", or of a list such as "device.places". */
  readonly path: string;
  readonly value: unknown;
}

/** Which figure counts: the nominal one, or the pessimistic edge of its 90 % band where there is a doubt of it. */
export type Edge = 'nominal' | 'pessimistic';

/** What a remedy costs to do, least first. */
export const efforts = ['settings', 'bench', 'parts', 'metalwork'] as const;
export type Effort = (typeof efforts)[number];

export const effortWords: Readonly<Record<Effort, string>> = {
  settings: 'a setting',
  bench: 'an hour at the bench',
  parts: 'new parts',
  metalwork: 'metalwork',
};

/** What a remedy does to one verdict. */
export interface VerdictEffect {
  readonly key: VerdictKey;
  readonly name: string;
  readonly before: State;
  readonly after: State;
  /** The line as it would read. */
  readonly headline: string;
  readonly change: 'better' | 'worse' | 'same';
  /** By how much, where there is a number: "31 K more margin". Empty otherwise. */
  readonly gain: string;
}

/** One change to the design with the computed result if it were made; or two together. */
export interface Remedy {
  readonly key: string;
  /** What to do, with the figure: "Transmit 31 % of the time instead of 90 %". */
  readonly title: string;
  readonly effort: Effort;
  readonly edits: readonly Edit[];
  /** It makes the verdict it is offered for fine. */
  readonly enough: boolean;
  /** Gain of that verdict in its own measure (K, complaints), for ranking. */
  readonly gain: number;
  readonly gainWords: string;
  /** What is still missing, in words; empty when it is enough. */
  readonly missing: string;
  readonly effects: readonly VerdictEffect[];
  readonly sideEffects: readonly string[];
  /** Cautions that were not there before or have become graver. */
  readonly newCautions: readonly Caution[];
}

/** Whether a change, two together, or nothing at all makes the verdict fine. */
export type Reach = 'fits' | 'one' | 'pair' | 'nothing';

export interface RemedyList {
  /** The verdict they are offered for. */
  readonly verdict: VerdictKey;
  readonly name: string;
  readonly state: State;
  readonly edge: Edge;
  /** Which figure decides and why, in a sentence. */
  readonly figures: string;
  /** How far it is from fine now, in words; empty when it is fine. */
  readonly missing: string;
  readonly reach: Reach;
  /** What the list comes to, in a sentence or two. */
  readonly sentence: string;
  /** Best first. */
  readonly remedies: readonly Remedy[];
  /** Two together, where no single one is enough. */
  readonly pairs: readonly Remedy[];
}

/** What a found quantity should be. */
export interface Target {
  /** Key of a found quantity such as "keyDown.safeDuty". */
  readonly quantity: string;
  /** SI. */
  readonly value: number;
}

/** One given value as the unknown, one or more found quantities as targets. */
export interface UnknownQuestion {
  readonly path: string;
  readonly targets: readonly Target[];
}

/** A value of the unknown that meets the target. */
export interface FoundValue {
  /** SI number, or the key of a choice such as a wire size. */
  readonly value: number | string;
  /** The value as it is written beside its field. */
  readonly words: string;
  /** The quantity as a fresh solve of the design with this value gives it. */
  readonly reached: number;
  readonly reachedWords: string;
  /** Figures of the other targets, in their order. */
  readonly others: readonly { readonly label: string; readonly words: string }[];
  readonly edit: Edit;
  /** State of each verdict with it. */
  readonly verdicts: readonly Pick<Verdict, 'key' | 'name' | 'state' | 'headline'>[];
}

export interface UnknownAnswer {
  readonly label: string;
  readonly dimension: Dimension | null;
  readonly edge: Edge;
  /** Which figure of each target counts and why, in sentences. */
  readonly figures: readonly string[];
  /** Lowest first; more than one where the quantity does not rise or fall throughout. */
  readonly found: readonly FoundValue[];
  readonly sentence: string;
  /** The quantity over the range of the unknown, for a picture; null where it cannot be computed. */
  readonly curve: readonly { readonly value: number; readonly quantity: number | null }[];
}

/** What a sensitivity can be asked for. */
export interface Measure {
  /** Key of a found quantity. */
  readonly quantity: string;
  readonly label: string;
  readonly dimension: Dimension;
}

/** One given value and what a small change of it does. */
export interface SensitivityRow {
  readonly path: string;
  readonly label: string;
  /** The change both ways: "±10 %", "±5 K", "±1". */
  readonly step: string;
  /** Change of the quantity when the value is raised and lowered, SI. */
  readonly raised: number | null;
  readonly lowered: number | null;
  /** The greater of the two without its sign. */
  readonly size: number;
}

export interface Sensitivity {
  readonly measure: Measure;
  /** The quantity as the design stands, SI. */
  readonly value: number;
  /** Most important first; values without effect are left out. */
  readonly rows: readonly SensitivityRow[];
}

/** A figure that is not exactly known and what its doubt does. */
export interface DoubtRow {
  readonly key: string;
  readonly label: string;
  /** What would make it better known. */
  readonly advice: string;
  readonly path: string | null;
  /** Share of the spread, 0..1. */
  readonly share: number;
  /** What its own 90 % half-width moves the quantity by, SI. */
  readonly effect: number;
}

/** What makes a quantity unsure, most important first. */
export interface DoubtRanking {
  readonly measure: Measure;
  /** The quantity as the design stands, and the edges of its band, SI. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly rows: readonly DoubtRow[];
}

export interface MapAxis {
  readonly path: string;
  /** SI. */
  readonly from: number;
  readonly to: number;
}

/** An axis as asked for; without ends it goes around the present value. */
export interface AskedAxis {
  readonly path: string;
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

/** Two given values against each other. */
export interface MapQuestion {
  readonly x: AskedAxis;
  readonly y: AskedAxis;
  readonly columns: number;
  readonly rows: number;
}

/** Where a service stands at its limit: for each column every y at which it crosses, SI, lowest first. */
export interface MapLine {
  readonly service: Service;
  readonly name: string;
  /** Fine at the lowest y of the column? null where nothing can be computed. */
  readonly fineBelow: readonly (boolean | null)[];
  readonly crossings: readonly (readonly number[])[];
}

export interface LimitMap {
  readonly x: MapAxis & { readonly label: string; readonly dimension: Dimension };
  readonly y: MapAxis & { readonly label: string; readonly dimension: Dimension };
  readonly columns: readonly number[];
  readonly lines: readonly MapLine[];
  readonly edge: Edge;
  /** What the lines mean, in a sentence. */
  readonly sentence: string;
  /** Designs looked at. */
  readonly solved: number;
}
