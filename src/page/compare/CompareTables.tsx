import { createMemo, For, type JSX, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import type { Verdict } from '../../../shared/solution.ts';
import { createFigures } from '../parts/Found.tsx';
import { StateWord } from '../parts/StateWord.tsx';
import type { Results } from '../state/results.ts';
import { useSheet } from '../state/sheet.ts';
import { figureLines } from './figures.ts';
import { givenDifferences, withTheirs } from './given.ts';
import { judgedSolutions, judgedStates } from './judgedStates.ts';

/** A table of both sides; it scrolls inside itself where the screen is narrow, so it takes the keyboard. */
function BothTable(props: { label: string; first: string; last?: string; children: JSX.Element }) {
  return (
    <section class="table-scroll" tabindex="0" aria-label={props.label}>
      <table class="compare-table">
        <thead>
          <tr>
            <th scope="col">{props.first}</th>
            <th scope="col">Here</th>
            <th scope="col">There</th>
            <Show when={props.last}>{(words) => <th scope="col">{words()}</th>}</Show>
          </tr>
        </thead>
        <tbody>{props.children}</tbody>
      </table>
    </section>
  );
}

/** Verdicts of both; with their bands as soon as both have one, so that like is held against like. */
export function ComparedVerdicts(props: { there: Results }) {
  const { results } = useSheet();
  const judged = () => judgedStates(results, props.there);
  const sure = () => judged().sure;
  const lines = () =>
    judged().mine.flatMap((here) => {
      const there = judged().theirs.find((each) => each.key === here.key);
      return there ? [{ here, there }] : [];
    });
  return (
    <section>
      <h3 class="column-title">
        Verdicts{' '}
        <span class="row-note">
          {sure()
            ? 'of both, judged at the pessimistic edge'
            : 'of both, nominal until the bands of both are there'}
        </span>
      </h3>
      <BothTable label="Verdicts of both" first="About">
        <For each={lines()}>
          {({ here, there }) => (
            <tr>
              <th scope="row">{here.name}</th>
              <VerdictCell verdict={here} rank={rankAgainst(here, there)} />
              <VerdictCell verdict={there} rank="" />
            </tr>
          )}
        </For>
      </BothTable>
    </section>
  );
}

const order = ['fine', 'close', 'over'];

/** "better", "worse" or nothing: the state against that of the other. */
function rankAgainst(mine: Verdict, theirs: Verdict): string {
  const step = order.indexOf(mine.state) - order.indexOf(theirs.state);
  if (step === 0) return '';
  return step < 0 ? '▲ better' : '▼ worse';
}

function VerdictCell(props: { verdict: Verdict; rank: string }) {
  return (
    <td class="words">
      <StateWord state={props.verdict.state} />{' '}
      <Show when={props.rank}>
        <b>{props.rank}</b>{' '}
      </Show>
      {props.verdict.headline}
    </td>
  );
}

/** Only what was given differently; each value can be taken over. */
export function GivenTable(props: { theirs: Design }) {
  const sheet = useSheet();
  const rows = createMemo(() =>
    givenDifferences(sheet.store.design(), props.theirs, sheet.preferences.unitOf),
  );
  let heading!: HTMLHeadingElement;
  function take(path: string): void {
    // The button goes with its row; the keyboard must not be left nowhere.
    heading.focus();
    sheet.store.change((design) => withTheirs(design, props.theirs, path), path);
  }
  return (
    <>
      <h3 ref={heading} class="column-title" tabindex="-1">
        Given differently{' '}
        <span class="row-note">{rows().length === 0 ? 'nothing' : `${rows().length} values`}</span>
      </h3>
      <Show when={rows().length > 0}>
        <BothTable label="Values given differently" first="Value">
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">
                  {row.label} <span class="row-note">{row.group}</span>
                </th>
                <td class="words">{row.mine}</td>
                <td class="words">
                  {row.theirs}{' '}
                  <Show when={row.takeable}>
                    <button
                      type="button"
                      class="plain-button"
                      aria-label={`take theirs: ${row.label}, ${row.theirs}`}
                      onClick={() => take(row.path)}
                    >
                      take theirs
                    </button>
                  </Show>
                </td>
              </tr>
            )}
          </For>
        </BothTable>
      </Show>
    </>
  );
}

/** The chief figures of both; where they are not alike the difference stands beside them. */
export function ComparedFigures(props: { there: Results }) {
  const sheet = useSheet();
  const here = createFigures(sheet);
  const there = createFigures({ preferences: sheet.preferences, results: props.there });
  const lines = () => {
    const [mine, theirs] = judgedSolutions(sheet.results, props.there);
    return mine && theirs ? figureLines(mine, theirs) : [];
  };
  return (
    <section>
      <h3 class="column-title">
        Figures <span class="row-note">nominal; the difference is here less there</span>
      </h3>
      <BothTable label="Figures of both" first="Figure" last="Difference">
        <For each={lines()}>
          {({ key, label, difference }) => (
            <tr>
              <th scope="row">{label}</th>
              <td>{here.text(key)}</td>
              <td>{there.text(key)}</td>
              <td>
                <Show when={difference} fallback="same">
                  <b>{difference}</b>
                </Show>
              </td>
            </tr>
          )}
        </For>
      </BothTable>
    </section>
  );
}
