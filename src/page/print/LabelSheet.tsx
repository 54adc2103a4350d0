import './labels.css';
import { For, Index, onCleanup, onMount, Show } from 'solid-js';
import { useSheet } from '../state/sheet.ts';

/** While this mark stands on the root element, paper takes the labels and nothing else. */
const mark = 'labels';

/** Labels for the box, chosen by the design, with a print of their own. */
export function LabelSheet() {
  const sheet = useSheet();
  const labels = () => sheet.results.band()?.people?.labels ?? sheet.results.solution()?.labels ?? [];
  const root = document.documentElement;
  const unmark = () => root.removeAttribute('data-print');

  onMount(() => {
    globalThis.addEventListener('afterprint', unmark);
    onCleanup(() => {
      globalThis.removeEventListener('afterprint', unmark);
      unmark();
    });
  });

  function printLabels(): void {
    root.setAttribute('data-print', mark);
    globalThis.print();
  }

  return (
    <Show when={labels().length > 0}>
      <section class="labels" aria-labelledby="labels-title">
        <div class="labels-head">
          <h3 class="caution-title" id="labels-title">
            Labels for this box
          </h3>
          <button type="button" class="plain-button" onClick={printLabels}>
            Print labels
          </button>
        </div>
        <p class="sketch-note">
          Chosen by this design, 70 mm wide. Print at full size, cut, and cover with clear film.
        </p>
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
        <p class="label-name">{sheet.store.view.name}</p>
      </section>
    </Show>
  );
}
