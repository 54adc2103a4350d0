import { createMemo, createSignal, createUniqueId, For, onCleanup, Show } from 'solid-js';
import { needsExpression } from '../../engine/quantity/read.ts';
import { findUnit, fromSI, offeredUnits, toSI } from '../../engine/quantity/units.ts';
import { writeEcho, writeEntry } from '../../engine/quantity/write.ts';
import { applies } from '../state/applies.ts';
import { checkRange, ratioRemark, readEntry } from '../state/entry.ts';
import { knownField, leafAt, type NumberField as Spec } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { suggestionKey } from '../state/suggested.ts';
import { fieldId } from './fieldId.ts';
import { createHelp, HelpButton, HelpText } from './Help.tsx';
import { step } from './stepping.ts';

/** Typing that rests this long is taken as finished enough to speak of what is wrong with it, ms. */
const restBeforeError = 600;

/** A text longer than this gets a longer line. */
const longText = 9;

/** A typed text that carries its own unit can stand whatever the unit of the field. */
const carriesUnit = /[a-zµΩ°%"']/i;

/** A number with its unit on a line of the form, read as builders write it. */
export function NumberField(props: { path: string; label?: string }) {
  const sheet = useSheet();
  const { store, preferences } = sheet;
  const spec = knownField(props.path) as Spec;
  const id = fieldId(props.path);
  const notes = createUniqueId();
  const help = createHelp();
  const [rested, setRested] = createSignal(true);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let question = 0;
  onCleanup(() => clearTimeout(timer));

  const label = () => props.label ?? spec.label;
  // Memos, because every edit of any field passes here: only a field whose own value changed does any more.
  const visible = createMemo(() => applies(store.view, props.path));
  const unit = createMemo(() => preferences.unitOf(props.path, spec));
  const value = createMemo(() => leafAt(store.view, props.path) as number | null);
  const typed = createMemo(() => store.typed(props.path));
  const canonical = createMemo(() => {
    const si = value();
    return si === null ? '' : writeEntry(si, spec.dimension, unit());
  });
  const standing = createMemo(() => {
    const said = typed();
    if (said === undefined) return undefined;
    return said.reason !== null || said.unit === unit() || carriesUnit.test(said.text) ? said : undefined;
  });
  const text = () => standing()?.text ?? canonical();
  const reason = () => standing()?.reason ?? null;
  /** Why the text cannot be read, and what counts instead: part of it may have been a good value on the way. */
  const shownReason = () => {
    const why = rested() ? reason() : null;
    const si = value();
    return why === null || si === null
      ? why
      : `${why} Until then ${writeEcho(si, spec.dimension, unit())} counts.`;
  };
  const placeholder = () => {
    if (!spec.optional) return '';
    const key = suggestionKey(props.path);
    const si = key === undefined ? undefined : sheet.results.solution()?.values[key];
    return si === undefined ? 'not known' : `suggested ${writeEntry(si, spec.dimension, unit())}`;
  };
  /** The text names its unit itself: the field's own beside it would be one too many. */
  const ownUnit = () => standing() !== undefined && carriesUnit.test(text().slice(-1));
  const ratioOf = (si: number | null, typed: string) =>
    si !== null && unit() === '%' ? ratioRemark(si, spec, typed) : '';
  const echo = () => {
    const said = standing();
    const si = value();
    if (said === undefined || said.reason !== null || si === null) return '';
    const ratio = ratioOf(si, said.text);
    if (ratio !== '') return ratio;
    return carriesUnit.test(said.text) || /[/,+]|\d-/.test(said.text)
      ? writeEcho(si, spec.dimension, unit())
      : '';
  };

  function accept(typed: string, si: number | null): void {
    const plain = si === null ? '' : writeEntry(si, spec.dimension, unit());
    const plainly = typed === plain && ratioOf(si, typed) === '';
    store.edit(props.path, si, plainly ? undefined : { text: typed, unit: unit() });
  }

  function refuse(typed: string, sentence: string): void {
    store.refuse(props.path, { text: typed, reason: sentence, unit: unit() });
  }

  async function workOut(typed: string): Promise<void> {
    const asked = ++question;
    const { evaluateBeside } = await import('../../worker/expressionClient.ts');
    const answer = await evaluateBeside(typed, spec.dimension, unit());
    // The builder has typed on; the answer is for a text that no longer stands.
    if (asked !== question || text() !== typed) return;
    const checked = answer.ok ? checkRange(answer.value.value, answer.value.echo, spec, unit()) : answer;
    if (checked.ok) accept(typed, checked.value.value);
    else refuse(typed, checked.reason.sentence);
  }

  function type(typed: string): void {
    question++;
    setRested(false);
    clearTimeout(timer);
    timer = setTimeout(() => setRested(true), restBeforeError);
    const read = readEntry(typed, spec, unit());
    if (read.ok) {
      accept(typed, read.value.value);
      return;
    }
    refuse(typed, read.reason.sentence);
    if (read.reason.key === needsExpression) void workOut(typed);
  }

  function leave(): void {
    clearTimeout(timer);
    setRested(true);
    sheet.setFocused(null);
    store.commit();
  }

  function onArrow(event: KeyboardEvent): void {
    const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    const si = value();
    if (direction === 0 || si === null || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const shown = findUnit(spec.dimension, unit());
    const number = Number(fromSI(si, shown).toPrecision(10));
    const next = toSI(
      step(number, direction, { fine: event.shiftKey, whole: spec.dimension === 'count' }),
      shown,
    );
    store.edit(props.path, Math.min(spec.max, Math.max(spec.min, next)));
  }

  function changeUnit(next: string): void {
    preferences.setUnit(props.path, next);
    if (reason() !== null) type(text());
  }

  const describedBy = () =>
    [shownReason() ? `${notes}-error` : '', echo() ? `${notes}-echo` : '', `${notes}-help`]
      .filter(Boolean)
      .join(' ');
  const units = offeredUnits(spec.dimension).filter((each) => each.symbol !== '');

  return (
    <Show when={visible()}>
      <div class="field" classList={{ wrong: shownReason() !== null, long: text().length > longText }}>
        <label class="field-label" for={id}>
          {label()}
        </label>
        <HelpButton about={label()} id={`${notes}-help`} open={help.open()} toggle={help.toggle} />
        <span class="field-line" classList={{ 'own-unit': ownUnit() }}>
          <input
            id={id}
            class="field-input"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            value={text()}
            placeholder={placeholder()}
            aria-invalid={shownReason() !== null}
            aria-describedby={describedBy()}
            onInput={(event) => type(event.currentTarget.value)}
            onKeyDown={onArrow}
            onFocus={() => sheet.setFocused(props.path)}
            onBlur={leave}
          />
          <Show when={units.length > 1} fallback={<span class="field-unit">{units[0]?.symbol ?? ''}</span>}>
            <select
              class="field-unit"
              aria-label={`Unit of ${label()}`}
              value={unit()}
              onChange={(event) => changeUnit(event.currentTarget.value)}
            >
              <For each={units}>{(each) => <option value={each.symbol}>{each.symbol}</option>}</For>
            </select>
          </Show>
        </span>
        <Show when={echo()}>
          <p id={`${notes}-echo`} class="field-echo">
            = {echo()}
          </p>
        </Show>
        <Show when={shownReason()}>
          {(sentence) => (
            <p id={`${notes}-error`} class="field-error">
              {sentence()}
            </p>
          )}
        </Show>
        <HelpText id={`${notes}-help`} open={help.open()} text={spec.help} />
      </div>
    </Show>
  );
}
