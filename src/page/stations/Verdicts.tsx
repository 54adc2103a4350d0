import { createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import type { Verdict } from '../../../shared/solution.ts';
import { fieldId } from '../parts/fieldId.ts';
import { StateWord } from '../parts/StateWord.tsx';
import { knownField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';

const names: Readonly<Record<Verdict['key'], string>> = {
  ssb: 'SSB',
  cw: 'CW',
  keyDown: 'Key-down',
  supply: '12 V input',
  people: 'People',
};

const stations: Readonly<Record<Verdict['key'], string>> = {
  ssb: 'service',
  cw: 'service',
  keyDown: 'service',
  supply: 'source',
  people: 'people',
};

/** The five lines at the head of the sheet. Once they have scrolled away, a short form stays at the top. */
export function Verdicts() {
  const sheet = useSheet();
  const verdicts = () => sheet.results.solution()?.verdicts ?? [];
  const [away, setAway] = createSignal(false);
  let table!: HTMLDivElement;

  onMount(() => {
    if (typeof IntersectionObserver === 'undefined') return;
    const observer = new IntersectionObserver(([entry]) => {
      setAway(entry !== undefined && !entry.isIntersecting && entry.boundingClientRect.top < 0);
    });
    observer.observe(table);
    onCleanup(() => observer.disconnect());
  });

  return (
    <section class="verdicts" aria-labelledby="verdicts-title">
      <h2 class="band-title" id="verdicts-title">
        Verdicts <span class="band-note">nominal figures</span>
      </h2>
      <Older />
      <div ref={table} class="verdict-table" classList={{ older: sheet.store.wrong().length > 0 }}>
        <For each={verdicts()}>
          {(verdict) => (
            <a class={`verdict verdict-${verdict.state}`} href={`#${stations[verdict.key]}`}>
              <span class="verdict-name">{names[verdict.key]}</span>
              <StateWord state={verdict.state} />
              <span class="verdict-headline">{verdict.headline}</span>
              <span class="verdict-sentence">{verdict.sentence}</span>
            </a>
          )}
        </For>
      </div>
      <For each={sheet.results.solution()?.reasons ?? []}>
        {(reason) => <p class="reason">{reason.sentence}</p>}
      </For>
      <Show when={sheet.results.fault()}>
        {(fault) => (
          <p class="reason" role="alert">
            The sheet itself failed at this design ({fault()}). The last figures stay. Undo the last entry,
            and please report it with the design file.
          </p>
        )}
      </Show>
      <nav class="verdict-bar" aria-label="Verdicts in short" hidden={!away()}>
        <For each={verdicts()}>
          {(verdict) => (
            <a class={`verdict-${verdict.state}`} href={`#${stations[verdict.key]}`}>
              <span class="bar-name">{names[verdict.key]}</span>
              <StateWord state={verdict.state} />
              <span class="bar-headline">{verdict.headline}</span>
            </a>
          )}
        </For>
      </nav>
    </section>
  );
}

/** Which entries the figures do not follow, each with a way there. */
function Older() {
  const { store } = useSheet();
  return (
    <Show when={store.wrong().length > 0}>
      <p class="older-note" role="status">
        Older figures: they stand on the last good value of{' '}
        <For each={store.wrong()}>
          {(path, index) => (
            <>
              {index() > 0 ? ', ' : ''}
              <a href={`#${fieldId(path)}`}>{knownField(path).label}</a>
            </>
          )}
        </For>
        .
      </p>
    </Show>
  );
}
