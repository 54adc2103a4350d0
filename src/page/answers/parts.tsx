import { createMemo, For, type JSX, Show } from 'solid-js';
import type { Edge } from '../../../shared/answers.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { AnswerKind } from '../../worker/answersMessages.ts';
import { type SheetState, useSheet } from '../state/sheet.ts';
import type { Answer } from './createAnswer.ts';
import type { ChoiceGroup } from './fieldChoices.ts';
import { standingOf, type Taken, withdraw } from './taken.ts';

/** A list of words to choose from, on a line of the form. */
export function Picker(props: {
  id: string;
  label: string;
  value: string;
  groups: readonly ChoiceGroup[];
  onPick: (value: string) => void;
}) {
  // The same choices as before are left as they stand: hundreds of them would be made anew at every edit.
  const groups = createMemo(() => props.groups, [], { equals: sameChoices });
  return (
    <div class="field field-choice ask-field">
      <label class="field-label" for={props.id}>
        {props.label}
      </label>
      <span />
      <span class="field-line">
        <select
          id={props.id}
          class="field-select"
          value={props.value}
          onChange={(event) => props.onPick(event.currentTarget.value)}
        >
          <For each={groups()}>
            {(group) => (
              <optgroup label={group.label}>
                <For each={group.choices}>
                  {(choice) => (
                    <option value={choice.value} selected={choice.value === props.value}>
                      {choice.label}
                    </option>
                  )}
                </For>
              </optgroup>
            )}
          </For>
        </select>
      </span>
    </div>
  );
}

function sameChoices(before: readonly ChoiceGroup[], now: readonly ChoiceGroup[]): boolean {
  return before === now || JSON.stringify(before) === JSON.stringify(now);
}

/** A value typed with its unit on a line of the form; `note` says how it was read or what is wrong. */
export function TypedValue(props: {
  id: string;
  label: string;
  text: string;
  wrong: string | null;
  echo: string;
  onType: (text: string) => void;
  onEnter: () => void;
}) {
  return (
    <div class="field ask-field" classList={{ wrong: props.wrong !== null }}>
      <label class="field-label" for={props.id}>
        {props.label}
      </label>
      <span />
      <span class="field-line">
        <input
          id={props.id}
          class="field-input"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={props.text}
          aria-invalid={props.wrong !== null}
          aria-describedby={`${props.id}-note`}
          onInput={(event) => props.onType(event.currentTarget.value)}
          onKeyDown={(event) => event.key === 'Enter' && props.onEnter()}
        />
      </span>
      <p id={`${props.id}-note`} class={props.wrong === null ? 'field-echo' : 'field-error'}>
        {props.wrong ?? props.echo}
      </p>
    </div>
  );
}

/** Which figures count. */
export function EdgePicker(props: { edge: Edge; onPick: (edge: Edge) => void }) {
  return (
    <fieldset class="picker ask-edge">
      <legend>Judged at</legend>
      <For each={['pessimistic', 'nominal'] as const}>
        {(edge) => (
          <label>
            <input
              type="radio"
              name="answers-edge"
              value={edge}
              checked={props.edge === edge}
              onChange={() => props.onPick(edge)}
            />
            <span>{edge === 'pessimistic' ? 'the pessimistic edge' : 'the nominal figures'}</span>
          </label>
        )}
      </For>
    </fieldset>
  );
}

/** The button that asks, with the progress and a way to stop; then whatever was found. */
export function Asking(props: {
  words: string;
  answer: Pick<Answer<AnswerKind>, 'progress' | 'older' | 'fault' | 'cancel'>;
  disabled?: boolean;
  onAsk: () => void;
  children?: JSX.Element;
}) {
  const percent = () => Math.round((props.answer.progress() ?? 0) * 100);
  return (
    <>
      <p class="asking">
        <Show
          when={props.answer.progress() !== null}
          fallback={
            <button
              type="button"
              class="ask-button"
              disabled={props.disabled === true}
              onClick={() => props.onAsk()}
            >
              {props.words}
            </button>
          }
        >
          <progress max="100" value={percent()} aria-label={props.words} />
          <span class="asking-share">{percent()} %</span>
          <button type="button" class="plain-button" onClick={() => props.answer.cancel()}>
            stop
          </button>
        </Show>
      </p>
      <Show when={props.answer.fault()}>
        {(fault) => (
          <p class="reason" role="alert">
            The sheet itself failed at this question ({fault()}).
          </p>
        )}
      </Show>
      <Show when={props.answer.older()}>
        <p class="older-word">The design has been edited since; ask again.</p>
      </Show>
      {props.children}
    </>
  );
}

/** The design of the shown figures: questions about it follow them, not every key. */
export function solvedDesign(sheet: SheetState): Design {
  return sheet.results.solved() ?? sheet.store.design();
}

/** What was taken last, for as long as it stands, with the way back. */
export function TakenNote(props: { taken: Taken | null }) {
  const { store } = useSheet();
  let note!: HTMLParagraphElement;
  const standing = createMemo(() => props.taken && standingOf(store, props.taken));
  return (
    <p ref={note} class="taken" role="status" tabindex="-1">
      <Show when={props.taken && standing() !== 'gone' && props.taken}>
        {(taken) => (
          <>
            Taken: {taken().words}.{' '}
            <Show
              when={standing() === 'whole'}
              fallback="What it changed has been edited since; Undo leads back step by step."
            >
              <button
                type="button"
                class="plain-button"
                onClick={() => {
                  withdraw(store, taken());
                  // The button goes with the note; the keyboard goes on from here.
                  note.focus();
                }}
              >
                take it back
              </button>
            </Show>
          </>
        )}
      </Show>
    </p>
  );
}
