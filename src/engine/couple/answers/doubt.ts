import type { Design } from '../../../../shared/design/schema.ts';
import { services } from '../../../../shared/solution.ts';
import { bandSteps } from '../band.ts';
import { solve } from '../solve.ts';
import { type Doubt, noDoubt } from './standing.ts';
import { lastOf } from './steps.ts';

/** Samples for the design itself, and for one of many changed designs. */
export const baseSamples = 128;
export const changedSamples = 64;

/** Steps to a doubt: yields the share done. */
export function* doubtSteps(design: Design, samples = baseSamples): Generator<number, Doubt> {
  const found = yield* bandSteps(design, { samples });
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

/**
 * How far the pessimistic edge of each service's junction lies above the nominal figure, from the band of the design.
 * Services without a band are judged by their nominal figures.
 */
export function doubtOf(design: Design, samples = baseSamples): Doubt {
  return lastOf(doubtSteps(design, samples));
}
