import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import { prepareSink, type Sink } from '../heat/sink.ts';
import { type SinkKnowledge, sinkKnowledge } from './benchKnowledge.ts';
import { hasFan, sinkDescription } from './sinkDescription.ts';

/** A sink of a design made ready with a given knowledge of its film coefficients and heat capacity. */
export function sinkWith(
  design: Design,
  pressure: number,
  knowledge: SinkKnowledge,
  running = true,
  conductivity?: number,
): Outcome<Sink> {
  const description = sinkDescription(design.sink, running, conductivity);
  if (!description.ok) return description;
  const sink = prepareSink(description.value, { pressure, filmFactor: knowledge.filmFactor });
  if (!sink.ok) return sink;
  const { heatCapacity } = knowledge;
  const known = heatCapacity === null ? sink.value : { ...sink.value, heatCapacity };
  return success(known, [...knowledge.notes, ...sink.notes]);
}

/**
 * The sink of a design, corrected by its bench runs.
 *
 * @param pressure Pa
 * @param running false counts a fan as stopped; runs made with the fan then say nothing of the film coefficients
 */
export function correctedSink(design: Design, pressure: number, running = true): Outcome<Sink> {
  const known = sinkKnowledge(design, pressure);
  const asRun = running || !hasFan(design.sink);
  return sinkWith(design, pressure, asRun ? known : { ...known, filmFactor: 1 }, running);
}
