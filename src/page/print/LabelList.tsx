import './labels.css';
import { For, Index } from 'solid-js';
import { useSheet } from '../state/sheet.ts';

/** The labels that belong on this box. */
export function createLabels() {
  const { results } = useSheet();
  return () => results.band()?.people?.labels ?? results.solution()?.labels ?? [];
}

export function LabelList() {
  const labels = createLabels();
  return (
    <ul class="label-list">
      <Index each={labels()}>
        {(label) => (
          <li class={`label label-${label().key}`}>
            <p class="label-heading">{label().heading}</p>
            <For each={label().lines}>{(line) => <p>{line}</p>}</For>
            <p class="label-place">{label().place}</p>
          </li>
        )}
      </Index>
    </ul>
  );
}
