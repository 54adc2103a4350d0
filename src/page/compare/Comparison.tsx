import { createMemo, createSignal, For, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { type Service, services } from '../../../shared/solution.ts';
import { writeDistanceUp } from '../parts/distance.ts';
import { Plot } from '../parts/plot/Plot.tsx';
import { createResults, type Engine, type Results } from '../state/results.ts';
import { useSheet } from '../state/sheet.ts';
import { ComparedFigures, ComparedVerdicts, GivenTable } from './CompareTables.tsx';
import { consequences } from './consequences.ts';
import { withAllOfTheirs } from './given.ts';
import { judgedSolutions, judgedStates } from './judgedStates.ts';
import { overlayPlot } from './overlay.ts';

/** Two designs side by side: what follows, verdicts, what was given differently, figures, one plot of both. */
export function Comparison(props: { theirs: Design; engine: Engine; onSwap: (before: Design) => void }) {
  const sheet = useSheet();
  const there = createResults(() => props.theirs, props.engine);
  const standing = () =>
    sheet.results.solution() !== undefined &&
    there.solution() !== undefined &&
    there.solved() === props.theirs;
  return (
    <Show when={standing()} fallback={<p class="row-note">The other design is being computed …</p>}>
      <div class="compare-body">
        <p class="compare-sides">
          <b>Here:</b> {sheet.store.view.name}. <b>There:</b> {props.theirs.name}.
        </p>
        <Consequences there={there} />
        <ComparedVerdicts there={there} />
        <ComparedFigures there={there} />
        <Overlay theirs={props.theirs} there={there} />
        <section class="compare-given">
          <GivenTable theirs={props.theirs} />
          <p class="compare-actions">
            <button
              type="button"
              class="plain-button"
              onClick={() => sheet.store.change((design) => withAllOfTheirs(design, props.theirs), '')}
            >
              Take all of theirs
            </button>
            <button type="button" class="plain-button" onClick={() => props.onSwap(sheet.store.design())}>
              Swap the two
            </button>
          </p>
        </section>
      </div>
    </Show>
  );
}

/** What follows here, held against there. */
function Consequences(props: { there: Results }) {
  const sheet = useSheet();
  const judged = createMemo(() => judgedStates(sheet.results, props.there));
  const lines = () => {
    const [mine, theirs] = judgedSolutions(sheet.results, props.there);
    const writeDistance = (metres: number) => writeDistanceUp(metres, sheet.preferences.system());
    return mine && theirs ? consequences(mine, theirs, judged(), writeDistance) : [];
  };
  return (
    <section>
      <h3 class="column-title">
        What follows here{' '}
        <span class="row-note">
          figures nominal, states {judged().sure ? 'at the pessimistic edge' : 'nominal'}
        </span>
      </h3>
      <Show when={lines().length > 0} fallback={<p>Nothing that counts differs.</p>}>
        <dl class="compare-follows">
          <For each={lines()}>
            {({ about, words }) => (
              <div>
                <dt>{about}</dt>
                <dd>{words}</dd>
              </div>
            )}
          </For>
        </dl>
      </Show>
    </section>
  );
}

/** Junction against duty of both in one plot, service by service. */
function Overlay(props: { theirs: Design; there: Results }) {
  const sheet = useSheet();
  const [service, setService] = createSignal<Service>('keyDown');
  const told = createMemo(() => {
    const mine = { solution: sheet.results.solution(), curves: sheet.results.curves() };
    const theirs = { solution: props.there.solution(), curves: props.there.curves() };
    if (!mine.solution || !mine.curves || !theirs.solution || !theirs.curves) return undefined;
    return overlayPlot(
      { design: sheet.store.design(), solution: mine.solution, sweeps: mine.curves.sweeps },
      { design: props.theirs, solution: theirs.solution, sweeps: theirs.curves.sweeps },
      service(),
    );
  });
  return (
    <section>
      <fieldset class="picker">
        <legend>Both in</legend>
        <For each={services}>
          {(each) => (
            <label>
              <input
                type="radio"
                name="compare-service"
                checked={service() === each}
                onChange={() => setService(each)}
              />
              <span>{sheet.nameOf(each)}</span>
            </label>
          )}
        </For>
      </fieldset>
      <Show when={told()} fallback={<p class="row-note">No curve of both in this service.</p>}>
        {(plot) => (
          <Plot
            title="Junction against duty, both designs"
            finding={plot().finding}
            cursorLabel="Duty to read both junctions at"
            data={plot().data}
            start={plot().start}
          />
        )}
      </Show>
    </section>
  );
}
