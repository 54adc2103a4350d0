import { Show } from 'solid-js';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { FitList } from '../answers/FitList.tsx';
import { HeatLadder, SinkDrawing, Stream, sumOf } from '../drawings/index.ts';
import { SvgPlot } from '../parts/plot/SvgPlot.tsx';
import { useSheet } from '../state/sheet.ts';
import { dutyPlot } from '../stations/plots.ts';
import { BuildCautions } from './BuildCautions.tsx';
import { FiguresByService, SupplyFigures } from './BuildFigures.tsx';
import { BuildGiven } from './BuildGiven.tsx';
import { BuildNotes } from './BuildNotes.tsx';
import { BuildVerdicts } from './BuildVerdicts.tsx';

/** Size of the duty plot in units of its text: smaller than on the screen, so that the text comes out larger. */
const plotSize = { width: 510, height: 240 };

/** The design on one or two pages, for the bench and for the file. */
export function BuildSheet() {
  const sheet = useSheet();
  const planned = () => writeQuantity(sheet.store.view.service.transmitShare, 'share', '%', 2);
  return (
    <article class="build-sheet">
      <header class="build-head">
        <p class="build-kind">Heat and Rail · build sheet</p>
        <h1>{sheet.store.view.name}</h1>
        <p class="build-date">{dateOf(new Date())}</p>
      </header>
      <BuildVerdicts />
      <BuildPath />
      <div class="build-drawings">
        <div>
          <section class="build-piece">
            <h2>Sink and devices</h2>
            <SinkDrawing />
          </section>
          <section class="build-piece">
            <h2>
              Heat path{' '}
              <small>
                {sheet.nameOf(sheet.service())}, {planned()}: highest
              </small>
            </h2>
            <HeatLadder />
          </section>
        </div>
        <div>
          <FiguresByService />
          <DutyPlot />
        </div>
      </div>
      <SupplyFigures />
      <BuildCautions />
      <FitList />
      <BuildGiven />
      <BuildNotes />
    </article>
  );
}

/** A date that reads the same everywhere: "25 November 2026". */
export function dateOf(date: Date): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(date);
}

function BuildPath() {
  const sheet = useSheet();
  const steps = () => {
    const all = sheet.results.solution()?.powerPath.pep ?? [];
    const straight = sheet.store.view.converter.kind === 'none';
    return all.filter((step) => !(straight && step.key === 'converter'));
  };
  return (
    <Show when={steps().length > 0}>
      <section class="build-piece build-path">
        <h2>
          Power path at PEP <small>{sumOf(steps())}</small>
        </h2>
        <Stream steps={steps()} />
      </section>
    </Show>
  );
}

function DutyPlot() {
  const { store, results } = useSheet();
  const told = () => {
    const solution = results.solution();
    const curves = results.curves();
    return solution && curves ? dutyPlot(store.design(), solution, curves.sweeps, results.band()) : undefined;
  };
  return (
    <Show when={told()}>
      {(plot) => (
        <section class="build-piece">
          <h2>
            Junction against duty <small>{plot().finding}</small>
          </h2>
          <SvgPlot data={plot().data} size={plotSize} />
        </section>
      )}
    </Show>
  );
}
