import { For, Show } from 'solid-js';
import { quantities, quantityOrder, type StationKey } from '../../engine/catalogue/index.ts';
import { Found, FoundByService } from './Found.tsx';
import { Folded } from './Station.tsx';

interface FoundListProps {
  readonly station: StationKey;
  /** The figures that matter most, set large. */
  readonly main: readonly string[];
  readonly figures?: readonly string[];
  /** Figures that each service has of its own. */
  readonly byService?: readonly string[];
}

/** What a station finds: its chief figures in sight, every other figure of its part of the catalogue folded below. */
export function FoundList(props: FoundListProps) {
  const shown = () => new Set([...props.main, ...(props.figures ?? []), ...(props.byService ?? [])]);
  const rest = () =>
    quantityOrder.filter((name) => {
      const entry = quantities[name];
      return entry?.station === props.station && entry.given !== true && !shown().has(name);
    });
  const perService = (name: string) => quantities[name]?.perService === true;
  return (
    <>
      <For each={props.main}>{(name) => <Found name={name} main />}</For>
      <For each={props.figures ?? []}>{(name) => <Found name={name} />}</For>
      <FoundByService names={props.byService ?? []} />
      <Show when={rest().length > 0}>
        <Folded label="More figures">
          <For each={rest().filter((name) => !perService(name))}>{(name) => <Found name={name} />}</For>
          <FoundByService names={rest().filter(perService)} />
        </Folded>
      </Show>
    </>
  );
}
