import { createMemo, createUniqueId, Show } from 'solid-js';
import { applies } from '../state/applies.ts';
import { knownField, leafAt } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { fieldId } from './fieldId.ts';
import { createHelp, HelpButton, HelpText } from './Help.tsx';

/** Yes or no. */
export function FlagField(props: { path: string }) {
  const sheet = useSheet();
  const visible = createMemo(() => applies(sheet.store.view, props.path));
  const value = createMemo(() => leafAt(sheet.store.view, props.path));
  const spec = knownField(props.path);
  const help = createHelp();
  const helpId = createUniqueId();
  const id = fieldId(props.path);

  return (
    <Show when={visible()}>
      <div class="field field-flag">
        <label class="field-label" for={id}>
          {spec.label}
        </label>
        <HelpButton about={spec.label} id={helpId} open={help.open()} toggle={help.toggle} />
        <span class="field-line">
          <input
            id={id}
            class="field-check"
            type="checkbox"
            checked={value() === true}
            aria-describedby={helpId}
            onChange={(event) => {
              sheet.store.edit(props.path, event.currentTarget.checked);
              sheet.store.commit();
            }}
          />
        </span>
        <HelpText id={helpId} open={help.open()} text={spec.help} />
      </div>
    </Show>
  );
}
