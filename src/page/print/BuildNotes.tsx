import { For, Show } from 'solid-js';
import { disclaimer, standingLines } from '../../../shared/standing.ts';
import { useSheet } from '../state/sheet.ts';
import { createCautions } from './BuildCautions.tsx';
import { sourceKeys, writeSource } from './sourceList.ts';

/** What was assumed and what to note, the sources in short, and what the sheet does not replace. */
export function BuildNotes() {
  const { results } = useSheet();
  const notes = () => results.solution()?.notes ?? [];
  const cautions = createCautions();
  return (
    <section class="build-notes">
      <Show when={notes().length > 0}>
        <p>
          <strong>Assumed and noted.</strong>{' '}
          {notes()
            .map((note) => note.sentence)
            .join(' ')}
        </p>
      </Show>
      <p>
        <strong>Always.</strong> {standingLines.join(' ')}
      </p>
      <p>{disclaimer}</p>
      <p class="build-sources">
        <strong>Sources.</strong>{' '}
        <For each={sourceKeys(cautions())}>
          {(key, index) => (
            <>
              [{index() + 1}]&nbsp;{writeSource(key)}.{' '}
            </>
          )}
        </For>
      </p>
    </section>
  );
}
