import { Show } from 'solid-js';
import { Plot } from '../later.tsx';
import type { Told } from '../stations/plots.ts';

/** A plot with its finding, once both are there. */
export function ToldPlot(props: { title: string; cursorLabel: string; told: Told | undefined }) {
  return (
    <Show when={props.told}>
      {(told) => (
        <Plot
          title={props.title}
          finding={told().finding}
          cursorLabel={props.cursorLabel}
          data={told().data}
          start={told().start}
        />
      )}
    </Show>
  );
}
