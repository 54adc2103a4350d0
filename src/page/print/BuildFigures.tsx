import { For, Show } from 'solid-js';
import { services } from '../../../shared/solution.ts';
import { quantities } from '../../engine/catalogue/index.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { writeEdges } from '../parts/BandEdges.tsx';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { serviceFigures, supplyFigures } from './figures.ts';

/** Figures that each service has of its own, with the edges of the band under each. */
export function FiguresByService() {
  const sheet = useSheet();
  const figures = createFigures();
  const keys = () =>
    serviceFigures.filter((name) =>
      services.some((service) => figures.value(`${service}.${name}`) !== undefined),
    );
  const edges = (key: string, name: string) => {
    const found = sheet.results.band()?.edges[key];
    return found && name !== 'runTime' ? writeEdges(found, quantities[name]!.dimension) : '';
  };
  return (
    <section class="build-piece">
      <h2>
        By service <small>at the planned duty; small: nine of ten</small>
      </h2>
      <table class="build-figures">
        <thead>
          <tr>
            <th scope="col">
              <span class="only-read">Figure</span>
            </th>
            <For each={services}>{(service) => <th scope="col">{sheet.nameOf(service)}</th>}</For>
          </tr>
        </thead>
        <tbody>
          <For each={keys()}>
            {(name) => (
              <tr>
                <th scope="row">{quantities[name]?.label}</th>
                <For each={services}>
                  {(service) => (
                    <td>
                      {figures.text(`${service}.${name}`)}
                      <Show when={edges(`${service}.${name}`, name)}>
                        {(text) => <span class="build-edges">{text()}</span>}
                      </Show>
                    </td>
                  )}
                </For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

/** Source, wire, fuse and converter, with what is not fine about them. */
export function SupplyFigures() {
  const sheet = useSheet();
  const figures = createFigures();
  const solution = () => sheet.results.solution();
  const keys = () => supplyFigures.filter((name) => figures.value(name) !== undefined);
  const wire = () => solution()?.wires.find((row) => row.chosen);
  const thinnest = () => {
    const chosen = wire();
    if (!chosen) return undefined;
    const family = chosen.size.startsWith('AWG');
    return solution()?.wires.find((row) => row.size.startsWith('AWG') === family && row.fails.length === 0);
  };
  const remarks = () => [...new Set((solution()?.supply ?? []).map((remark) => remark.sentence))];
  return (
    <section class="build-piece">
      <h2>Fuse, wire, battery</h2>
      <dl class="build-pairs">
        <Show when={wire()}>
          {(row) => (
            <Pair
              label="Wire, both conductors"
              value={`${writeSize(row().size)}, ${writeQuantity(row().resistance, 'resistance')}`}
            />
          )}
        </Show>
        <Show when={thinnest()}>
          {(row) => <Pair label="Thinnest that passes everything" value={writeSize(row().size)} />}
        </Show>
        <For each={keys()}>
          {(name) => <Pair label={quantities[name]?.label ?? name} value={figures.text(name)} />}
        </For>
      </dl>
      <For each={remarks()}>{(sentence) => <p>{sentence}</p>}</For>
    </section>
  );
}

function writeSize(size: string): string {
  return size.replace('mm2', 'mm²');
}

function Pair(props: { label: string; value: string }) {
  return (
    <div>
      <dt>{props.label}</dt>
      <dd>{props.value}</dd>
    </div>
  );
}
