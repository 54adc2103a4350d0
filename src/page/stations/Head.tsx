import { createSignal, createUniqueId, For, Match, Show, Switch } from 'solid-js';
import type { UnitSystem } from '../../engine/quantity/units.ts';
import { ComparePanel, DesignsPanel, PrintPanel } from '../later.tsx';
import { fieldId } from '../parts/fieldId.ts';
import { knownField } from '../state/fields.ts';
import type { Notice } from '../state/notices.ts';
import type { Theme } from '../state/preferences.ts';
import { saveFile } from '../state/saveFile.ts';
import { useSheet } from '../state/sheet.ts';

/** The title block: the design's name, and what can be done with the sheet as a whole. */
export function Head() {
  const { store, preferences } = useSheet();
  const spec = knownField('name');
  const id = fieldId('name');
  const [panel, setPanel] = createSignal<Panel | null>(null);
  function close(): void {
    const at = panel();
    setPanel(null);
    document.getElementById(`open-${at}`)?.focus();
  }
  const designsAt = () => {
    const at = panel();
    return at === 'designs' || at === 'share' ? at : null;
  };
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
      <Actions panel={panel()} setPanel={setPanel} />
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
      <Switch>
        <Match when={panel() === 'compare'}>
          <ComparePanel onClose={close} />
        </Match>
        <Match when={panel() === 'print'}>
          <PrintPanel onClose={close} />
        </Match>
        <Match when={designsAt()}>{(at) => <DesignsPanel at={at()} onClose={close} />}</Match>
      </Switch>
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

/** What is opened below the title: where the reader is taken. */
type Panel = 'designs' | 'share' | 'compare' | 'print';

function Actions(props: { panel: Panel | null; setPanel: (panel: Panel | null) => void }) {
  const { store } = useSheet();
  const [open, setOpen] = createSignal(false);
  const listId = createUniqueId();
  const opener = (at: Panel, words: string) => (
    <button
      type="button"
      id={`open-${at}`}
      aria-expanded={props.panel === at}
      onClick={() => props.setPanel(props.panel === at ? null : at)}
    >
      {words}
    </button>
  );

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
        {opener('designs', 'Designs')}
        <button type="button" onClick={() => saveFile(store.design())}>
          Save
        </button>
        {opener('share', 'Share')}
        {opener('compare', 'Compare')}
        {opener('print', 'Print, figures')}
      </div>
    </div>
  );
}

/** What the builder must know about the sheet itself: trouble at once, news when there is a pause. */
export function NoticeList() {
  const { notices } = useSheet();
  const those = (news: boolean) => notices.list().filter((notice) => (notice.news ?? false) === news);
  return (
    <>
      <div class="notices" role="alert">
        <For each={those(false)}>{(notice) => <NoticeOf notice={notice} />}</For>
      </div>
      <div class="notices" role="status">
        <For each={those(true)}>{(notice) => <NoticeOf notice={notice} />}</For>
      </div>
    </>
  );
}

function NoticeOf(props: { notice: Notice }) {
  const { notices } = useSheet();
  const dismiss = () => notices.dismiss(props.notice.key);
  return (
    <div class="notice" classList={{ news: props.notice.news ?? false }}>
      <p class="notice-title">{props.notice.title}</p>
      <Show when={props.notice.lines.length > 0}>
        <ul>
          <For each={props.notice.lines}>{(line) => <li>{line}</li>}</For>
        </ul>
      </Show>
      <p class="notice-actions">
        <For each={props.notice.actions ?? []}>
          {(action) => (
            <button
              type="button"
              class="plain-button"
              onClick={() => {
                if (!action.stays) dismiss();
                action.run();
              }}
            >
              {action.label}
            </button>
          )}
        </For>
        <Show when={!props.notice.asks}>
          <button type="button" class="plain-button" onClick={dismiss}>
            close
          </button>
        </Show>
      </p>
    </div>
  );
}
