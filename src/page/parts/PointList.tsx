import { For, Index, Show } from 'solid-js';
import { valueAt, withValue } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { Field } from './Field.tsx';

interface PointListProps {
  readonly legend: string;
  /** Path of the list in the design. */
  readonly path: string;
  /** What one entry is called: "point", "reading". */
  readonly noun: string;
  readonly most: number;
  /** Whether the list may be empty; otherwise its last entry stays. */
  readonly mayBeEmpty?: boolean;
  /** The fields of one entry, with the few words that stand above each. */
  readonly columns: readonly { readonly key: string; readonly label: string }[];
  /** A first entry, where the list may be empty; otherwise a new entry repeats the last. */
  readonly blank?: () => unknown;
}

/** A short list of measured points, one row each. */
export function PointList(props: PointListProps) {
  const { store } = useSheet();
  const rows = () => (valueAt(store.view, props.path) ?? []) as readonly unknown[];
  const setRows = (next: readonly unknown[]) =>
    store.change((design) => withValue(design, props.path, next), `${props.path}.`);
  const least = () => (props.mayBeEmpty ? 0 : 1);
  return (
    <fieldset class="points">
      <legend>{props.legend}</legend>
      <Index each={rows()}>
        {(_row, index) => (
          <div class="point" classList={{ 'point-pair': props.columns.length === 2 }}>
            <For each={props.columns}>
              {(column) => <Field path={`${props.path}.${index}.${column.key}`} label={column.label} />}
            </For>
            <Show when={rows().length > least()}>
              <button
                type="button"
                class="plain-button"
                onClick={() => setRows(rows().filter((_each, at) => at !== index))}
              >
                take this {props.noun} away
              </button>
            </Show>
          </div>
        )}
      </Index>
      <Show when={rows().length < props.most}>
        <button
          type="button"
          class="plain-button"
          onClick={() => setRows([...rows(), rows().at(-1) ?? props.blank?.()])}
        >
          add a {props.noun}
        </button>
      </Show>
    </fieldset>
  );
}
