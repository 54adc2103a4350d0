import { createSignal, For, Show } from 'solid-js';
import { type Service, type Solution, services } from '../../../shared/solution.ts';
import { quantities } from '../../engine/catalogue/index.ts';
import type { UnitSystem } from '../../engine/quantity/units.ts';
import { writeDegreesUp, writeDuration, writeQuantity, writeShareDown } from '../../engine/quantity/write.ts';
import { Working } from '../later.tsx';
import { type SheetState, useSheet } from '../state/sheet.ts';
import { BandEdges } from './BandEdges.tsx';
import { writeDistanceUp } from './distance.ts';
import { SymbolText } from './SymbolText.tsx';

/** A figure of the solution as text in the builder's family of units; undefined where there is none. */
export function createFigures(sheet: Pick<SheetState, 'results' | 'preferences'> = useSheet()) {
  const value = (key: string): number | undefined =>
    sheet.results.band()?.people?.values[key] ?? sheet.results.solution()?.values[key];
  const text = (key: string): string => {
    const si = value(key);
    const entry = quantities[key.slice(key.indexOf('.') + 1)];
    if (si === undefined || !entry) return isEndless(sheet.results.solution(), key) ? 'no limit' : '–';
    if (entry.key === 'safeDuty') return writeShareDown(si);
    // As in verdict, caution and label: what burns is never stated cooler than it is.
    if (entry.key === 'touchTemperature') return writeDegreesUp(si);
    if (entry.dimension === 'temperatureDifference') return writeStep(si);
    if (entry.key.startsWith('runTime')) return writeQuantity(si, 'time', 'h', 2);
    if (entry.dimension === 'time' && si >= 1) return writeDuration(si);
    if (entry.dimension === 'length') return writeLength(si, sheet.preferences.system(), entry.key);
    return writeQuantity(si, entry.dimension);
  };

  return { value, text };
}

/** Whether a transmission in this service may go on for ever. */
function isEndless(solution: Solution | undefined, key: string): boolean {
  const [service, name] = key.split('.');
  const result = name === 'holdTime' ? solution?.services[service as Service] : undefined;
  return result?.ok === true && result.value.holdTime === null;
}

/** From these sizes on people count metres and feet, m. */
const inMetresFrom = 0.3;
const inFeetFrom = 0.9144;

/** Distances that people keep are rounded up, in any unit. */
const keptDistances = new Set(['exposureDistance', 'exemptionDistance']);

function writeLength(si: number, system: UnitSystem, key: string): string {
  if (keptDistances.has(key)) return writeDistanceUp(si, system);
  if (system === 'inch') return writeQuantity(si, 'length', Math.abs(si) >= inFeetFrom ? 'ft' : 'in');
  return writeQuantity(si, 'length', Math.abs(si) >= inMetresFrom ? 'm' : undefined);
}

/** A difference of temperature, to a tenth of a kelvin at most: no model here knows more. */
function writeStep(si: number): string {
  return writeQuantity(Math.round(si * 10) / 10, 'temperatureDifference', 'K', Math.abs(si) < 10 ? 2 : 3);
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
          <span class="found-value">
            {figures.text(props.name)}
            <BandEdges name={props.name} />
          </span>
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
  const sheet = useSheet();
  const figures = createFigures();
  const hasAny = (name: string) =>
    services.some((service) => figures.value(`${service}.${name}`) !== undefined);
  const any = () => props.names.some(hasAny);
  return (
    <Show when={any()}>
      <div class="by-service">
        <p class="by-service-head" aria-hidden="true">
          <span />
          <For each={services}>
            {(service) => <span class={`service-${service}`}>{sheet.nameOf(service)}</span>}
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
    </Show>
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
        <span class="found-label">{entry.label}</span>
        <For each={services}>
          {(service) => (
            <span class="found-value">
              <span class="only-read">{sheet.nameOf(service)}: </span>
              {shown(service)}
              <BandEdges name={`${service}.${props.name}`} />
            </span>
          )}
        </For>
      </summary>
      <Show when={open()}>
        <p class="working-service">Worked for {sheet.nameOf(sheet.service())}:</p>
        <Working entry={entry} service={sheet.service()} />
      </Show>
    </details>
  );
}
