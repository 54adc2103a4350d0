import type { Band } from './design/peopleSchema.ts';
import type { PathKind } from './design/supplyChoices.ts';
import type { Note, Outcome, Reason } from './outcome.ts';

/** The three services every design is judged in. */
export const services = ['ssb', 'cw', 'keyDown'] as const;
export type Service = (typeof services)[number];

/** What a service of a design is called and what it means, so that legends and tables say the same. */
export interface ServiceWords {
  /** On the curve: "SSB", "two-tone", "key-down", "FT8". */
  readonly name: string;
  /** What is sent within an over, without a full stop. */
  readonly definition: string;
  /** Marks and spaces that repeat within the over, s; null for an unbroken signal. */
  readonly marks: readonly { readonly on: boolean; readonly duration: number }[] | null;
}

/** How a figure stands against its limit. Always shown as a word, never by colour alone. */
export type State = 'fine' | 'close' | 'over';

/** One line of the verdicts at the head of the sheet. */
export interface Verdict {
  readonly key: Service | 'supply' | 'people';
  /** What the line is about: "SSB", "FT8", "12 V input". */
  readonly name: string;
  readonly state: State;
  /** At most a few words: "up to 38 % of the time". */
  readonly headline: string;
  /** The rest in one or two sentences. */
  readonly sentence: string;
}

export type Severity = 'danger' | 'warning' | 'caution' | 'note';

/** A hazard with its computed figure and what to do about it. */
export interface Caution {
  readonly key: string;
  readonly severity: Severity;
  readonly title: string;
  /** The computed figure in short: "640 A". */
  readonly figure: string;
  /** What is the matter, with the computed figure in it. */
  readonly sentence: string;
  /** What to do. */
  readonly action: string;
  /** Key into the table of sources. */
  readonly source: string;
}

/** Exposure on one band, worked out at its top edge. Distances are rounded up, m. */
export interface ExposureRow {
  readonly band: Band;
  /** Hz */
  readonly frequency: number;
  /** Levels of the limit: V/m, A/m, W/m²; density null where the set has none. */
  readonly electric: number;
  readonly magnetic: number;
  readonly density: number | null;
  /** At the antenna, W. */
  readonly averagePower: number;
  /** Least distance; null where no formula holds for the antenna. */
  readonly distance: number | null;
  /** λ/2π, m. */
  readonly nearZone: number;
  /** US exemption from routine evaluation in words, and the distance it was judged at; null without a distance. */
  readonly exemption: string | null;
  readonly judgedAt: number | null;
  /** From this distance on the source is exempt from routine evaluation. */
  readonly exemptFrom: number;
  readonly chosen: boolean;
}

/** A published level of current through a hand. */
export interface ContactLevel {
  readonly key: string;
  readonly label: string;
  /** A r.m.s. */
  readonly level: number;
  /** Power into a matched output that reaches it, W. */
  readonly power: number;
}

/** Burn thresholds of one surface, and how this design's hottest place does on it. */
export interface BurnRow {
  readonly surface: 'metal' | 'glass' | 'plastic';
  /** Contact time, s, and the surface temperature that burns from it on, K. */
  readonly thresholds: readonly { readonly contact: number; readonly temperature: number }[];
  /** Contact at the hottest touchable temperature until it burns, s; null when it does not or is not known. */
  readonly burnsAfter: number | null;
}

/** A label that belongs on this box. */
export interface Label {
  readonly key: string;
  /** Where it goes: "on the sink". */
  readonly place: string;
  readonly heading: string;
  readonly lines: readonly string[];
}

/** One thing the 12 V side or the final is found to be that is not fine. */
export interface Finding {
  readonly key: string;
  readonly state: State;
  readonly sentence: string;
  /** It forbids transmitting at any duty, not only for a long time. */
  readonly forbids: boolean;
}

/** The limit that ends the safe duty. */
export interface Governing {
  readonly key: string;
  readonly sentence: string;
}

export interface ServiceResult {
  readonly service: Service;
  /** Largest transmit share at which no limit is passed, 0..1. */
  readonly safeDuty: number;
  readonly governing: Governing;
  /** Unbroken transmission from cold until the design limit, s; null when the limit is never reached. */
  readonly holdTime: number | null;
  readonly state: State;
}

