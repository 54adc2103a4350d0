import { type Outcome, success } from '../../../shared/outcome.ts';
import type { HeatTable } from './heatTable.ts';
import { prepareSink, type SinkDescription, type SinkOptions } from './sink.ts';
import { tabulateSink } from './sinkTable.ts';

/** What a bench run is compared with: the sink's heat law for any film factor, and what is known of its capacity. */
export interface BenchModel {
  /** Heat against rise for a factor on the film coefficients, in air of this temperature (K). */
  readonly lawFor: (filmFactor: number, air: number) => HeatTable;
  /** J/K */
  readonly heatCapacity: number;
  /** Standard deviation of ln(heat capacity): 0.03 if weighed, 0.1 from the drawing; null when nothing is known. */
  readonly capacityUncertainty: number | null;
}

/** Own choice: scale and specific heat together; drawing, alloy and specific heat together. */
export const weighedUncertainty = 0.03;
export const drawnUncertainty = 0.1;

/** The model of a sink for bench runs; fails as `prepareSink` does. */
export function benchModel(description: SinkDescription, options: SinkOptions = {}): Outcome<BenchModel> {
  const nominal = prepareSink(description, options);
  if (!nominal.ok) return nominal;
  return success({
    lawFor: (filmFactor, air) => {
      const sink = prepareSink(description, { ...options, filmFactor });
      return tabulateSink(sink.ok ? sink.value : nominal.value, air);
    },
    heatCapacity: nominal.value.heatCapacity,
    capacityUncertainty: description.mass === null ? drawnUncertainty : weighedUncertainty,
  });
}
