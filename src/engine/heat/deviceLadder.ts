/**
 * A stage of a thermal ladder in Foster form: r and τ of Zth(t) = Σ r (1 - e^(-t/τ)). Only the sum has a meaning, and
 * only between junction and case: a sink is never put at the end of it.
 */
export interface FosterStage {
  /** K/W */
  readonly resistance: number;
  /** s; 0 for a part that follows at once. */
  readonly timeConstant: number;
}

/** Heat held constant for a time. */
export interface Segment {
  /** W */
  readonly power: number;
  /** s */
  readonly duration: number;
}

/** e^(-t/τ); 0 for a stage without delay (and 1 for no time, even then). */
function decay(duration: number, timeConstant: number): number {
  if (duration <= 0) return 1;
  return timeConstant > 0 ? Math.exp(-duration / timeConstant) : 0;
}

/** 1 - e^(-t/τ) without loss of digits for short times. */
function growth(duration: number, timeConstant: number): number {
  if (duration <= 0) return 0;
  return timeConstant > 0 ? -Math.expm1(-duration / timeConstant) : 1;
}

/**
 * Device known by its data-sheet resistance alone, with the time constant if there is one; without, the junction
 * follows at once (cautious).
 */
export function singleStage(resistance: number, timeConstant: number | null): readonly FosterStage[] {
  return [{ resistance, timeConstant: timeConstant ?? 0 }];
}

/** Steady resistance of a ladder, K/W. */
export function ladderResistance(stages: readonly FosterStage[]): number {
  return stages.reduce((sum, stage) => sum + stage.resistance, 0);
}

/** Transient thermal impedance, K/W: Zth(t) = Σ r (1 - e^(-t/τ)). */
export function ladderImpedance(stages: readonly FosterStage[], time: number): number {
  let sum = 0;
  for (const stage of stages) sum += stage.resistance * growth(time, stage.timeConstant);
  return sum;
}

/** Rise of the junction over the case in a state, K. */
export function ladderRise(state: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < state.length; i++) sum += state[i]!;
  return sum;
}

/**
 * Moves the state (rise of each stage, K) on under constant heat, exactly for any duration:
 * θ ← θ e^(-Δt/τ) + P r (1 - e^(-Δt/τ)). Changes `state` in place.
 */
export function ladderStep(
  stages: readonly FosterStage[],
  state: Float64Array,
  power: number,
  duration: number,
): void {
  for (let i = 0; i < stages.length; i++) {
    const { resistance, timeConstant } = stages[i]!;
    state[i] =
      state[i]! * decay(duration, timeConstant) + power * resistance * growth(duration, timeConstant);
  }
}

/**
 * State at the start of the period in the periodic steady state: θ(0) = F/(1 - e^(-T/τ)), F the state one period after
 * rest. Exact.
 */
export function ladderPeriodicStart(
  stages: readonly FosterStage[],
  segments: readonly Segment[],
): Float64Array {
  const state = new Float64Array(stages.length);
  let period = 0;
  for (const segment of segments) {
    ladderStep(stages, state, segment.power, segment.duration);
    period += segment.duration;
  }
  for (let i = 0; i < stages.length; i++) {
    const grown = growth(period, stages[i]!.timeConstant);
    state[i] = grown > 0 ? state[i]! / grown : 0;
  }
  return state;
}

/** What a period of the junction looks like, rises over the case, K. */
export interface LadderPeriod {
  readonly start: number;
  /** At the end of each segment. */
  readonly ends: readonly number[];
  /** Highest anywhere in the period, inside segments too. */
  readonly highest: number;
  readonly mean: number;
}

/**
 * Periodic steady state of a ladder under segments of constant heat. Exact at the ends of segments; the highest value
 * inside a segment is found where the slope passes from rising to falling.
 */
export function ladderPeriodic(stages: readonly FosterStage[], segments: readonly Segment[]): LadderPeriod {
  const state = ladderPeriodicStart(stages, segments);
  const start = ladderRise(state);
  const ends: number[] = [];
  let highest = segments.length > 0 ? -Infinity : 0;
  let energy = 0;
  let period = 0;
  for (const segment of segments) {
    highest = Math.max(highest, highestWithin(stages, state, segment));
    ladderStep(stages, state, segment.power, segment.duration);
    ends.push(ladderRise(state));
    energy += segment.power * segment.duration;
    period += segment.duration;
  }
  const mean = period > 0 ? (energy / period) * ladderResistance(stages) : 0;
  return { start, ends, highest, mean };
}

