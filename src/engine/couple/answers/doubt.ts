import type { Design } from '../../../../shared/design/schema.ts';
import { bandSteps } from '../band.ts';
import { type Doubt, doubtFrom, noDoubt } from './edge.ts';
import { lastOf } from './steps.ts';

/** Samples for the design itself, and for one of many changed designs. */
export const baseSamples = 128;
export const changedSamples = 64;

/** Steps to a doubt: yields the share done. */
export function* doubtSteps(design: Design, samples = baseSamples): Generator<number, Doubt> {
  const found = yield* bandSteps(design, { samples });
  return found.ok ? doubtFrom(design, found.value.edges) : noDoubt;
}

/**
 * How far the pessimistic edges lie from the nominal figures, from the band of the design. What has no band is judged
 * by its nominal figures.
 */
export function doubtOf(design: Design, samples = baseSamples): Doubt {
  return lastOf(doubtSteps(design, samples));
}
