import type { Design } from '../../../../shared/design/schema.ts';
import { services } from '../../../../shared/solution.ts';
import { band } from '../band.ts';
import { solve } from '../solve.ts';
import { type Doubt, noDoubt } from './standing.ts';

/** Samples for the design itself, and for one of many changed designs. */
export const baseSamples = 128;
export const changedSamples = 64;

/**
 * How far the pessimistic edge of each service's junction lies above the nominal figure, from the band of the design.
 * Services without a band are judged by their nominal figures.
 */
export function doubtOf(design: Design, samples = baseSamples): Doubt {
  const found = band(design, { samples });
  if (!found.ok) return noDoubt;
  const { values } = solve(design);
  const { ambient } = design.surroundings;
  const doubt: Record<string, number> = {};
  for (const service of services) {
    const nominal = values[`${service}.junctionPeak`];
    const high = found.value.edges[`${service}.junctionPeak`]?.high;
    if (nominal === undefined || high === undefined || high === null || !(nominal > ambient)) continue;
    doubt[service] = Math.max(1, (high - ambient) / (nominal - ambient));
  }
  return doubt;
}
