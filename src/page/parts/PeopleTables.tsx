import './peopleTables.css';
import { For, Index, Show } from 'solid-js';
import type { BurnRow } from '../../../shared/solution.ts';
import { joinUnit, writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';
import { writeDistanceUp, writeNearest } from './distance.ts';
import { SourceOf } from './Working.tsx';

/** Burn thresholds and contact currents, beside what this design comes to. */
export function PeopleTables() {
  return (
    <div class="people-tables">
      <BurnTable />
      <ContactTable />
    </div>
  );
}

/** Limit, average power and distance of every band, and where the US rule stands. */
export function ExposureTable() {
  const sheet = useSheet();
  const rows = () => sheet.results.solution()?.exposure ?? [];
  const rule = () => sheet.store.view.antenna.limitSet === 'fcc';
  const metres = (value: number) => writeDistanceUp(value, sheet.preferences.system());
  const judgedAt = () => sheet.store.view.antenna.nearestPerson;
  return (
    <figure class="exposure">
      <figcaption class="table-title">Distance from the antenna by band</figcaption>
      <section
        class="table-scroll exposure-table"
        tabindex="0"
        aria-label="Distance from the antenna by band"
      >
        <table>
          <thead>
            <tr>
              <th scope="col">Band</th>
              <th scope="col">Top edge</th>
              <th scope="col">Limit, V/m</th>
              <th scope="col">A/m</th>
              <th scope="col">W/m²</th>
              <th scope="col">Average power</th>
              <th scope="col">At least</th>
              <Show when={rule()}>
                <th scope="col">Exempt from</th>
                <th scope="col">
                  US rule{' '}
                  {judgedAt() === null
                    ? 'at the least distance'
                    : `at ${writeNearest(judgedAt() ?? 0, sheet.preferences.system())}`}
                </th>
              </Show>
            </tr>
          </thead>
          <tbody>
            <Index each={rows()}>
              {(row) => (
                <tr classList={{ chosen: row().chosen }}>
                  <th scope="row">
                    {row().band}
                    <Show when={row().chosen}> (yours)</Show>
                  </th>
                  <td>{joinUnit(writeNumber(row().frequency / 1e6, 4, true), 'MHz')}</td>
                  <td>{writeNumber(row().electric)}</td>
                  <td>{writeNumber(row().magnetic)}</td>
                  <td>{row().density === null ? 'none' : writeNumber(row().density ?? 0)}</td>
                  <td>{writeQuantity(row().averagePower, 'power')}</td>
                  <td>{row().distance === null ? 'no number' : metres(row().distance ?? 0)}</td>
                  <Show when={rule()}>
                    <td>{metres(row().exemptFrom)}</td>
                    <td class="words">{row().exemption ?? 'say how near people come'}</td>
                  </Show>
                </tr>
              )}
            </Index>
          </tbody>
        </table>
      </section>
      <p class="sketch-note">
        Distances are estimates, rounded up.{' '}
        <Show when={rule()}>An exemption is from the routine evaluation only, never from the limits.</Show>
      </p>
    </figure>
  );
}

const surfaceWords: Readonly<Record<BurnRow['surface'], string>> = {
  metal: 'metal, bare, anodised or painted',
  glass: 'glass, ceramic, stone',
  plastic: 'plastic',
};

/** Burn thresholds by surface and contact, and how long this design's hottest place takes on each. */
function BurnTable() {
  const sheet = useSheet();
  const rows = () => sheet.results.band()?.people?.burns ?? sheet.results.solution()?.burns ?? [];
  const known = () => sheet.results.solution()?.values.touchTemperature !== undefined;
  const celsius = (temperature: number) => writeQuantity(temperature, 'temperature', '°C');
  const burns = (time: number | null) => {
    if (!known()) return 'not known';
    if (time === null) return 'does not';
    return time <= 1 ? 'at once' : writeDuration(time);
  };
  return (
    <figure>
      <figcaption class="table-title">Burn thresholds</figcaption>
      <section class="table-scroll" tabindex="0" aria-label="Burn thresholds">
        <table>
          <thead>
            <tr>
              <th scope="col">Contact</th>
              <For each={rows()[0]?.thresholds ?? []}>
                {(one) => <th scope="col">{writeDuration(one.contact)}</th>}
              </For>
              <th scope="col">Hottest place burns after</th>
            </tr>
          </thead>
          <tbody>
            <Index each={rows()}>
              {(row) => (
                <tr classList={{ chosen: sheet.store.view.limits.surface === row().surface }}>
                  <th scope="row">{surfaceWords[row().surface]}</th>
                  <For each={row().thresholds}>{(one) => <td>{celsius(one.temperature)}</td>}</For>
                  <td>{burns(row().burnsAfter)}</td>
                </tr>
              )}
            </Index>
          </tbody>
        </table>
      </section>
      <SourceOf name="touch" />
    </figure>
  );
}

/** Published contact currents beside the current of this output. */
function ContactTable() {
  const sheet = useSheet();
  const levels = () => sheet.results.solution()?.contacts ?? [];
  const current = () => sheet.results.solution()?.values.outputCurrent ?? 0;
  return (
    <figure>
      <figcaption class="table-title">
        RF current through a hand{' '}
        <span class="table-finding">this output: {writeQuantity(current(), 'current')}</span>
      </figcaption>
      <section class="table-scroll" tabindex="0" aria-label="RF current through a hand">
        <table>
          <thead>
            <tr>
              <th scope="col">Level</th>
              <th scope="col">Current</th>
              <th scope="col">Reached by</th>
              <th scope="col">This output</th>
            </tr>
          </thead>
          <tbody>
            <Index each={levels()}>
              {(row) => (
                <tr>
                  <th scope="row">{row().label}</th>
                  <td>{writeQuantity(row().level, 'current')}</td>
                  <td>{writeQuantity(row().power, 'power', undefined, 2)}</td>
                  <td>{writeNumber(current() / row().level, 2)} times</td>
                </tr>
              )}
            </Index>
          </tbody>
        </table>
      </section>
      <SourceOf name="contactCompare" />
    </figure>
  );
}
