import { Show } from 'solid-js';
import { printAs } from './job.ts';
import { createLabels, LabelList } from './LabelList.tsx';

/** Labels for the box, chosen by the design, with a print of their own. */
export function LabelSheet() {
  const labels = createLabels();
  return (
    <Show when={labels().length > 0}>
      <section class="labels" aria-labelledby="labels-title">
        <div class="labels-head">
          <h3 class="caution-title" id="labels-title">
            Labels for this box
          </h3>
          <button type="button" class="plain-button" onClick={() => void printAs('labels')}>
            Print labels
          </button>
        </div>
        <p class="sketch-note">
          Chosen by this design, 70 mm wide. Print at full size, cut, and cover with clear film.
        </p>
        <LabelList />
      </section>
    </Show>
  );
}
