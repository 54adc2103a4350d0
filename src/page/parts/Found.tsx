import { createSignal, For, Show } from 'solid-js';
import { type Service, services } from '../../../shared/solution.ts';
import { quantities } from '../../engine/catalogue/index.ts';
import { writeDuration, writeQuantity } from '../../engine/quantity/write.ts';
import { serviceNames, useSheet } from '../state/sheet.ts';
import { SymbolText } from './SymbolText.tsx';
import { Working } from './Working.tsx';

/** A figure of the solution as text in the builder's family of units; undefined where there is none. */
export function createFigures() {
  const sheet = useSheet();
  const value = (key: string): number | undefined => sheet.results.solution()?.values[key];
  const text = (key: string): string => {
    const si = value(key);
    const entry = quantities[key.slice(key.indexOf('.') + 1)];
    if (si === undefined || !entry) return '–';
    if (entry.dimension === 'time' && si >= 1) return writeDuration(si);
    if (entry.dimension === 'length' && sheet.preferences.system() === 'inch') return inches(si);
    return writeQuantity(si, entry.dimension);
  };
  return { value, text };
}

/** Half a foot-rule: beyond three feet people count feet, m. */
const inFeetFrom = 0.9144;

function inches(si: number): string {
  return writeQuantity(si, 'length', Math.abs(si) >= inFeetFrom ? 'ft' : 'in');
}

/** One found figure; a tap on it opens its working. */
export function Found(props: { name: string; main?: boolean; label?: string }) {
  const figures = createFigures();
  const [open, setOpen] = createSignal(false);
  const entry = quantities[props.name];
  return (
    <Show when={entry !== undefined && figures.value(props.name) !== undefined}>
      <details
        class="found"
        classList={{ 'found-main': props.main ?? false }}
        onToggle={(event) => setOpen(event.currentTarget.open)}
      >
        <summary>
          <span class="found-label">
            {props.label ?? entry!.label} <SymbolText symbol={entry!.symbol} />
          </span>
          <span class="found-value">{figures.text(props.name)}</span>
        </summary>
        <Show when={open()}>
          <Working entry={entry!} />
        </Show>
      </details>
    </Show>
  );
}

/** Figures that each service has of its own, side by side. */
export function FoundByService(props: { names: readonly string[] }) {
  const figures = createFigures();
  const hasAny = (name: string) =>
    services.some((service) => figures.value(`${service}.${name}`) !== undefined);
  return (
    <div class="by-service">
      <p class="by-service-head" aria-hidden="true">
        <span />
        <For each={services}>
          {(service) => <span class={`service-${service}`}>{serviceNames[service]}</span>}
        </For>
      </p>
      <For each={props.names}>
        {(name) => (
          <Show when={quantities[name] !== undefined && hasAny(name)}>
            <ServiceRow name={name} />
          </Show>
        )}
      </For>
    </div>
  );
}

function ServiceRow(props: { name: string }) {
  const sheet = useSheet();
  const figures = createFigures();
  const [open, setOpen] = createSignal(false);
  const entry = quantities[props.name]!;
  const shown = (service: Service) => figures.text(`${service}.${props.name}`);
  return (
    <details class="found found-row" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="found-label">
          {entry.label} <SymbolText symbol={entry.symbol} />
        </span>
        <For each={services}>
          {(service) => (
            <span class="found-value">
              <span class="only-read">{serviceNames[service]}: </span>
              {shown(service)}
            </span>
          )}
        </For>
      </summary>
      <Show when={open()}>
        <p class="working-service">Worked for {serviceNames[sheet.service()]}:</p>
        <Working entry={entry} service={sheet.service()} />
      </Show>
    </details>
  );
}