/** Times per stage, in units of its time constant, between which the slope is watched. */
const watchTimes = [0.1, 0.3, 0.7, 1.5, 3, 6];
const halvings = 40;

/**
 * Highest rise within one segment, both ends included, K. A sum of decays has an inner maximum only if stages pull both
 * ways; then the slope is watched at times spread over all time constants and each change of sign closed in.
 */
export function highestWithin(stages: readonly FosterStage[], state: Float64Array, segment: Segment): number {
  const { power, duration } = segment;
  let before = 0;
  let instant = 0;
  let after = 0;
  let falls = false;
  let climbs = false;
  for (let i = 0; i < stages.length; i++) {
    const { resistance, timeConstant } = stages[i]!;
    const settled = power * resistance;
    const pull = state[i]! - settled;
    before += state[i]!;
    // A stage without delay has jumped by the first instant of the segment.
    instant += timeConstant > 0 ? state[i]! : settled;
    after += settled + pull * decay(duration, timeConstant);
    if (timeConstant > 0 && pull > 0) falls = true;
    if (timeConstant > 0 && pull < 0) climbs = true;
  }
  const best = Math.max(before, after, duration > 0 ? instant : before);
  return falls && climbs ? Math.max(best, highestInside(stages, state, segment)) : best;
}

/** The same inside the segment, where some stages pull up and others down; -Infinity where it has no maximum there. */
function highestInside(stages: readonly FosterStage[], state: Float64Array, segment: Segment): number {
  const { power, duration } = segment;
  const settled = power * ladderResistance(stages);
  // rise(t) = settled + Σ d e^(-t/τ), d = θ0 - P r; slope(t) = -Σ d/τ e^(-t/τ).
  const riseAt = (time: number) => {
    let sum = settled;
    for (let i = 0; i < stages.length; i++) {
      const { resistance, timeConstant } = stages[i]!;
      sum += (state[i]! - power * resistance) * decay(time, timeConstant);
    }
    return sum;
  };
  const delayed = stages.map((_, i) => i).filter((i) => stages[i]!.timeConstant > 0);
  const pulls = delayed.map((i) => state[i]! - power * stages[i]!.resistance);
  const slopeAt = (time: number) => {
    let sum = 0;
    delayed.forEach((i, at) => {
      const { timeConstant } = stages[i]!;
      sum -= (pulls[at]! / timeConstant) * Math.exp(-time / timeConstant);
    });
    return sum;
  };
  const times = delayed
    .flatMap((i) => watchTimes.map((t) => t * stages[i]!.timeConstant))
    .filter((t) => t < duration)
    .sort((a, b) => a - b);
  return Math.max(-Infinity, ...innerMaxima(slopeAt, [0, ...times, duration]).map(riseAt));
}

/** Times at which the slope passes from rising to falling. */
function innerMaxima(slopeAt: (time: number) => number, times: readonly number[]): number[] {
  const maxima: number[] = [];
  for (let k = 1; k < times.length; k++) {
    let low = times[k - 1]!;
    let high = times[k]!;
    if (!(slopeAt(low) > 0 && slopeAt(high) < 0)) continue;
    for (let i = 0; i < halvings; i++) {
      const middle = (low + high) / 2;
      if (slopeAt(middle) > 0) low = middle;
      else high = middle;
    }
    maxima.push((low + high) / 2);
  }
  return maxima;
}

/**
 * Peak of the periodic state under rectangular pulses that return to no heat, K:
 * P Σ r (1 - e^(-tp/τ))/(1 - e^(-T/τ)). Exact.
 *
 * @param share tp/T, 0 to 1
 * @param period T, s
 */
export function pulsePeak(
  stages: readonly FosterStage[],
  power: number,
  share: number,
  period: number,
): number {
  let sum = 0;
  for (const { resistance, timeConstant } of stages) {
    const whole = growth(period, timeConstant);
    sum += resistance * (whole > 0 ? growth(share * period, timeConstant) / whole : share);
  }
  return power * sum;
}
