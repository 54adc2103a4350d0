import { createSignal, createUniqueId, For, Show } from 'solid-js';
import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import type { UnitSystem } from '../../engine/quantity/units.ts';
import { fieldId } from '../parts/fieldId.ts';
import { knownField } from '../state/fields.ts';
import { openFile, saveFile } from '../state/openSave.ts';
import type { Theme } from '../state/preferences.ts';
import { useSheet } from '../state/sheet.ts';

/** The title block: the design's name, and what can be done with the sheet as a whole. */
export function Head() {
  const { store, preferences } = useSheet();
  const spec = knownField('name');
  const id = fieldId('name');
  return (
    <section class="head" aria-label="Design">
      <div class="head-name">
        <label for={id}>{spec.label}</label>
        <input
          id={id}
          class="name-input"
          type="text"
          maxLength={spec.kind === 'text' ? spec.maxLength : 120}
          value={store.view.name}
          onInput={(event) => store.edit('name', event.currentTarget.value)}
          onBlur={() => store.commit()}
        />
      </div>
      <p class="print-only">Printed {new Date().toLocaleDateString()}</p>
      <Actions />
      <div class="head-settings">
        <Setting<UnitSystem>
          label="Units"
          value={preferences.system()}
          options={{ metric: 'metric', inch: 'inch' }}
          choose={preferences.setSystem}
        />
        <Setting<Theme>
          label="Paper"
          value={preferences.theme()}
          options={{ auto: 'as the system', light: 'light', dark: 'dark' }}
          choose={preferences.setTheme}
        />
      </div>
    </section>
  );
}

function Setting<T extends string>(props: {
  label: string;
  value: T;
  options: Readonly<Record<T, string>>;
  choose: (value: T) => void;
}) {
  const id = createUniqueId();
  return (
    <span class="setting">
      <label for={id}>{props.label}</label>
      <select id={id} value={props.value} onChange={(event) => props.choose(event.currentTarget.value as T)}>
        <For each={Object.entries(props.options) as [T, string][]}>
          {([value, words]) => <option value={value}>{words}</option>}
        </For>
      </select>
    </span>
  );
}

function Actions() {
  const { store, notices } = useSheet();
  const [open, setOpen] = createSignal(false);
  const listId = createUniqueId();
  let chooser!: HTMLInputElement;

  async function openChosen(): Promise<void> {
    const file = chooser.files?.[0];
    chooser.value = '';
    if (file) await openFile(file, store, notices);
  }

  return (
    <div class="actions">
      <button
        type="button"
        class="menu-button"
        aria-expanded={open()}
        aria-controls={listId}
        onClick={() => setOpen((now) => !now)}
      >
        {open() ? 'Close menu' : 'Menu'}
      </button>
      <div id={listId} class="action-list" classList={{ open: open() }}>
        <button type="button" disabled={!store.canUndo()} onClick={store.undo}>
          Undo
        </button>
        <button type="button" disabled={!store.canRedo()} onClick={store.redo}>
          Redo
        </button>
        <button type="button" onClick={() => chooser.click()}>
          Open
        </button>
        <button type="button" onClick={() => saveFile(store.design())}>
          Save
        </button>
        <button type="button" onClick={() => globalThis.print()}>
          Print
        </button>
        <Examples />
        <input
          ref={chooser}
          class="only-read"
          type="file"
          accept=".json,application/json"
          tabindex="-1"
          aria-label="Design file"
          onChange={() => void openChosen()}
        />
      </div>
    </div>
  );
}

/** Examples and a fresh start; undo brings the old design back. */
function Examples() {
  const { store } = useSheet();
  const id = createUniqueId();
  function choose(key: string): void {
    const design = key === 'start' ? startDesign : examples.find((each) => each.key === key)?.design;
    if (design) store.replace(design);
  }
  return (
    <span class="setting">
      <label for={id}>Begin with</label>
      <select
        id={id}
        value=""
        onChange={(event) => {
          choose(event.currentTarget.value);
          event.currentTarget.value = '';
        }}
      >
        <option value="">choose</option>
        <option value="start">a fresh sheet, typical values</option>
        <optgroup label="Examples">
          <For each={examples}>{(each) => <option value={each.key}>{each.title}</option>}</For>
        </optgroup>
      </select>
    </span>
  );
}

/** What the builder must know about the sheet itself. */
export function NoticeList() {
  const { notices } = useSheet();
  return (
    <div class="notices" role="alert">
      <For each={notices.list()}>
        {(notice) => (
          <div class="notice">
            <p class="notice-title">{notice.title}</p>
            <Show when={notice.lines.length > 0}>
              <ul>
                <For each={notice.lines}>{(line) => <li>{line}</li>}</For>
              </ul>
            </Show>
            <button type="button" class="plain-button" onClick={() => notices.dismiss(notice.key)}>
              close
            </button>
          </div>
        )}
      </For>
    </div>
  );
}
