import { Show } from 'solid-js';
import { splitSymbol } from './symbol.ts';

/** A symbol with its subscript, in running text. */
export function SymbolText(props: { symbol: string }) {
  const parts = () => splitSymbol(props.symbol);
  return (
    <span class="symbol">
      <i>{parts().base}</i>
      <Show when={parts().sub}>
        <sub>{parts().sub}</sub>
      </Show>
    </span>
  );
}
