import { Index, Show } from 'solid-js';
import type { WireRow } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';
import { Folded } from './Station.tsx';

/** All sizes of wire side by side, so that the next one up or down can be judged at a glance. */
export function WireTable() {
  const sheet = useSheet();
  const rows = () => {
    const all = sheet.results.solution()?.wires ?? [];
    const metric = !sheet.store.view.wiring.size.startsWith('AWG');
    return all.filter((row) => row.size.startsWith('AWG') !== metric);
  };
  const first = () => rows().findIndex((row) => row.fails.length === 0);
  return (
    <Show when={rows().length > 0}>
      <Folded label="All wire sizes with this load">
        <section class="table-scroll" tabindex="0" aria-label="Wire sizes">
          <table>
            <thead>
              <tr>
                <th scope="col">Size</th>
                <th scope="col">Resistance, both wires</th>
                <th scope="col">Drop at PEP</th>
                <th scope="col">of the source</th>
                <th scope="col">Allowed current</th>
                <th scope="col">Judged</th>
              </tr>
            </thead>
            <tbody>
              <Index each={rows()}>{(row, index) => <Row row={row()} first={index === first()} />}</Index>
            </tbody>
          </table>
        </section>
      </Folded>
    </Show>
  );
}

function Row(props: { row: WireRow; first: boolean }) {
  return (
    <tr classList={{ chosen: props.row.chosen }}>
      <th scope="row">
        {props.row.size.replace('mm2', 'mm²')}
        <Show when={props.row.chosen}> (yours)</Show>
      </th>
      <td>{writeQuantity(props.row.resistance, 'resistance')}</td>
      <td>{writeQuantity(props.row.drop, 'voltage', 'V')}</td>
      <td>{writeQuantity(props.row.dropShare, 'share', '%', 2)}</td>
      <td>
        {props.row.ampacity === null ? 'not in the table' : writeQuantity(props.row.ampacity, 'current', 'A')}
      </td>
      <td class="words">
        {props.row.fails.length === 0
          ? props.first
            ? 'the thinnest that passes everything'
            : 'passes'
          : props.row.fails.join('; ')}
      </td>
    </tr>
  );
}
