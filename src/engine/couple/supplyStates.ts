import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { prepareFeed } from './feed.ts';
import { transmitPoint } from './serviceLoad.ts';
import type { Electrics } from './supplySide.ts';
import { hasState } from './supplyVoltage.ts';

/** The peak of the envelope from a source that is nearly empty. */
export interface EmptyState {
  /** Open-circuit voltage then, V. */
  readonly openVoltage: number;
  /** At the load, V. */
  readonly inputVoltage: number;
  /** A */
  readonly current: number;
}

/**
 * PEP once more with the source near empty: its voltage lower, its resistance grown. The path stays as warm as it was.
 *
 * null when the design names no such voltage. Errors: those of the operating point.
 */
export function emptyState(
  design: Design,
  electrics: Electrics,
  junction: number,
): Outcome<EmptyState> | null {
  const { source } = design;
  if (source.emptyVoltage === null || !hasState(design)) return null;
  const tired: Design = {
    ...design,
    source: {
      ...source,
      openVoltage: source.emptyVoltage,
      internalResistance: source.internalResistance * source.emptyResistanceFactor,
    },
  };
  const { loads, wire } = electrics;
  const feed = prepareFeed(tired, wire.path, loads.final, junction, true);
  const point = transmitPoint({ ...loads, design: tired, feed }, 1, junction);
  if (!point.ok) return point;
  return {
    ok: true,
    value: {
      openVoltage: source.emptyVoltage,
      inputVoltage: point.value.loadVoltage,
      current: point.value.sourceCurrent,
    },
    notes: [],
  };
}
