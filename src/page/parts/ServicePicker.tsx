import { createUniqueId, For } from 'solid-js';
import { services } from '../../../shared/solution.ts';
import { useSheet } from '../state/sheet.ts';

/** Which service a drawing shows. One choice for the whole sheet. */
export function ServicePicker(props: { legend: string }) {
  const sheet = useSheet();
  const name = createUniqueId();
  return (
    <fieldset class="picker">
      <legend>{props.legend}</legend>
      <For each={services}>
        {(service) => (
          <label>
            <input
              type="radio"
              name={name}
              checked={sheet.service() === service}
              onChange={() => sheet.setService(service)}
            />
            <span>{sheet.nameOf(service)}</span>
          </label>
        )}
      </For>
    </fieldset>
  );
}
