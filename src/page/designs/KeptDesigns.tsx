import { createSignal, createUniqueId, For, Show } from 'solid-js';
import { startDesign } from '../../../shared/design/start.ts';
import { saveBlob } from '../export/files.ts';
import type { Removed, Row } from '../state/designs.ts';
import { saveFile } from '../state/saveFile.ts';
import { useSheet } from '../state/sheet.ts';
import { verdictWords } from '../state/shelfWords.ts';
import { designWords } from './designWords.ts';
import { createRowVerdicts } from './rowVerdicts.ts';

/** The designs kept in this browser, latest change first, each with what can be done with it. */
export function KeptDesigns() {
  const { designs } = useSheet();
  const [removed, setRemoved] = createSignal<Removed | null>(null);
  const verdictOf = createRowVerdicts();
  let undo: HTMLButtonElement | undefined;
  let list!: HTMLUListElement;
  const remove = (id: string) => {
    setRemoved(designs.remove(id, startDesign));
    undo?.focus();
  };
  const bringBack = (gone: Removed) => {
    designs.restore(gone);
    setRemoved(null);
    // The keyboard stays with the list.
    list.focus();
  };
  const ids = () => designs.list().map((row) => row.id);
  /** Undo brings a design back, too. */
  const stillGone = () => {
    const gone = removed();
    return gone !== null && gone.id !== designs.openId() && !ids().includes(gone.id) ? gone : null;
  };
  return (
    <section class="kept">
      <h3 class="column-title">Kept in this browser</h3>
      <Show when={stillGone()}>
        {(gone) => (
          <p class="removed" role="status">
            “{gone().name}” is deleted.{' '}
            <button
              ref={(el) => (undo = el)}
              type="button"
              class="plain-button"
              onClick={() => bringBack(gone())}
            >
              Bring it back
            </button>
          </p>
        )}
      </Show>
      <ul ref={list} class="kept-list" tabindex="-1">
        <Show when={!ids().includes(designs.openId())}>
          <OnlyShown />
        </Show>
        <For each={ids()}>
          {(id) => (
            <Show when={designs.list().find((row) => row.id === id)}>
              {(row) => <KeptRow row={row()} verdict={verdictOf(id)} remove={() => remove(id)} />}
            </Show>
          )}
        </For>
      </ul>
    </section>
  );
}

/** The design on the sheet while nothing of it is kept: an example before its first change. */
function OnlyShown() {
  const { store, designs } = useSheet();
  return (
    <li class="kept-row">
      <p class="kept-name">
        {store.design().name} <span class="row-note">on the sheet; kept from its first change on</span>
      </p>
      <p class="row-note">{designWords(store.design())}</p>
      <p class="row-actions">
        <button type="button" class="plain-button" onClick={() => designs.duplicate(designs.openId())}>
          Duplicate
        </button>
      </p>
    </li>
  );
}

function KeptRow(props: { row: Row; verdict: string; remove: () => void }) {
  const { designs, results } = useSheet();
  const [renaming, setRenaming] = createSignal(false);
  const entry = () => (props.row.found.kind === 'kept' ? props.row.found.entry : undefined);
  const name = () => entry()?.design.name ?? 'A design that cannot be read';
  const isOpen = () => props.row.id === designs.openId();
  /** Of the design on the sheet as the sheet judges it, of the others without their band. */
  const verdict = () => {
    if (!isOpen()) return props.verdict === '' ? '' : `nominally ${props.verdict}`;
    return verdictWords(results.band()?.verdicts ?? results.solution()?.verdicts ?? []);
  };
  const nameId = createUniqueId();
  let renameButton: HTMLButtonElement | undefined;
  const endRenaming = () => {
    setRenaming(false);
    // The line that had the keyboard is gone.
    renameButton?.focus();
  };
  return (
    <li class="kept-row" aria-current={isOpen() ? 'true' : undefined}>
      <p class="kept-name">
        <span id={nameId}>{name()}</span>{' '}
        <Show when={isOpen()}>
          <span class="row-note">on the sheet</span>
        </Show>
        <Show when={props.row.unkept}>
          <span class="row-note row-warning">only until this page is closed</span>
        </Show>
      </p>
      <Show when={entry()} fallback={<Unreadable row={props.row} remove={props.remove} />}>
        {(kept) => (
          <>
            <p class="row-note">
              {designWords(kept().design)}
              <Show when={verdict()}>
                {' – '}
                {verdict()}
              </Show>
            </p>
            <p class="row-note">changed {timeWords(kept().changed)}</p>
            <Show when={!renaming()} fallback={<Rename id={props.row.id} name={name()} done={endRenaming} />}>
              <p class="row-actions">
                <Show when={!isOpen()}>
                  <button
                    type="button"
                    aria-describedby={nameId}
                    class="plain-button"
                    onClick={() => designs.open(props.row.id)}
                  >
                    Open
                  </button>
                </Show>
                <button
                  ref={(el) => (renameButton = el)}
                  type="button"
                  aria-describedby={nameId}
                  class="plain-button"
                  onClick={() => setRenaming(true)}
                >
                  Rename
                </button>
                <button
                  type="button"
                  aria-describedby={nameId}
                  class="plain-button"
                  onClick={() => designs.duplicate(props.row.id)}
                >
                  Duplicate
                </button>
                <button
                  type="button"
                  aria-describedby={nameId}
                  class="plain-button"
                  onClick={() => saveFile(kept().design)}
                >
                  To a file
                </button>
                <button
                  type="button"
                  aria-describedby={nameId}
                  class="plain-button"
                  onClick={() => props.remove()}
                >
                  Delete
                </button>
              </p>
            </Show>
          </>
        )}
      </Show>
    </li>
  );
}

/** An entry that is no design any more, or not yet one: its text is not lost. */
function Unreadable(props: { row: Row; remove: () => void }) {
  const faults = () => (props.row.found.kind === 'damaged' ? props.row.found.faults : []);
  const saveText = () =>
    saveBlob(new Blob([props.row.text], { type: 'application/json' }), 'unreadable-design.json');
  return (
    <>
      <ul class="row-note row-faults">
        <For each={faults()}>{(line) => <li>{line}</li>}</For>
      </ul>
      <p class="row-actions">
        <button type="button" class="plain-button" onClick={saveText}>
          Its text to a file
        </button>
        <button type="button" class="plain-button" onClick={() => props.remove()}>
          Delete
        </button>
      </p>
    </>
  );
}

function Rename(props: { id: string; name: string; done: () => void }) {
  const { designs } = useSheet();
  let line!: HTMLInputElement;
  function take(event: Event): void {
    event.preventDefault();
    const name = line.value.trim();
    if (name !== '' && name !== props.name) designs.rename(props.id, name);
    props.done();
  }
  return (
    <form class="rename" onSubmit={take}>
      <label class="share-line">
        <span>New name</span>
        <input
          ref={(el) => {
            line = el;
            queueMicrotask(() => el.select());
          }}
          type="text"
          maxLength={120}
          value={props.name}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.preventDefault();
            props.done();
          }}
        />
      </label>
      <p class="row-actions">
        <button type="submit" class="plain-button">
          Take this name
        </button>
        <button type="button" class="plain-button" onClick={() => props.done()}>
          Leave it
        </button>
      </p>
    </form>
  );
}

/** "25 Nov 2026, 16:52" in the reader's own way; the words say what the numbers cannot. */
function timeWords(changed: number): string {
  if (changed === 0) return 'at an unknown time';
  return new Date(changed).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
