import type { Design } from '../../../../shared/design/schema.ts';
import type { Service } from '../../../../shared/solution.ts';
import { prepare } from '../prepare.ts';
import { type CycleGuess, cycleAt } from '../serviceCycle.ts';
import { atEdge, type Doubt, noDoubt } from './edge.ts';

/** Stands for a junction without a steady state, K below the limit; far from any real margin. */
export const noSteadyState = -1e4;

export interface QuickMargin {
  /** Design limit less highest junction temperature of the cycle, K; `noSteadyState` in a runaway, null without a result. */
  readonly margin: number | null;
  /** The rail cannot make the power asked for, or nothing can be computed. */
  readonly limited: boolean;
  /** Where to start a neighbouring search. */
  readonly guess: CycleGuess | undefined;
}

/**
 * Margin of one service at a duty, through the same coupled models as `solve`, without what a margin does not need
 * (safe duty, hold time, cautions). For searches; what they find is solved in full.
 *
 * share: transmit share; the design's own if not given.
 */
export function quickMargin(
  design: Design,
  service: Service,
  doubt: Doubt = noDoubt,
  share = design.service.transmitShare,
  guess?: CycleGuess,
): QuickMargin {
  const { electrics, coupled, limits } = prepare(design);
  const pep = electrics.ok ? electrics.value.pep : electrics;
  const limited = !pep.ok || pep.value.limited;
  if (!coupled.ok) return { margin: null, limited, guess: undefined };
  const state = cycleAt(coupled.value, service, share, guess);
  if (!state.ok) {
    const margin = state.reason.key === 'runaway' ? noSteadyState : null;
    return { margin, limited, guess: undefined };
  }
  const peak = atEdge(state.value.junctionPeak, design.surroundings.ambient, service, doubt);
  return { margin: limits.design - peak, limited, guess: state.value.guess };
}
