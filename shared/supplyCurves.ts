/** Curves of the 12 V side, all in SI: what the plots of source and converter show. */

/** Fuse, load and wire over current. All lists have one length; `current` rises. Times s, currents A. */
export interface TimeCurrent {
  readonly fuse: string;
  readonly current: readonly number[];
  /** The fuse holds at least so long; null where nothing is promised. */
  readonly holds: readonly (number | null)[];
  /** It opens at the latest after so long; null where it may never open. */
  readonly opens: readonly (number | null)[];
  /** The wire bears the current so long; null where it bears it for ever. */
  readonly wire: readonly (number | null)[];
  /** What flows, and for how long at a stretch. */
  readonly loads: readonly LoadPoint[];
}

export interface LoadPoint {
  readonly label: string;
  /** A */
  readonly current: number;
  /** s */
  readonly time: number;
}

/** Efficiency against rail current at one input voltage; null where the converter cannot do it. */
export interface EfficiencyCurve {
  /** V */
  readonly inputVoltage: number;
  readonly efficiency: readonly (number | null)[];
  /** W */
  readonly loss: readonly (number | null)[];
}

export interface ConverterCurves {
  /** A, rising from just above nothing to a fifth above PEP. */
  readonly railCurrent: readonly number[];
  readonly curves: readonly EfficiencyCurve[];
  /** Rail current at PEP, A. */
  readonly pepCurrent: number;
  /** Only of a converter designed from parts. */
  readonly waveforms: ConverterWaveforms | null;
  /** Losses at PEP by part, W, the largest first; only of a converter designed from parts. */
  readonly losses: readonly { readonly label: string; readonly power: number }[];
}

/** Two periods at PEP. One length; times rise, jumps stand upright. */
export interface ConverterWaveforms {
  /** s */
  readonly time: readonly number[];
  /** Of the first phase, A. */
  readonly inductor: readonly number[];
  readonly switch: readonly number[];
  readonly rectifier: readonly number[];
  /** All phases together, A. */
  readonly input: readonly number[];
  /** Rail less its mean, V. */
  readonly ripple: readonly number[];
  readonly phases: number;
}

/** Harmonics of the switching frequency and the band that is listened to. Frequencies Hz. */
export interface SwitchingNoise {
  readonly frequency: number;
  readonly band: string;
  readonly from: number;
  readonly to: number;
  /** In the band, or with the tolerance of the clock perhaps in it. */
  readonly harmonics: readonly { readonly harmonic: number; readonly frequency: number }[];
  /** How many there are; `harmonics` names the first few. */
  readonly count: number;
  /** Peak of the first of them at the switch node before any filter, V; null when none is in the band. */
  readonly amplitude: number | null;
  /** Of the input filter at the bottom of the band, dB; null without a filter choke or capacitor. */
  readonly attenuation: number | null;
  /** A frequency that keeps all harmonics clear of the band; null where none does or where a choice means nothing. */
  readonly suggestion: { readonly frequency: number; readonly clearance: number } | null;
  /** What is to be made of it, in words. */
  readonly sentence: string;
}

export interface SupplyCurves {
  readonly timeCurrent: TimeCurrent | null;
  readonly converter: ConverterCurves | null;
  readonly noise: SwitchingNoise | null;
}
