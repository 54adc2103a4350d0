import { For, Index, Show } from 'solid-js';
import { Field } from './Field.tsx';

interface PointListProps {
  readonly legend: string;
  /** Path of the list in the design. */
  readonly path: string;
  readonly count: number;
  readonly most: number;
  /** The fields of one point, with the few words that stand above each. */
  readonly columns: readonly { readonly key: string; readonly label: string }[];
  /** What one entry is called: "point", "reading". */
  readonly noun: string;
  readonly add: () => void;
  readonly remove: (index: number) => void;
}

/** A short list of measured points, one row each. */
export function PointList(props: PointListProps) {
  const rows = () => Array.from({ length: props.count });
  return (
    <fieldset class="points">
      <legend>{props.legend}</legend>
      <Index each={rows()}>
        {(_row, index) => (
          <div class="point">
            <For each={props.columns}>
              {(column) => <Field path={`${props.path}.${index}.${column.key}`} label={column.label} />}
            </For>
            <Show when={props.count > 1}>
              <button type="button" class="plain-button" onClick={() => props.remove(index)}>
                take this {props.noun} away
              </button>
            </Show>
          </div>
        )}
      </Index>
      <Show when={props.count < props.most}>
        <button type="button" class="plain-button" onClick={() => props.add()}>
          add a {props.noun}
        </button>
      </Show>
    </fieldset>
  );
}
