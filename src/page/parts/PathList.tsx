import { createSignal, For, Index, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { part } from '../../../shared/design/start.ts';
import { type PathKind, pathKinds } from '../../../shared/design/supplyChoices.ts';
import { useSheet } from '../state/sheet.ts';
import { Fields } from './Fields.tsx';

type Path = Design['wiring']['path'];

const fields = ['kind', 'connector', 'count', 'aged', 'size', 'length', 'drop', 'resistance', 'rating'];
const mostParts = 20;

/** The parts of the 12 V path in the order in which the current meets them; each can be moved and taken away. */
export function PathList() {
  const { store } = useSheet();
  const [kind, setKind] = createSignal<PathKind>('connector');
  const path = () => store.view.wiring.path;
  const setPath = (next: Path) =>
    store.change((design) => ({ ...design, wiring: { ...design.wiring, path: next } }), 'wiring.path.');

  function move(index: number, by: 1 | -1): void {
    const next = [...path()];
    const [piece] = next.splice(index, 1);
    if (piece) next.splice(index + by, 0, piece);
    setPath(next);
  }

  return (
    <fieldset class="points path-list">
      <legend>On the way, from the source to the load</legend>
      <Index each={path()}>
        {(_piece, index) => (
          <fieldset class="path-piece">
            <legend>part {index + 1}</legend>
            <Fields paths={fields.map((name) => `wiring.path.${index}.${name}`)} />
            <p class="path-moves">
              <button
                type="button"
                class="plain-button"
                disabled={index === 0}
                aria-label={`up: move part ${index + 1} nearer to the source`}
                onClick={() => move(index, -1)}
              >
                up
              </button>
              <button
                type="button"
                class="plain-button"
                disabled={index === path().length - 1}
                aria-label={`down: move part ${index + 1} nearer to the load`}
                onClick={() => move(index, 1)}
              >
                down
              </button>
              <button
                type="button"
                class="plain-button"
                aria-label={`take away part ${index + 1}`}
                onClick={() => setPath(path().filter((_each, at) => at !== index))}
              >
                take away
              </button>
            </p>
          </fieldset>
        )}
      </Index>
      <Show when={path().length < mostParts}>
        <p class="path-moves">
          <select
            class="field-select"
            aria-label="Kind of part to add"
            value={kind()}
            onChange={(event) => setKind(event.currentTarget.value as PathKind)}
          >
            <For each={Object.entries(pathKinds)}>
              {([value, words]) => <option value={value}>{words}</option>}
            </For>
          </select>
          <button
            type="button"
            class="plain-button"
            onClick={() => setPath([...path(), part(kind(), kind() === 'connector' ? 2 : 1)])}
          >
            add this part
          </button>
        </p>
      </Show>
    </fieldset>
  );
}
