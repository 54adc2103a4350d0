import { For, Index, Show } from 'solid-js';
import type { Note } from '../../../shared/outcome.ts';
import { disclaimer, standingLines } from '../../../shared/standing.ts';
import { LabelSheet, SourceOf } from '../later.tsx';
import { useSheet } from '../state/sheet.ts';
import { severityWords } from './severity.ts';

/** What can hurt someone, most severe first, always in sight and always in print. */
export function Cautions(props: { number: number }) {
  const sheet = useSheet();
  const cautions = () => sheet.results.band()?.people?.cautions ?? sheet.results.solution()?.cautions ?? [];
  return (
    <section class="station cautions" id="cautions" aria-labelledby="cautions-title">
      <h2 class="station-title" id="cautions-title">
        <span class="station-number">{props.number}</span> Cautions
      </h2>
      <ol class="caution-list">
        <Index each={cautions()}>
          {(caution) => (
            <li class={`caution severity-${caution().severity}`}>
              <p class="caution-word">
                {severityWords[caution().severity]} <span class="caution-figure">{caution().figure}</span>
              </p>
              <div>
                <h3 class="caution-title">{caution().title}</h3>
                <p>{caution().sentence}</p>
                <p class="caution-action">{caution().action}</p>
                <SourceOf name={caution().source} />
              </div>
            </li>
          )}
        </Index>
      </ol>
      <LabelSheet />
      <Doubts />
      <div class="standing">
        <ul>
          <For each={standingLines}>{(line) => <li>{line}</li>}</For>
        </ul>
        <p>{disclaimer}</p>
      </div>
    </section>
  );
}

const doubtWords: Readonly<Record<Note['kind'], string>> = {
  'outside validity': 'outside the range of the formula',
  'from memory': 'from memory',
  assumed: 'assumed',
  limit: 'limit',
  information: 'to know',
};

/** What the figures rest on that this design does not say itself. */
function Doubts() {
  const sheet = useSheet();
  const notes = () => sheet.results.solution()?.notes ?? [];
  return (
    <Show when={notes().length > 0}>
      <div class="doubts">
        <h3 class="caution-title">What these figures rest on</h3>
        <ul>
          <For each={notes()}>
            {(note) => (
              <li>
                {note.sentence} <span class="doubts-kind">({doubtWords[note.kind]})</span>
              </li>
            )}
          </For>
        </ul>
      </div>
    </Show>
  );
}
