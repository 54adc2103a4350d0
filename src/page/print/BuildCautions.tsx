import { For } from 'solid-js';
import { useSheet } from '../state/sheet.ts';
import { severityWords } from '../stations/severity.ts';
import { sourceKeys } from './sourceList.ts';

/** The cautions as they hold now: with the hottest place at its pessimistic edge once the band is there. */
export function createCautions() {
  const { results } = useSheet();
  return () => results.band()?.people?.cautions ?? results.solution()?.cautions ?? [];
}

/** Every caution with its figure and what to do, most severe first. */
export function BuildCautions() {
  const cautions = createCautions();
  const number = (source: string) => sourceKeys(cautions()).indexOf(source) + 1;
  return (
    <section class="build-cautions">
      <h2>Cautions</h2>
      <ol class="build-columns">
        <For each={cautions()}>
          {(caution) => (
            <li class={`severity-${caution.severity}`}>
              <strong>
                <span class="build-severity">{severityWords[caution.severity]}</span> {caution.title}:{' '}
                {caution.figure}.
              </strong>{' '}
              {caution.sentence} <em>{caution.action}</em>{' '}
              <span class="build-source">[{number(caution.source)}]</span>
            </li>
          )}
        </For>
      </ol>
    </section>
  );
}
