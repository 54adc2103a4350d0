import type { State } from '../../../shared/solution.ts';
import { adiabaticWithstand, longestAdiabaticTime, shortTimeLimit } from './adiabatic.ts';
import type { FaultCurrent } from './faultCurrent.ts';
import { type FuseLoad, fuseType, type GateBand, gateBand, gateBandWords, neededRating } from './fuse.ts';

/** Along the wire from the source to the fuse, m: 7 in, 33 CFR 183.455(b). */
export const fusePlace = 0.178;
/** The same where the wire is sheathed or enclosed up to the fuse, m: 40 in. */
export const fusePlaceSheathed = 1.016;
/** Rating over wire ampacity that 33 CFR 183.455(c)(1) allows below 50 V. */
export const wireShareAllowed = 1.5;

const slack = 1e-9;

export interface FuseQuestion {
  readonly load: FuseLoad;
  /** The fuse fitted or picked, A. */
  readonly rating: number;
  /** Allowed current of the wire behind it, A. */
  readonly wireAmpacity: number;
  /** Short at the far end of the wire. */
  readonly farFault: FaultCurrent;
  /** Short right behind the fuse, source alone. */
  readonly nearFault: FaultCurrent;
  /** Highest voltage the fuse may have to break, V. */
  readonly sourceVoltage: number;
  /** From the source terminal to the fuse along the wire, m. */
  readonly distance: number;
  /** Of the wire behind the fuse, m². */
  readonly wireArea: number;
  /** Continuous limit of its insulation, K. */
  readonly insulationLimit: number;
}

export interface FuseFinding {
  readonly key: 'load' | 'wire' | 'letThrough' | 'breakingCapacity' | 'voltage' | 'place';
  readonly state: State;
  readonly sentence: string;
  /** Key into the sources of the supply tables. */
  readonly source: string;
  readonly numbers: Readonly<Record<string, number>>;
}

/**
 * Everything a fuse must satisfy in its place, one finding each; the order is that of the keys.
 *
 * `over` means it must be changed, `close` that a warning stands beside it. Sources: rating rule of the fuse guides,
 * 33 CFR 183.455 for wire and place, ISO 8820-3 for voltage and breaking capacity, IEC 60364-5-54 for the let-through.
 */
export function judgeFuse(question: FuseQuestion): readonly FuseFinding[] {
  return [
    judgeLoad(question),
    judgeWire(question),
    judgeLetThrough(question),
    judgeBreakingCapacity(question),
    judgeVoltage(question),
    judgePlace(question),
  ];
}

function judgeLoad({ load, rating }: FuseQuestion): FuseFinding {
  const needed = neededRating(load);
  const fine = rating >= needed * (1 - slack);
  return {
    key: 'load',
    state: fine ? 'fine' : 'over',
    sentence: fine
      ? `${amperes(rating)} carry the load; at least ${amperes(needed)} are needed.`
      : `${amperes(rating)} are too small for the load: at least ${amperes(needed)} are needed, or it opens in use.`,
    source: 'fuseRule',
    numbers: { rating, needed },
  };
}

/** Rating over the ampacity of the wire, and what that means: fine to 100 %, close to 150 %. */
export function wireProtection(rating: number, wireAmpacity: number): State {
  if (rating <= wireAmpacity * (1 + slack)) return 'fine';
  return rating <= wireAmpacity * wireShareAllowed * (1 + slack) ? 'close' : 'over';
}

function judgeWire({ rating, wireAmpacity }: FuseQuestion): FuseFinding {
  const state = wireProtection(rating, wireAmpacity);
  const allowed = amperes(wireAmpacity);
  const sentences: Readonly<Record<State, string>> = {
    fine: `The wire may carry ${allowed}: the fuse protects it.`,
    close: `The fuse is larger than the ${allowed} the wire may carry; up to 150 % is tolerated on boats below 50 V, a thicker wire is better.`,
    over: `The fuse does not protect the wire, which may carry ${allowed}: take a thicker wire or a smaller fuse.`,
  };
  return {
    key: 'wire',
    state,
    sentence: sentences[state],
    source: 'boatProtection',
    numbers: { rating, wireAmpacity },
  };
}

export interface LetThrough {
  readonly state: State;
  /** The supply itself holds the current to what the wire carries. */
  readonly heldBySupply: boolean;
  readonly band: GateBand;
  /** I² t until the latest opening, A² s; null when the fuse may never open. */
  readonly letThrough: number | null;
  /** What the insulation bears, A² s. */
  readonly withstand: number;
}

/**
 * I² t until the latest opening of the fuse against what the insulation of the wire bears, at a short at its far end.
 *
 * `over` when it is more, or when the fuse may never open; `close` when the fuse is slow but the current is one that
 * the wire carries for long.
 */
