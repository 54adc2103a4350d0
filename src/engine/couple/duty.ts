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
 * planned: a state that is known already; where temperatures rise it spares the end it lies beyond.
 */
export function safeShare(
  at: (share: number) => Outcome<DutyPoint>,
  limits: readonly DutyLimit[],
  rising: boolean,
  planned?: DutyPoint & { readonly share: number },
): Outcome<DutyFound> {
  const known = new Map<number, Outcome<DutyPoint>>();
  if (planned) known.set(planned.share, success(planned));
  // Ends of a bracket are asked for again and again, each time a steady state: they are kept.
  const stateAt = (share: number): Outcome<DutyPoint> => {
    const state = known.get(share) ?? at(share);
    known.set(share, state);
    return state;
  };
  let before = 0;
  for (const share of rising ? endsAround(planned, limits) : evenShares) {
    const point = stateAt(share);
    if (!point.ok && share === 0) return point;
    // A share that has no steady state (runaway) is beyond the safe one.
    const passed = point.ok ? passedLimit(limits, point.value) : limits[0];
    if (passed) {
      if (share === 0) return success({ share: 0, governing: passed.key });
      return success(crossing(stateAt, limits, before, share));
    }
    before = share;
  }
  return success({ share: 1, governing: null });
}

const evenShares = Array.from({ length: scanSteps + 1 }, (_, step) => step / scanSteps);

/** Shares that bracket the crossing of rising temperatures, the smallest first. */
function endsAround(
  planned: (DutyPoint & { readonly share: number }) | undefined,
  limits: readonly DutyLimit[],
): readonly number[] {
  if (!planned) return [0, 1];
  return passedLimit(limits, planned) ? [0, planned.share] : [planned.share, 1];
}

function passedLimit(limits: readonly DutyLimit[], point: DutyPoint): DutyLimit | undefined {
  return limits.find((limit) => limit.temperature(point) > limit.limit);
}

/** The limit first passed between a good share and a bad one, and where. */
function crossing(
  at: (share: number) => Outcome<DutyPoint>,
  limits: readonly DutyLimit[],
  good: number,
  bad: number,
): DutyFound {
  let end = bad;
  let governing: DutyLimit['key'] | null = null;
  for (const limit of limits) {
    const excess = (share: number) => {
      const point = at(share);
      return point.ok ? limit.temperature(point.value) - limit.limit : limit.limit;
    };
    // A limit that is kept where another one is met does not govern.
    if (excess(end) <= 0) continue;
    const root = bracketedRoot(excess, good, end, { tolerance: shareTolerance });
    end = root.ok ? root.value.root : good;
    governing = limit.key;
  }
  return { share: governing ? Math.max(good, end - shareTolerance) : end, governing };
}
