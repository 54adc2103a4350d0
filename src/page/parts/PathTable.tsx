import { Index, Show } from 'solid-js';
import type { PathRow } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';
import { StateWord } from './StateWord.tsx';
import { Folded } from './Station.tsx';
import './supplyParts.css';

/** Every part of the path with what it takes at the peak of the envelope. */
export function PathTable() {
  const sheet = useSheet();
  const rows = () => sheet.results.solution()?.path ?? [];
  return (
    <Show when={rows().length > 0}>
      <Folded label="Every part of the path at PEP">
        <section class="table-scroll" tabindex="0" aria-label="Parts of the path">
          <table>
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">Resistance</th>
                <th scope="col">Drop</th>
                <th scope="col">Heat</th>
                <th scope="col">Made for</th>
                <th scope="col">Contact rise</th>
                <th scope="col">Judged</th>
              </tr>
            </thead>
            <tbody>
              <Index each={rows()}>{(row, index) => <Row row={row()} number={index + 1} />}</Index>
            </tbody>
          </table>
        </section>
      </Folded>
    </Show>
  );
}

function Row(props: { row: PathRow; number: number }) {
  const orDash = (value: number | null, write: (value: number) => string) =>
    value === null ? '–' : write(value);
  return (
    <tr classList={{ chosen: props.row.weakest }}>
      <th scope="row">
        {props.number} {props.row.name}
        <Show when={props.row.weakest}> (the weakest)</Show>
      </th>
      <td>{writeQuantity(props.row.resistance, 'resistance')}</td>
      <td>{writeQuantity(props.row.drop, 'voltage')}</td>
      <td>{writeQuantity(props.row.heat, 'power')}</td>
      <td>{orDash(props.row.rating, (value) => writeQuantity(value, 'current', 'A'))}</td>
      <td>{orDash(props.row.rise, (value) => writeQuantity(value, 'temperatureDifference', 'K', 2))}</td>
      <td class="words">
        <StateWord state={props.row.state} />
      </td>
    </tr>
  );
}