export function letThrough(
  question: Omit<FuseQuestion, 'nearFault' | 'sourceVoltage' | 'distance'>,
): LetThrough {
  const { load, rating, farFault, wireArea, insulationLimit, wireAmpacity } = question;
  const current = farFault.current;
  const band = gateBand(load.kind, rating, current);
  const withstand = adiabaticWithstand(wireArea, insulationLimit, shortTimeLimit(insulationLimit));
  const heldBySupply = farFault.limitedBy === 'supply' && current <= wireAmpacity;
  const passed = band.longest === null ? null : current * current * band.longest;
  const base = { heldBySupply, band, letThrough: passed, withstand };
  if (heldBySupply) return { ...base, state: 'fine' };
  if (band.longest === null || passed === null) return { ...base, state: 'over' };
  if (passed <= withstand) return { ...base, state: 'fine' };
  // Beyond 5 s heat leaves the wire and the formula overstates the harm: a warning, not a verdict.
  const slow = band.longest > longestAdiabaticTime && current <= wireAmpacity * wireShareAllowed;
  return { ...base, state: slow ? 'close' : 'over' };
}

function judgeLetThrough(question: FuseQuestion): FuseFinding {
  const { rating, farFault } = question;
  const current = farFault.current;
  const found = letThrough(question);
  return {
    key: 'letThrough',
    state: found.state,
    sentence: letThroughSentence(found, current),
    source: 'adiabatic',
    numbers: {
      current,
      rating,
      withstand: found.withstand,
      ...(found.letThrough === null ? {} : { letThrough: found.letThrough }),
    },
  };
}

function letThroughSentence(found: LetThrough, current: number): string {
  if (found.heldBySupply)
    return `The supply limits a short to about ${amperes(current)}, which the wire carries.`;
  if (found.letThrough === null) {
    return `A short at the far end draws only ${amperes(current)}: this fuse may never open. Thicker or shorter wire, or a smaller fuse.`;
  }
  const opens = `A short at the far end draws ${amperes(current)} and the fuse opens ${gateBandWords(found.band)}`;
  if (found.state === 'fine') return `${opens}; the wire bears it.`;
  return `${opens}; the insulation of the wire may be damaged before that.`;
}

function judgeBreakingCapacity({ load, nearFault }: FuseQuestion): FuseFinding {
  const capacity = fuseType(load.kind).breakingCapacity;
  const current = nearFault.current;
  const base = { key: 'breakingCapacity', source: fuseType(load.kind).source } as const;
  if (capacity === null) {
    return {
      ...base,
      state: 'close',
      sentence: `No DC breaking capacity is published for this kind: the maker’s must be at least ${amperes(current)}, the current of a short behind the fuse.`,
      numbers: { current },
    };
  }
  const fine = current <= capacity * (1 + slack);
  return {
    ...base,
    state: fine ? 'fine' : 'over',
    sentence: fine
      ? `A short behind the fuse draws ${amperes(current)}; it can break ${amperes(capacity)}.`
      : `A short behind the fuse draws ${amperes(current)}, more than the ${amperes(capacity)} this kind can break: put a bolted fuse with a higher DC breaking capacity at the source.`,
    numbers: { current, capacity },
  };
}

function judgeVoltage({ load, sourceVoltage }: FuseQuestion): FuseFinding {
  const voltage = fuseType(load.kind).voltage;
  const base = { key: 'voltage', source: fuseType(load.kind).source } as const;
  if (voltage === null) {
    return {
      ...base,
      state: 'close',
      sentence: `This kind carries an AC voltage only: ask the maker for its DC voltage, at least ${volts(sourceVoltage)}.`,
      numbers: { sourceVoltage },
    };
  }
  const fine = sourceVoltage <= voltage * (1 + slack);
  return {
    ...base,
    state: fine ? 'fine' : 'over',
    sentence: fine
      ? `Made for ${volts(voltage)} DC, the source has ${volts(sourceVoltage)}.`
      : `Made for ${volts(voltage)} DC and the source has ${volts(sourceVoltage)}: use a kind for a higher DC voltage.`,
    numbers: { voltage, sourceVoltage },
  };
}

function judgePlace({ distance }: FuseQuestion): FuseFinding {
  const base = { key: 'place', source: 'boatProtection', numbers: { distance, limit: fusePlace } } as const;
  const shown = `${Math.round(distance * 1000)} mm`;
  if (distance <= fusePlace * (1 + slack)) {
    return { ...base, state: 'fine', sentence: `The fuse sits ${shown} from the source along the wire.` };
  }
  if (distance <= fusePlaceSheathed * (1 + slack)) {
    return {
      ...base,
      state: 'close',
      sentence: `The fuse sits ${shown} from the source: move it within 178 mm, or sheathe the wire up to it. That piece is protected by nothing.`,
    };
  }
  return {
    ...base,
    state: 'over',
    sentence: `The fuse sits ${shown} from the source: that piece of wire is protected by nothing. Move it within 178 mm.`,
  };
}

function amperes(current: number): string {
  return `${Number(current.toPrecision(3))} A`;
}

function volts(voltage: number): string {
  return `${Number(voltage.toPrecision(3))} V`;
}
