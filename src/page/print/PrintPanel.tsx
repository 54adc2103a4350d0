import { For } from 'solid-js';
import { figuresCsv } from '../../engine/catalogue/figuresCsv.ts';
import { figuresJson } from '../../engine/catalogue/figuresJson.ts';
import { saveBlob, stemOf } from '../export/files.ts';
import { HeadPanel } from '../parts/HeadPanel.tsx';
import { useSheet } from '../state/sheet.ts';
import { type PrintJob, printAs } from './job.ts';

const jobs: readonly { readonly job: PrintJob; readonly words: string; readonly note: string }[] = [
  {
    job: 'build',
    words: 'Build sheet',
    note: 'two pages: verdicts, what was given, drawings, cautions, sources',
  },
  { job: 'labels', words: 'Labels', note: 'for the box, at full size' },
  { job: 'both', words: 'Both', note: 'the labels on a page of their own' },
];

/** What can be taken off the sheet: paper, and its figures as files. */
export function PrintPanel(props: { onClose: () => void }) {
  return (
    <HeadPanel title="Print and save figures" takesFocus onClose={props.onClose}>
      <div class="panel-columns">
        <section>
          <h3 class="column-title">Print</h3>
          <ul class="panel-list">
            <For each={jobs}>
              {({ job, words, note }) => (
                <li>
                  <button type="button" class="plain-button" onClick={() => void printAs(job)}>
                    {words}
                  </button>{' '}
                  <span class="row-note">{note}</span>
                </li>
              )}
            </For>
          </ul>
        </section>
        <SaveFigures />
      </div>
    </HeadPanel>
  );
}

/** Every named quantity as a file, with the edges of the band if it is there. */
function SaveFigures() {
  const { store, results } = useSheet();
  function save(kind: 'csv' | 'json'): void {
    const solution = results.solution();
    const design = results.solved() ?? store.design();
    if (!solution) return;
    const band = results.band() ?? null;
    const judged = band ? { ...solution, verdicts: band.verdicts } : solution;
    const text = kind === 'csv' ? figuresCsv(judged, band) : figuresJson(design, judged, band);
    const type = kind === 'csv' ? 'text/csv;charset=utf-8' : 'application/json';
    saveBlob(new Blob([text], { type }), `${stemOf(design.name)}.figures.${kind}`);
  }
  const sure = () => (results.band() ? 'with the edges of the band' : 'nominal; the edges are not there yet');
  return (
    <section>
      <h3 class="column-title">Save figures</h3>
      <ul class="panel-list">
        <li>
          <button type="button" class="plain-button" onClick={() => save('csv')}>
            CSV
          </button>{' '}
          <span class="row-note">a table for a spreadsheet, {sure()}</span>
        </li>
        <li>
          <button type="button" class="plain-button" onClick={() => save('json')}>
            JSON
          </button>{' '}
          <span class="row-note">the same with formulas, verdicts and cautions</span>
        </li>
      </ul>
      <p class="row-note">Each plot has its own “Save picture”.</p>
    </section>
  );
}
