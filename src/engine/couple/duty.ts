import { type Outcome, success } from '../../../shared/outcome.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';

/** What a duty search needs to know at one transmit share. */
export interface DutyPoint {
  /** Highest junction temperature within the cycle, K. */
  readonly junctionPeak: number;
  /** Highest plate temperature within the cycle, K. */
  readonly platePeak: number;
}

/** A temperature that must not be passed at any time of the cycle. */
export interface DutyLimit {
  readonly key: 'junction' | 'touch';
  /** K */
  readonly limit: number;
  readonly temperature: (point: DutyPoint) => number;
}

export interface DutyFound {
  /** Largest share at which every limit is kept, 0..1. */
  readonly share: number;
  /** The limit that ends it; null at share 1. */
  readonly governing: DutyLimit['key'] | null;
}

/** Shares at which the curve is looked at first; it is smooth but need not rise (bias left on in receive). */
const scanSteps = 20;
/** A duty is stated in whole per cent; this is well below. */
const shareTolerance = 1e-5;

/**
 * Largest transmit share at which no limit is passed: the first crossing met when the share is raised from nothing.
 *
 * at: state at a share in [0, 1]. Where even share 0 passes a limit the answer is 0 with that limit.
 * rising: transmitting heats everything at least as much as listening, so temperatures rise with the share and the ends
 * alone bracket the crossing.
 */
export function safeShare(
  at: (share: number) => Outcome<DutyPoint>,
  limits: readonly DutyLimit[],
  rising: boolean,
): Outcome<DutyFound> {
  const steps = rising ? 1 : scanSteps;
  let before = 0;
  for (let step = 0; step <= steps; step += 1) {
    const share = step / steps;
    const point = at(share);
    if (!point.ok && step === 0) return point;
    // A share that has no steady state (runaway) is beyond the safe one.
    const passed = point.ok
      ? limits.find((limit) => limit.temperature(point.value) > limit.limit)
      : limits[0];
    if (passed) {
      if (step === 0) return success({ share: 0, governing: passed.key });
      return success(crossing(at, limits, before, share));
    }
    before = share;
  }
  return success({ share: 1, governing: null });
}

/** The limit first passed between a good share and a bad one, and where. */
function crossing(
  at: (share: number) => Outcome<DutyPoint>,
  limits: readonly DutyLimit[],
  good: number,
  bad: number,
): DutyFound {
  let found: DutyFound = { share: bad, governing: null };
  for (const limit of limits) {
    const excess = (share: number) => {
      const point = at(share);
      return point.ok ? limit.temperature(point.value) - limit.limit : limit.limit;
    };
    if (excess(bad) <= 0) continue;
    const root = bracketedRoot(excess, good, bad, { tolerance: shareTolerance });
    const share = root.ok ? root.value.root : good;
    if (share <= found.share) found = { share: Math.max(good, share - shareTolerance), governing: limit.key };
  }
  return found;
}
