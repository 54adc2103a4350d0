import { createEffect, createSignal, For, Index, Show } from 'solid-js';
import {
  type Edge,
  type Effort,
  effortWords,
  type Remedy,
  type RemedyList,
  type VerdictEffect,
  type VerdictKey,
} from '../../../shared/answers.ts';
import { StateWord } from '../parts/StateWord.tsx';
import { useSheet } from '../state/sheet.ts';
import { createAnswer } from './createAnswer.ts';
import { rememberRemedies } from './lastRemedies.ts';
import { Asking, Picker, TakenNote } from './parts.tsx';
import { type Taken, takeEdits } from './taken.ts';

/** Worst first, so that the page begins where the design does not fit; the 12 V side can forbid all services. */
const severity = { over: 0, close: 1, fine: 2 } as const;
const order: readonly VerdictKey[] = ['supply', 'keyDown', 'cw', 'ssb', 'people'];

/** What to change so that a verdict becomes fine, ranked. */
export function Remedies(props: { edge: Edge }) {
  const sheet = useSheet();
  const answer = createAnswer('remedies');
  createEffect(() => {
    const list = answer.result();
    const design = answer.asked();
    if (list && design) rememberRemedies(design, list);
  });
  const [picked, setPicked] = createSignal<VerdictKey>();
  const [taken, setTaken] = createSignal<Taken | null>(null);
  const verdicts = () => sheet.results.band()?.verdicts ?? sheet.results.solution()?.verdicts ?? [];
  const worst = () =>
    [...verdicts()]
      .filter((verdict) => verdict.key !== 'people')
      .sort((a, b) => severity[a.state] - severity[b.state] || order.indexOf(a.key) - order.indexOf(b.key))[0]
      ?.key ?? 'keyDown';
  const verdict = () => picked() ?? worst();
  const ask = (pairs = false) => answer.ask({ verdict: verdict(), edge: props.edge, pairs });

  function take(remedy: Remedy): void {
    setTaken(takeEdits(sheet.store, remedy.title, remedy.edits));
  }

  return (
    <section class="answer" aria-labelledby="remedies-title">
      <h3 class="answer-title" id="remedies-title">
        What to change
      </h3>
      <Picker
        id="remedies-verdict"
        label="So that it becomes fine"
        value={verdict()}
        groups={[
          {
            label: 'Verdicts',
            choices: verdicts().map(({ key, name, state }) => ({ value: key, label: `${name} (${state})` })),
          },
        ]}
        onPick={(key) => setPicked(key as VerdictKey)}
      />
      <Asking words="Find what to change" answer={answer} onAsk={() => ask()}>
        <TakenNote taken={taken()} />
        <Show when={answer.result()}>
          {(list) => (
            <div classList={{ older: answer.older() }}>
              <p class="answer-sentence" role="status">
                {list().sentence}
                <Show when={list().missing}> Missing now: {list().missing}.</Show>
              </p>
              <p class="aside">{list().figures}</p>
              <For each={groupsOf(list())}>{(group) => <RemedyRows {...group} onTake={take} />}</For>
              <Show when={mayTryPairs(list())}>
                <p>
                  <button type="button" class="plain-button" onClick={() => ask(true)}>
                    try two together
                  </button>
                </p>
              </Show>
            </div>
          )}
        </Show>
      </Asking>
    </section>
  );
}

/** Not-enough changes shown before the rest is asked for. */
const shownShort = 4;

interface Group {
  readonly title: string;
  readonly label: string;
  readonly list: readonly Remedy[];
}

/** What is enough stands first: pairs come before the changes that are not enough alone. */
function groupsOf({ name, remedies, pairs, reach }: RemedyList): readonly Group[] {
  const together = { title: 'Two together', label: 'Two changes together', list: pairs };
  const alone = { title: '', label: `Changes for ${name}`, list: remedies };
  if (pairs.length === 0) return [alone];
  return reach === 'pair' ? [together, { ...alone, title: 'One alone, not enough' }] : [alone, together];
}

function mayTryPairs(list: RemedyList): boolean {
  return list.reach === 'one' && list.pairs.length === 0 && list.remedies.some((remedy) => !remedy.enough);
}

/** All that is enough, and of the rest the best few until all are asked for. */
function RemedyRows(props: Group & { onTake: (remedy: Remedy) => void }) {
  const [all, setAll] = createSignal(false);
  const short = () =>
    props.list.filter((remedy, i) => remedy.enough || i < enoughIn(props.list) + shownShort);
  const shown = () => (all() ? props.list : short());
  let rows!: HTMLOListElement;
  function showAll(): void {
    const next = short().length;
    setAll(true);
    // The button goes; the keyboard goes on to the first row it has brought.
    rows.children[next]?.querySelector('button')?.focus();
  }
  return (
    <>
      <Show when={props.title}>
        <h4 class="answer-subtitle">{props.title}</h4>
      </Show>
      <ol ref={rows} class="remedies" aria-label={props.label}>
        <Index each={shown()}>
          {(remedy) => <RemedyRow remedy={remedy()} onTake={() => props.onTake(remedy())} />}
        </Index>
      </ol>
      <Show when={shown().length < props.list.length}>
        <p>
          <button type="button" class="plain-button" onClick={showAll}>
            show all {props.list.length}
          </button>
        </p>
      </Show>
    </>
  );
}

const enoughIn = (list: readonly Remedy[]) => list.filter((remedy) => remedy.enough).length;

const efforts: Readonly<Record<Effort, string>> = effortWords;

function RemedyRow(props: { remedy: Remedy; onTake: () => void }) {
  return (
    <li class="remedy" classList={{ 'remedy-enough': props.remedy.enough }}>
      <div class="remedy-what">
        <p class="remedy-title">{props.remedy.title}</p>
        <p class="remedy-facts">
          <span class="remedy-effort">{efforts[props.remedy.effort]}</span>
          <Show when={props.remedy.gainWords}>
            <span class="remedy-gain">{props.remedy.gainWords}</span>
          </Show>
          <span class="remedy-reach">
            {props.remedy.enough ? 'enough' : `not enough: ${props.remedy.missing}`}
          </span>
        </p>
        <ul class="remedy-effects">
          <For each={props.remedy.effects}>{(effect) => <Effect effect={effect} />}</For>
        </ul>
        <Show when={props.remedy.sideEffects.length > 0}>
          <p class="remedy-side">{props.remedy.sideEffects.join(' ')}</p>
        </Show>
        <For each={props.remedy.newCautions}>
          {(caution) => (
            <p class="remedy-caution">
              New caution: {caution.title}, {caution.figure}. {caution.action}
            </p>
          )}
        </For>
      </div>
      <button
        type="button"
        class="ask-button"
        aria-label={`make it: ${props.remedy.title}`}
        onClick={() => props.onTake()}
      >
        make it
      </button>
    </li>
  );
}

/** What happens to one verdict. */
function Effect(props: { effect: VerdictEffect }) {
  return (
    <li>
      <span class="effect-name">{props.effect.name}</span>{' '}
      <Show when={props.effect.before !== props.effect.after}>
        <StateWord state={props.effect.before} /> <span aria-hidden="true">→</span>
        <span class="only-read"> becomes </span>{' '}
      </Show>
      <StateWord state={props.effect.after} />
      <Show when={props.effect.gain}>
        <span>{props.effect.gain}</span>
      </Show>
    </li>
  );
}
