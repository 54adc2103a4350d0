import { For, Show } from 'solid-js';
import { effortWords, type Remedy, type RemedyList } from '../../../shared/answers.ts';
import { useSheet } from '../state/sheet.ts';
import { remediesFor } from './lastRemedies.ts';

/** Lines of the list on paper. */
const mostLines = 5;

/** The changes worth a line on paper: what is enough first, else what comes nearest, two together if one alone is not. */
export function fitLines(list: RemedyList): readonly Remedy[] {
  const enough = [...list.remedies, ...list.pairs].filter((remedy) => remedy.enough);
  const all = enough.length > 0 ? enough : [...list.remedies, ...list.pairs].sort((a, b) => b.gain - a.gain);
  return all.slice(0, mostLines);
}

/** What would make the design fit, as plain text for paper; nothing while it fits or nothing was asked. */
export function FitList() {
  const { store } = useSheet();
  const list = () => {
    const found = remediesFor(store.design());
    return found && found.reach !== 'fits' ? found : null;
  };
  return (
    <Show when={list()}>
      {(found) => (
        <section class="fit-list">
          <h2>What would make it fit: {found().name}</h2>
          <p>
            {found().sentence} {found().figures}
          </p>
          <ol>
            <For each={fitLines(found())}>
              {(remedy) => (
                <li>
                  {remedy.title} ({effortWords[remedy.effort]}
                  {remedy.gainWords === '' ? '' : `, ${remedy.gainWords}`})
                  {remedy.enough ? '.' : `; not enough: ${remedy.missing}.`}
                </li>
              )}
            </For>
          </ol>
        </section>
      )}
    </Show>
  );
}
