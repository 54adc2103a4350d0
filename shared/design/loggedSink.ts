import type { Design, LoggedSink, SinkInput } from './schema.ts';

/** What a bench run keeps of the sink it is logged on. */
export function loggedSink(sink: SinkInput): LoggedSink {
  const { placement: _place, converterPart: _converter, switchPart: _switch, ...rest } = sink;
  const { rectifierPart: _rectifier, ...logged } = rest;
  return logged;
}

/** A design whose runs all say on which sink they were logged: those that do not were logged on the sink as given. */
export function withLoggedSinks(design: Design): Design {
  if (design.bench.every(({ sink }) => sink !== null)) return design;
  const present = loggedSink(design.sink);
  return { ...design, bench: design.bench.map((run) => ({ ...run, sink: run.sink ?? present })) };
}

/** Fields in which a sink is not the one a run was logged on, in the order of the file. */
export function changedSince(logged: LoggedSink, sink: SinkInput): readonly (keyof LoggedSink)[] {
  return (Object.keys(logged) as (keyof LoggedSink)[]).filter((field) => logged[field] !== sink[field]);
}
