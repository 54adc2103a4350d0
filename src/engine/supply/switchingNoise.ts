/** A range of frequencies, Hz. */
export interface FrequencyRange {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

export interface HarmonicInRange {
  readonly harmonic: number;
  /** Hz */
  readonly frequency: number;
  readonly range: string;
}

/** Attenuation of one filter section that may be shown, dB: beyond it stray parts decide. Own choice. */
export const shownAttenuation = 60;

/**
 * Harmonics of a switching frequency that fall, or with its tolerance may fall, into ranges.
 *
 * frequency: Hz; tolerance: relative, 0 for exact. A range wider than the frequency always holds one. Edges count.
 */
export function harmonicsInRanges(
  frequency: number,
  tolerance: number,
  ranges: readonly FrequencyRange[],
): readonly HarmonicInRange[] {
  const found: HarmonicInRange[] = [];
  for (const range of ranges) {
    const first = Math.max(1, Math.ceil(range.from / (frequency * (1 + tolerance)) - 1e-9));
    const last = Math.floor(range.to / (frequency * (1 - tolerance)) + 1e-9);
    for (let harmonic = first; harmonic <= last; harmonic++) {
      found.push({ harmonic, frequency: harmonic * frequency, range: range.name });
    }
  }
  return found;
}

/** Highest harmonic that a choice of frequency still places: 1/(2 tolerance); null for an exact clock. */
export function placedHarmonics(tolerance: number): number | null {
  return tolerance > 0 ? Math.floor(1 / (2 * tolerance) + 1e-9) : null;
}

/**
 * Least distance from the harmonics of a frequency to any of several ranges, Hz, less what the tolerance may move
 * them; negative when a harmonic lies, or may lie, inside.
 */
export function clearance(frequency: number, tolerance: number, ranges: readonly FrequencyRange[]): number {
  let least = Number.MAX_VALUE;
  for (const range of ranges) {
    const below = Math.floor(range.from / frequency);
    const last = Math.ceil(range.to / frequency);
    for (let harmonic = Math.max(1, below); harmonic <= last; harmonic++) {
      const place = harmonic * frequency;
      const distance = Math.max(range.from - place, place - range.to) - harmonic * frequency * tolerance;
      if (distance < least) least = distance;
    }
  }
  return least;
}

export interface BestClock {
  /** Hz */
  readonly frequency: number;
  /** Hz; negative: no frequency of the span keeps the harmonics out. */
  readonly clearance: number;
}

const firstCells = 2000;
const wantedResolution = 0.05;

/**
 * The switching frequency within a span whose harmonics stay farthest from the ranges listened to.
 *
 * Cells of the span are bounded by the slope of the clearance (at most the highest harmonic) and the promising ones
 * halved until 0.05 Hz are resolved, so the greatest clearance is not missed. from, to: Hz.
 */
export function bestClock(
  from: number,
  to: number,
  tolerance: number,
  ranges: readonly FrequencyRange[],
): BestClock {
  let best: BestClock = { frequency: from, clearance: clearance(from, tolerance, ranges) };
  let top = 0;
  for (const range of ranges) top = Math.max(top, range.to);
  const slope = (top / from + 1) * (1 + tolerance);
  let width = (to - from) / firstCells;
  let centres: number[] = [];
  for (let cell = 0; cell < firstCells; cell++) centres.push(from + (cell + 0.5) * width);
  while (centres.length > 0) {
    const values = centres.map((frequency) => clearance(frequency, tolerance, ranges));
    for (let index = 0; index < centres.length; index++) {
      if (values[index]! > best.clearance) best = { frequency: centres[index]!, clearance: values[index]! };
    }
    if (width <= wantedResolution) return best;
    const reach = (slope * width) / 2;
    const kept = centres.filter((_, index) => values[index]! + reach > best.clearance);
    width /= 2;
    centres = kept.flatMap((centre) => [centre - width / 2, centre + width / 2]);
  }
  return best;
}

/**
 * Peak amplitude of a harmonic of a trapezoid, V: 2 A D |sinc(n D)| |sinc(n tr fs)|, sinc(x) = sin(π x)/(π x).
 *
 * height: V; duty at half height; edge: rise and fall time, s; frequency: Hz; harmonic n >= 1. Own derivation.
 */
export function trapezoidHarmonic(
  height: number,
  duty: number,
  edge: number,
  frequency: number,
  harmonic: number,
): number {
  return 2 * height * duty * Math.abs(sinc(harmonic * duty)) * Math.abs(sinc(harmonic * edge * frequency));
}

function sinc(x: number): number {
  const angle = Math.PI * x;
  return Math.abs(angle) < 1e-9 ? 1 : Math.sin(angle) / angle;
}

/**
 * Attenuation of one LC section without load, dB: −20 lg|Zc/(Zc + Zl)|, Zc = esr + 1/(jωC), Zl = jωL.
 *
 * Negative near the resonance, where it amplifies. In theory: stray parts keep it below about 60 dB a section, and
 * common-mode current is not covered. frequency: Hz.
 */
export function sectionAttenuation(
  frequency: number,
  inductance: number,
  capacitance: number,
  esr: number,
): number {
  const angular = 2 * Math.PI * frequency;
  const reactance = -1 / (angular * capacitance);
  const whole = Math.hypot(esr, reactance + angular * inductance);
  return 20 * Math.log10(Math.max(whole, 1e-12) / Math.hypot(esr, reactance));
}
