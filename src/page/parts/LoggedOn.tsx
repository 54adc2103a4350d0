import { Show } from 'solid-js';
import { changedSince, loggedSink } from '../../../shared/design/loggedSink.ts';
import type { Design, LoggedSink } from '../../../shared/design/schema.ts';
import { applies } from '../state/applies.ts';
import { knownField } from '../state/fields.ts';
import { type UnitOf, writeLeaf } from '../state/given.ts';
import { useSheet } from '../state/sheet.ts';

/** Changes named one by one; more are counted. */
const mostNamed = 3;

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What has changed of the sink since a run was logged, as words; only what has a meaning before or after. */
export function sinkChanges(design: Design, logged: LoggedSink, unitOf: UnitOf): readonly string[] {
  const before: Design = { ...design, sink: { ...design.sink, ...logged } };
  return changedSince(logged, design.sink).flatMap((field) => {
    const path = `sink.${field}`;
    if (!applies(design, path) && !applies(before, path)) return [];
    const spec = knownField(path);
    const words = (value: LoggedSink[typeof field]) => {
      const text = writeLeaf({ path, spec }, value, unitOf);
      return spec.kind === 'choice' ? `“${text}”` : text;
    };
    return [`${lowerFirst(spec.label)} ${words(logged[field])}, now ${words(design.sink[field])}`];
  });
}

/** A design in which a run was logged on the sink as it now is. */
export function loggedOnPresent(design: Design, index: number): Design {
  const sink = loggedSink(design.sink);
  return { ...design, bench: design.bench.map((run, at) => (at === index ? { ...run, sink } : run)) };
}

/** Says where the sink is no longer the one that a run was logged on, and takes the word of who only mended an entry. */
export function LoggedOn(props: { index: number }) {
  const { store, preferences } = useSheet();
  const words = () => {
    const run = store.view.bench[props.index];
    if (run === undefined || run.readings.length === 0) return '';
    if (run.sink === null) {
      return 'The file does not say on which sink this was logged: the sink as given is taken, and every change of it.';
    }
    const changes = sinkChanges(store.design(), run.sink, preferences.unitOf);
    if (changes.length === 0) return '';
    const more = changes.length > mostNamed ? `; and ${changes.length - mostNamed} more` : '';
    const named = changes.slice(0, mostNamed).join('; ');
    return `Logged before the sink was changed (${named}${more}): what the run found there is carried over. If you only mended a wrong entry, say so:`;
  };
  return (
    <Show when={words()}>
      {(said) => (
        <p class="advice">
          {said()}{' '}
          <button
            type="button"
            class="plain-button"
            onClick={() => store.change((design) => loggedOnPresent(design, props.index))}
          >
            run {props.index + 1} was made on the sink as now given
          </button>
        </p>
      )}
    </Show>
  );
}
