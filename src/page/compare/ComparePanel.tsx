import './compare.css';
import { createMemo, createSignal, createUniqueId, For, Show } from 'solid-js';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { engineBeside } from '../../worker/engineClient.ts';
import { HeadPanel } from '../parts/HeadPanel.tsx';
import { readFile } from '../state/openSave.ts';
import type { Engine } from '../state/results.ts';
import { useSheet } from '../state/sheet.ts';
import { Comparison } from './Comparison.tsx';

/** The key of a design that is in neither list: from a file, or the one that stood here before a swap. */
const outside = 'outside';

interface Choice {
  readonly key: string;
  readonly title: string;
  readonly design: Design;
}

let beside: Engine | undefined;

/** An engine for the other design alone, so that the figures of the sheet never wait for it. */
function otherEngine(): Engine {
  beside ??= engineBeside();
  return beside;
}

/** This design beside another: one that is kept, an example, or a file. */
export function ComparePanel(props: { onClose: () => void; engine?: Engine }) {
  const { designs, notices } = useSheet();
  const selectId = createUniqueId();
  const engine = props.engine ?? otherEngine();
  const [chosen, setChosen] = createSignal<Choice | null>(null);
  let chooser!: HTMLInputElement;

  const kept = createMemo((): readonly Choice[] =>
    designs
      .list()
      .flatMap(({ id, found }) =>
        found.kind === 'kept' && id !== designs.openId()
          ? [{ key: `kept ${id}`, title: found.entry.design.name, design: found.entry.design }]
          : [],
      ),
  );
  const known: readonly Choice[] = examples.map(({ key, title, design }) => ({
    key: `example ${key}`,
    title,
    design,
  }));
  const notListed = () => {
    const now = chosen();
    return now?.key === outside ? now : null;
  };
  const choose = (key: string) => {
    const found = [...kept(), ...known].find((each) => each.key === key);
    if (found) setChosen(found);
  };

  async function openChosen(): Promise<void> {
    const file = chooser.files?.[0];
    chooser.value = '';
    if (!file) return;
    const read = await readFile(file);
    if (read.ok) setChosen({ key: outside, title: read.design.name, design: read.design });
    else notices.show({ key: 'open 0', title: read.title, lines: read.lines });
  }

  return (
    <HeadPanel title="Compare" class="compare" takesFocus onClose={props.onClose}>
      <p class="compare-chooser">
        <label for={selectId}>This design beside</label>
        <select
          id={selectId}
          value={chosen()?.key ?? ''}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value="">choose</option>
          <Show when={notListed()}>{(file) => <option value={outside}>{file().title}</option>}</Show>
          <Show when={kept().length > 0}>
            <optgroup label="Kept in this browser">
              <For each={kept()}>{(each) => <option value={each.key}>{each.title}</option>}</For>
            </optgroup>
          </Show>
          <optgroup label="Examples">
            <For each={known}>{(each) => <option value={each.key}>{each.title}</option>}</For>
          </optgroup>
        </select>
        <button type="button" class="plain-button" onClick={() => chooser.click()}>
          or a file
        </button>
        <input
          ref={chooser}
          class="only-read"
          type="file"
          accept=".json,application/json"
          tabindex="-1"
          aria-label="Design file to compare with"
          onChange={() => void openChosen()}
        />
      </p>
      <Show when={chosen()}>
        {(other) => (
          <Comparison
            theirs={other().design}
            engine={engine}
            onSwap={(before) => {
              const id = other().key.startsWith('kept ') ? other().key.slice('kept '.length) : null;
              if (id === null) designs.bringIn([other().design]);
              else designs.open(id);
              document.getElementById(selectId)?.focus();
              setChosen({ key: outside, title: before.name, design: before });
            }}
          />
        )}
      </Show>
    </HeadPanel>
  );
}
