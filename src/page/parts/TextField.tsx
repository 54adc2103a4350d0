import { createMemo, createUniqueId, Show } from 'solid-js';
import { applies } from '../state/applies.ts';
import { knownField, leafAt } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { fieldId } from './fieldId.ts';
import { createHelp, HelpButton, HelpText } from './Help.tsx';

/** A few words of the builder's own. */
export function TextField(props: { path: string }) {
  const sheet = useSheet();
  const spec = knownField(props.path);
  const visible = createMemo(() => applies(sheet.store.view, props.path));
  const value = createMemo(() => leafAt(sheet.store.view, props.path));
  const id = fieldId(props.path);
  const helpId = createUniqueId();
  const help = createHelp();

  return (
    <Show when={visible()}>
      <div class="field field-text">
        <label class="field-label" for={id}>
          {spec.label}
        </label>
        <HelpButton about={spec.label} id={helpId} open={help.open()} toggle={help.toggle} />
        <span class="field-line">
          <input
            id={id}
            class="field-input"
            type="text"
            autocomplete="off"
            maxLength={spec.kind === 'text' ? spec.maxLength : 100}
            value={String(value())}
            aria-describedby={helpId}
            onInput={(event) => sheet.store.edit(props.path, event.currentTarget.value)}
            onFocus={() => sheet.setFocused(props.path)}
            onBlur={() => {
              sheet.setFocused(null);
              sheet.store.commit();
            }}
          />
        </span>
        <HelpText id={helpId} open={help.open()} text={spec.help} />
      </div>
    </Show>
  );
}
