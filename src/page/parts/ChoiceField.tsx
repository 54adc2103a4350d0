import { createMemo, createUniqueId, For, Show } from 'solid-js';
import { applies } from '../state/applies.ts';
import { knownField, leafAt } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { fieldId } from './fieldId.ts';
import { createHelp, HelpButton, HelpText } from './Help.tsx';

/** One of a few words, chosen from the list the design schema names. */
export function ChoiceField(props: { path: string }) {
  const sheet = useSheet();
  const visible = createMemo(() => applies(sheet.store.view, props.path));
  const value = createMemo(() => leafAt(sheet.store.view, props.path));
  const spec = knownField(props.path);
  const options = spec.kind === 'choice' ? Object.entries(spec.options) : [];
  const id = fieldId(props.path);
  const helpId = createUniqueId();
  const help = createHelp();

  return (
    <Show when={visible()}>
      <div class="field field-choice">
        <label class="field-label" for={id}>
          {spec.label}
        </label>
        <HelpButton about={spec.label} id={helpId} open={help.open()} toggle={help.toggle} />
        <span class="field-line">
          <select
            id={id}
            class="field-select"
            value={String(value())}
            aria-describedby={helpId}
            onFocus={() => sheet.setFocused(props.path)}
            onBlur={() => sheet.setFocused(null)}
            onChange={(event) => {
              sheet.store.edit(props.path, event.currentTarget.value);
              sheet.store.commit();
            }}
          >
            <For each={options}>{([value, words]) => <option value={value}>{words}</option>}</For>
          </select>
        </span>
        <HelpText id={helpId} open={help.open()} text={spec.help} />
      </div>
    </Show>
  );
}
