import { Match, Switch } from 'solid-js';
import type { State } from '../../../shared/solution.ts';

const words: Readonly<Record<State, string>> = { fine: 'fine', close: 'close', over: 'over' };

/** What the three words mean, wherever verdicts stand. */
export const stateKey =
  'fine: within the limits, temperatures at their pessimistic edge too; close: only nominally, or just past; over: beyond, or unknown';

/** How a figure stands against its limit: a sign and a word; the colour only repeats it. */
export function StateWord(props: { state: State }) {
  return (
    <span class={`state state-${props.state}`}>
      <svg class="state-sign" viewBox="0 0 12 12" aria-hidden="true">
        <Switch>
          <Match when={props.state === 'fine'}>
            <path d="M1.5 6.5 4.7 9.6 10.5 2.8" fill="none" stroke="currentColor" stroke-width="1.8" />
          </Match>
          <Match when={props.state === 'close'}>
            <path d="M1 10.5h10M1 6h10" fill="none" stroke="currentColor" stroke-width="1.8" />
          </Match>
          <Match when={props.state === 'over'}>
            <path d="M2 2l8 8M10 2l-8 8" fill="none" stroke="currentColor" stroke-width="2" />
          </Match>
        </Switch>
      </svg>
      {words[props.state]}
    </span>
  );
}