/** A point of the heat path with its temperature (K) and the heat that flows on from it (W). */
export interface HeatNode {
  readonly key: 'junction' | 'case' | 'plateUnderDevice' | 'plate' | 'air';
  readonly label: string;
  /** Mean over the cycle in the planned duty. */
  readonly mean: number;
  /** Highest within the cycle. */
  readonly peak: number;
}

/** One step of the power path: what comes in, what goes on, what leaves as heat (W, at PEP and as mean of the over). */
export interface PowerStep {
  readonly key: 'source' | 'wiring' | 'converter' | 'amplifier' | 'network' | 'antenna';
  readonly label: string;
  readonly powerIn: number;
  /** Part of what comes in that does not come from the step before: the drive at the final. */
  readonly added: number;
  readonly powerOut: number;
  readonly heat: number;
}

export interface WireRow {
  readonly size: string;
  /** Conductor cross-section, m². */
  readonly area: number;
  /** Loop resistance at working temperature, Ω. */
  readonly resistance: number;
  /** Voltage drop at PEP, V, and as share of the source voltage. */
  readonly drop: number;
  readonly dropShare: number;
  /** Allowed current with insulation limit, ambient and the pair counted, A; null where the table has no row. */
  readonly ampacity: number | null;
  /** Empty when the size passes everything; otherwise what it fails, in words. */
  readonly fails: readonly string[];
  readonly chosen: boolean;
}

/** A piece of the path at its load. */
export interface PathRow {
  readonly kind: PathKind | 'mainWire';
  readonly name: string;
  /** Ω */
  readonly resistance: number;
  /** At PEP, V. */
  readonly drop: number;
  /** At PEP, W. */
  readonly heat: number;
  /** A; null where none is known. */
  readonly rating: number | null;
  /** Rise of a contact over its surroundings at the long current, K; null for other parts. */
  readonly rise: number | null;
  readonly state: State;
  /** The part with the smallest rated current of all. */
  readonly weakest: boolean;
}

/** One thing the 12 V side is found to be that is not fine. */
export interface SupplyRemark {
  readonly key: string;
  readonly state: State;
  readonly sentence: string;
}

/** A rectangle on the plate: centre from the lower left corner, x across the fins, y along them, m. */
export interface PlatePlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly length: number;
}

/** A part on the plate: its contact face, and the spreader plate under it if there is one. */
export interface PlacedPart extends PlatePlace {
  readonly key: 'device' | 'converter' | 'switch' | 'rectifier';
  /** "device 2", "the converter" */
  readonly label: string;
  readonly spreader: { readonly width: number; readonly length: number } | null;
}

/** A part with the temperature of the plate under it, K. */
export interface WarmPart extends PlacedPart {
  /** Heat into the plate there, W. */
  readonly heat: number;
  readonly mean: number;
  /** Hottest point under the part. */
  readonly peak: number;
}

/** Temperatures of the plate when the junction is hottest in the planned duty of a service. */
export interface PlateMap {
  readonly service: Service;
  readonly columns: number;
  readonly rows: number;
  /** Middles of the cells, row by row from the lower left corner, K. */
  readonly temperature: Float64Array;
  readonly lowest: number;
  readonly highest: number;
  readonly plateMean: number;
  readonly parts: readonly WarmPart[];
}

/** Places that keep the hottest junction as cool as found; the rise saved, K. */
export interface SuggestedPlaces {
  /** Centres in the order of the parts, m. */
  readonly places: readonly { readonly x: number; readonly y: number }[];
  /** Hottest junction before less after, K. */
  readonly saved: number;
}

