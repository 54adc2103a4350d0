import { For, Show } from 'solid-js';
import { causeFields, causeStation } from '../state/reasonPlaces.ts';
import { useSheet } from '../state/sheet.ts';
import { fieldId } from './fieldId.ts';

/** Why a station finds nothing, where the cause stands in it, with a way to the fields. */
export function StationReasons(props: { station: string }) {
  const { store, results } = useSheet();
  const reasons = () =>
    (results.solution()?.reasons ?? []).filter(({ key }) => causeStation(key) === props.station);
  return (
    <For each={reasons()}>
      {(reason) => (
        <p class="reason">
          {reason.sentence}
          <Show when={causeFields(reason.key, store.design()).length > 0}>
            {' See '}
            <For each={causeFields(reason.key, store.design())}>
              {({ path, label }, index) => (
                <>
                  {index() > 0 ? ', ' : ''}
                  <a href={`#${fieldId(path)}`}>{label}</a>
                </>
              )}
            </For>
            .
          </Show>
        </p>
      )}
    </For>
  );
}
