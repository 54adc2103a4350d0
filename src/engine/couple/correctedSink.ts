import { withLoggedSinks } from '../../../shared/design/loggedSink.ts';
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
  const heatCapacity = sink.value.heatCapacity * (knowledge.capacityFactor ?? 1);
  const known = { ...sink.value, heatCapacity };
  return success(known, [...knowledge.notes, ...sink.notes]);
}

/**
 * The sink of a design, corrected by its bench runs.
 *
 * @param pressure Pa
 * @param running false counts a fan as stopped; runs made with a fan then say nothing of the film coefficients, those
 * made without one do
 */
export function correctedSink(design: Design, pressure: number, running = true): Outcome<Sink> {
  const known = sinkKnowledge(design, pressure);
  if (running || !hasFan(design.sink)) return sinkWith(design, pressure, known, running);
  const { filmFactor } = sinkKnowledge(stopped(design), pressure);
  return sinkWith(design, pressure, { ...known, filmFactor }, running);
}

/** A design without its fan, and with those runs alone that were logged without one. */
function stopped(design: Design): Design {
  const { sink, bench } = withLoggedSinks(design);
  return {
    ...design,
    sink: { ...sink, fan: 'none' },
    bench: bench.filter((run) => run.sink !== null && !hasFan(run.sink)),
  };
}
