import { createSignal, For, Index, onCleanup, onMount, Show } from 'solid-js';
import type { State, Verdict } from '../../../shared/solution.ts';
import { fieldId } from '../parts/fieldId.ts';
import { createNear } from '../parts/near.ts';
import { StateWord, stateKey } from '../parts/StateWord.tsx';
import { labelAt } from '../state/fields.ts';
import { followInSight } from '../state/follow.ts';
import { usePace } from '../state/pace.ts';
import type { Results } from '../state/results.ts';
import { SheetProvider, useSheet } from '../state/sheet.ts';

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

/** A verdict, or its place while the first one is being found. */
type Line = Pick<Verdict, 'key' | 'name' | 'headline' | 'sentence'> & { readonly state?: State };

const waiting: readonly Line[] = (['ssb', 'cw', 'keyDown', 'supply', 'people'] as const).map((key) => ({
  key,
  name: names[key],
  headline: '…',
  // Not empty: a line without words has its baseline elsewhere, and the rows would move when they come.
  sentence: '\u00a0',
}));

function linesOf({ band, solution }: Results): readonly Line[] {
  return band()?.verdicts ?? solution()?.verdicts ?? waiting;
}

/** Figures without their band: a state can be finer here than when the pessimistic edge is known. */
function isNominal({ band, solution }: Results): boolean {
  return band() === undefined && solution() !== undefined;
}

/** The five lines at the head of the sheet. Once they have scrolled away, a short form stays at the top. */
export function Verdicts() {
  const sheet = useSheet();
  const [away, setAway] = createSignal(false);
  let table!: HTMLDivElement;
  // One of the two is in sight; the other one follows later.
  const pace = usePace();
  const inTable = followInSight(
    sheet,
    createNear(() => table),
    pace,
  );
  const inBar = followInSight(sheet, away, pace);
  /** The bar has no heading to say what its figures are. */
  const inShort = ({ headline }: Line) => (isNominal(inBar.results) ? `nominally ${headline}` : headline);

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
        Verdicts{' '}
        <SheetProvider value={inTable}>
          <HowSure />
        </SheetProvider>
      </h2>
      <p class="state-key">{stateKey}; with a question mark: nominal so far</p>
      <SheetProvider value={inTable}>
        <Older />
      </SheetProvider>
      <div
        ref={table}
        class="verdict-table"
        classList={{ older: inTable.older().length > 0, nominal: isNominal(inTable.results) }}
      >
        <Index each={linesOf(inTable.results)}>
          {(verdict) => (
            <a class={`verdict verdict-${verdict().state ?? 'waiting'}`} href={`#${stations[verdict().key]}`}>
              <span class="verdict-name">{verdict().name}</span>
              {/* The word has its place before it is known, or the whole table would move. */}
              <Show when={verdict().state} fallback={<span />}>
                {(state) => <StateWord state={state()} />}
              </Show>
              <span class="verdict-headline">{verdict().headline}</span>
              <span class="verdict-sentence">{verdict().sentence}</span>
            </a>
          )}
        </Index>
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
      <nav
        class="verdict-bar"
        classList={{ nominal: isNominal(inBar.results) }}
        aria-label="Verdicts in short"
        hidden={!away()}
      >
        <Index each={linesOf(inBar.results)}>
          {(verdict) => (
            <a
              class={`verdict-${verdict().state ?? 'waiting'}`}
              href={`#${stations[verdict().key]}`}
              title={inShort(verdict())}
            >
              <span class="bar-name">{verdict().name}</span>
              <Show when={verdict().state}>{(state) => <StateWord state={state()} />}</Show>
              <span class="bar-headline">{inShort(verdict())}</span>
            </a>
          )}
        </Index>
      </nav>
    </section>
  );
}

/** Whether the lines stand on nominal figures or on the band, and how far the band is. */
function HowSure() {
  const { results } = useSheet();
  const percent = () => Math.round((results.bandProgress() ?? 0) * 100);
  const words = () => {
    const band = results.band();
    if (band) return 'nine of ten; judged at the pessimistic edge';
    if (results.bandProgress() === null) return 'nominal figures';
    return `nominal figures; how sure they are: ${percent()}\u202f% done`;
  };
  const measured = () => {
    const report = results.curves()?.bench;
    return report?.ok === true && report.value.counted > 0;
  };
  return (
    <span class="band-note">
      {words()}
      <Show when={measured()}>; sink corrected by bench runs</Show>
    </span>
  );
}

/** Which entries the figures do not follow, each with a way there. */
function Older() {
  const { older } = useSheet();
  return (
    <Show when={older().length > 0}>
      <p class="older-note" role="status">
        Older figures: they stand on the last good value of{' '}
        <For each={older()}>
          {(path, index) => (
            <>
              {index() > 0 ? ', ' : ''}
              <a href={`#${fieldId(path)}`}>{labelAt(path)}</a>
            </>
          )}
        </For>
        .
      </p>
    </Show>
  );
}