/** Everything `solve` finds. It always returns; what could not be computed is a named reason, never NaN. */
export interface Solution {
  /** Every named quantity, SI, by catalogue key; per-service quantities as "ssb.junctionPeak". */
  readonly values: Readonly<Record<string, number>>;
  /** Why a whole part has no values: collapse, unreachable rail, refused service. */
  readonly reasons: readonly Reason[];
  readonly notes: readonly Note[];
  readonly services: Readonly<Record<Service, Outcome<ServiceResult>>>;
  /** Name and definition of each service as chosen. */
  readonly words: Readonly<Record<Service, ServiceWords>>;
  /** What the duty is, in a sentence. */
  readonly dutyWords: string;
  readonly verdicts: readonly Verdict[];
  /** What is not fine about the 12 V side and about the final, each the worst first. */
  readonly findings: { readonly supply: readonly Finding[]; readonly final: readonly Finding[] };
  readonly cautions: readonly Caution[];
  /** Exposure by band, longest wave first. */
  readonly exposure: readonly ExposureRow[];
  /** Contact currents at the chosen band, lowest first. */
  readonly contacts: readonly ContactLevel[];
  readonly labels: readonly Label[];
  readonly burns: readonly BurnRow[];
  /** Heat path in the planned duty, by service. */
  readonly heatPath: Readonly<Record<Service, readonly HeatNode[]>>;
  /** Power path at PEP and averaged over one over of the service. */
  readonly powerPath: Readonly<Record<'pep' | Service, readonly PowerStep[]>>;
  readonly wires: readonly WireRow[];
  /** Parts of the 12 V path in order; empty where there is no operating point. */
  readonly path: readonly PathRow[];
  /** Everything that is not fine about the 12 V side, the worst first. */
  readonly supply: readonly SupplyRemark[];
  /** Devices and converter on the plate; empty when they do not fit. */
  readonly places: readonly PlacedPart[];
  /** Iterations of the coupled solve, all services together. */
  readonly iterations: number;
}

/** Junction temperature against duty for one service, 101 points by default. */
export interface Sweep {
  readonly service: Service;
  /** Transmit share, 0..1. */
  readonly share: readonly number[];
  /** Highest junction temperature within the cycle, K. */
  readonly junctionPeak: readonly number[];
  /** Mean junction temperature over the cycle, K. */
  readonly junctionMean: readonly number[];
  /** Highest plate temperature within the cycle, K. */
  readonly platePeak: readonly number[];
}

/** Temperatures from cold through keyed overs, and from the end of the last one until the plate can be touched. */
export interface WarmUp {
  readonly service: Service;
  /** s */
  readonly time: readonly number[];
  /** Highest junction temperature reached in each step, K. */
  readonly junction: readonly number[];
  /** Mean plate temperature, K. */
  readonly plate: readonly number[];
  /** End of the last over, when everything is switched off, s. */
  readonly switchedOff: number;
  /** When the plate is cool enough to be touched, s; null when it is all the time, or not within the curve. */
  readonly touchable: number | null;
  /** What can be touched, K. */
  readonly coolEnough: number;
}

/** What a final takes and gives against the amplitude of its output (share of that at PEP), W. */
export interface OutputCurve {
  readonly amplitude: readonly number[];
  readonly supplyPower: readonly number[];
  readonly output: readonly number[];
  readonly heat: readonly number[];
  /** Output over supply power. */
  readonly efficiency: readonly number[];
  readonly hottest: { readonly amplitude: number; readonly heat: number } | null;
}

/** Heat of the devices at PEP against the SWR at the antenna connector, W. */
export interface MismatchCurve {
  readonly swr: readonly number[];
  readonly worst: readonly number[];
  readonly mean: readonly number[];
  readonly mildest: readonly number[];
  /** Forward power at the antenna connector, as the foldback leaves it. */
  readonly forward: readonly number[];
}

/** Where a service works on the derating line: case temperature K, heat of one device W. */
export interface WorkingPoint {
  readonly service: Service;
  readonly name: string;
  readonly caseTemperature: number;
  readonly heat: number;
}

/** Heat one device may take against the temperature of its case: by the data sheet and up to the design limit. */
export interface DeratingCurve {
  readonly caseTemperature: readonly number[];
  readonly allowed: readonly number[];
  readonly designed: readonly number[];
  readonly points: readonly WorkingPoint[];
}

export interface AmplifierCurves {
  readonly output: Outcome<OutputCurve>;
  readonly mismatch: Outcome<MismatchCurve>;
  readonly derating: Outcome<DeratingCurve>;
}

/** Sink resistance against heat: it is not one number. */
export interface RatingCurve {
  /** W */
  readonly heat: readonly number[];
  /** Rise of the plate over its air, K. */
  readonly rise: readonly number[];
  /** K/W */
  readonly resistance: readonly number[];
}
