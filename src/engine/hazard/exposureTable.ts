import type { ExposureRow } from '../../../shared/solution.ts';
import { keepLast } from '../numerics/keepLast.ts';
import { bandNames, bandTopEdge } from './amateurBands.ts';
import {
  type ExposureInput,
  exposureDistance,
  exposurePower,
  roundUpDistance,
  shareInWindow,
} from './exposureDistance.ts';
import { dipoleGain, exemptionDistance, exemptionState } from './exposureExemption.ts';
import { lightSpeed } from './exposureFields.ts';
import { exposureLimit } from './exposureLimits.ts';

/** The exemption compares averages over the time of the general population, s. 47 CFR 1.1310. */
const exemptionWindow = 1800;

/**
 * Average effective radiated power for the US exemption test, W: EIRP/1.64 over 30 min.
 *
 * For a short antenna not less than the average power itself, which the rule takes in its place.
 */
export function exemptionPower(input: ExposureInput): number {
  const share = shareInWindow(input, exemptionWindow);
  const average = exposurePower(input.pep, input.exposureModeFactor, share, input.feedLineLoss);
  const effective = (average * 10 ** (input.gain / 10)) / dipoleGain;
  return input.kind === 'halfWaveWire' ? effective : Math.max(effective, average);
}

/**
 * Limit, average power, least distance and US exemption of every band from 160 to 6 m, at the top edge of each.
 *
 * The exemption is judged at the nearest that people come, or at the least distance where that is not known.
 */
export const exposureTable = keepLast(findTable, (input: ExposureInput) => input, 1);

function findTable(input: ExposureInput): readonly ExposureRow[] {
  const effective = exemptionPower(input);
  return bandNames.flatMap((band): ExposureRow[] => {
    const frequency = bandTopEdge(band);
    const limit = exposureLimit(input.limitSet, input.tier, frequency);
    const exemptFrom = exemptionDistance(frequency, effective);
    if (!limit.ok || !exemptFrom.ok) return [];
    const found = exposureDistance(input, band);
    const distance = found.ok ? found.value.shown : null;
    const judgedAt = input.nearestPerson ?? distance;
    const state = judgedAt === null ? null : exemptionState(frequency, judgedAt, effective);
    const share = shareInWindow(input, limit.value.averaging);
    return [
      {
        band,
        frequency,
        electric: limit.value.electric,
        magnetic: limit.value.magnetic,
        density: limit.value.density,
        averagePower: exposurePower(input.pep, input.exposureModeFactor, share, input.feedLineLoss),
        distance,
        nearZone: lightSpeed / frequency / (2 * Math.PI),
        exemption: state?.ok ? state.value : null,
        exemptFrom: roundUpDistance(exemptFrom.value),
        judgedAt,
        chosen: band === input.band,
      },
    ];
  });
}
