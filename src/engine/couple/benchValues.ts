import type { Design } from '../../../shared/design/schema.ts';
import { drawnUncertainty, weighedUncertainty } from '../heat/benchModel.ts';
import { metalOf } from '../heat/materials.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import { sinkKnowledge } from './benchKnowledge.ts';
import { type HeatPath, ratingRise } from './heatPath.ts';
import type { ValueList } from './values.ts';

/** 90 % half-width of a figure, as a share of it, from the standard deviation of its logarithm. */
function halfWidth(deviation: number): number {
  return Math.expm1(ninetyPercent * deviation);
}

/**
 * What the bench runs correct and how far film coefficients and heat capacity are known; without a run the factors are 1
 * and the doubts those of the estimate, at the rise of the rating.
 *
 * pressure: Pa
 */
export function putBench(list: ValueList, { sink }: HeatPath, design: Design, pressure: number): void {
  const known = sinkKnowledge(design, pressure);
  const { ambient } = design.surroundings;
  const estimate = design.sink.mass === null ? drawnUncertainty : weighedUncertainty;
  list.putAll({
    benchRunsCounted: known.counted,
    filmFactor: known.filmFactor,
    filmDoubt: halfWidth(known.uncertainty ?? sink.filmUncertainty(ambient + ratingRise, ambient)),
    sinkCapacityEstimate: sink.mass * metalOf(design.sink.alloy).specificHeat,
    capacityDoubt: halfWidth(known.capacityUncertainty ?? estimate),
  });
  list.put('capacityFactor', sink.heatCapacity / list.values.sinkCapacityEstimate!);
}
