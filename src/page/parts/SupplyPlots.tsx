import { createMemo, Index, Show } from 'solid-js';
import type { ConverterCurves, SwitchingNoise } from '../../../shared/supplyCurves.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';
import { currentWaves, efficiencyPlot, rippleWave, timeCurrentPlot } from '../stations/supplyPlots.ts';
import { createFigures } from './Found.tsx';
import { ToldPlot } from './ToldPlot.tsx';
import './supplyParts.css';

/** Fuse, load and wire over current and time. */
export function FusePlot() {
  const sheet = useSheet();
  const told = createMemo(() => {
    const found = sheet.results.curves()?.supply.timeCurrent;
    return found ? timeCurrentPlot(found) : undefined;
  });
  return <ToldPlot title="Fuse, load and wire" cursorLabel="Current to read the times at" told={told()} />;
}

/** Efficiency, waveforms, losses, ride-through and noise of the converter. */
export function ConverterPlots() {
  const sheet = useSheet();
  const supply = () => sheet.results.curves()?.supply;
  const converter = () => supply()?.converter ?? undefined;
  const efficiency = createMemo(() => {
    const found = converter();
    return found ? efficiencyPlot(found) : undefined;
  });
  const waves = () => converter()?.waveforms ?? undefined;
  const currents = createMemo(() => {
    const found = waves();
    return found ? currentWaves(found) : undefined;
  });
  const ripple = createMemo(() => {
    const found = waves();
    return found ? rippleWave(found) : undefined;
  });
  return (
    <>
      <ToldPlot
        title="Converter efficiency against load"
        cursorLabel="Rail current to read the efficiency at"
        told={efficiency()}
      />
      <Show when={converter()?.losses.length ? converter() : undefined}>
        {(found) => <LossBars losses={found().losses} />}
      </Show>
      <ToldPlot
        title="Currents over two periods at PEP"
        cursorLabel="Time to read the currents at"
        told={currents()}
      />
      <ToldPlot
        title="Rail ripple over two periods at PEP"
        cursorLabel="Time to read the ripple at"
        told={ripple()}
      />
      <RideThrough />
      <Show when={supply()?.noise}>{(noise) => <Noise noise={noise()} />}</Show>
    </>
  );
}

/** Where the watts go, one bar a part, to one scale. */
function LossBars(props: { losses: ConverterCurves['losses'] }) {
  const most = () => Math.max(...props.losses.map((one) => one.power), 1e-9);
  const total = () => props.losses.reduce((sum, one) => sum + one.power, 0);
  const watts = (value: number) => writeQuantity(value, 'power', undefined, 2);
  return (
    <figure class="plot loss-bars">
      <figcaption>
        <span class="plot-title">Losses at PEP by part</span>{' '}
        <span class="plot-finding">{watts(total())} in all.</span>
      </figcaption>
      <table>
        <thead class="only-read">
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Loss</th>
          </tr>
        </thead>
        <tbody>
          <Index each={props.losses}>
            {(loss) => (
              <tr>
                <th scope="row">{loss().label}</th>
                <td>
                  <svg class="loss-bar" aria-hidden="true">
                    <rect width={`${(100 * loss().power) / most()}%`} height="100%" fill="url(#hatch)" />
                    <rect class="loss-outline" width={`${(100 * loss().power) / most()}%`} height="100%" />
                  </svg>
                </td>
                <td>{watts(loss().power)}</td>
              </tr>
            )}
          </Index>
        </tbody>
      </table>
    </figure>
  );
}

/** Why no capacitor stands in for the converter. */
function RideThrough() {
  const figures = createFigures();
  return (
    <Show when={figures.value('ssb.syllableCapacitance') !== undefined}>
      <p class="aside">
        To carry the rail through a syllable of SSB with 5 % of dip, {figures.text('ssb.syllableCapacitance')}{' '}
        would be needed, with {figures.text('ssb.syllableEnergy')} stored in them: bulky, dangerous to touch
        with a tool, slow to charge and a short at switching on. The converter is made for the peak instead;
        capacitors bridge only the time it takes to answer.
      </p>
    </Show>
  );
}

/** Harmonics of the converter on the band, and what can be done. */
function Noise(props: { noise: SwitchingNoise }) {
  const list = () =>
    props.noise.harmonics
      .map((one) => `${one.harmonic}th at ${writeQuantity(one.frequency, 'frequency', 'MHz', 5)}`)
      .join(', ');
  return (
    <div class="aside">
      <p>
        <strong>Converter noise on {props.noise.band}.</strong> {props.noise.sentence}
      </p>
      <Show when={props.noise.count > 0}>
        <p>
          {props.noise.count === 1 ? 'One harmonic is' : `${props.noise.count} harmonics are`} or may be in
          the band: {list()}
          {props.noise.count > props.noise.harmonics.length ? ' and more' : ''}.
          <Show when={props.noise.amplitude}>
            {(volts) =>
              ` The first stands at ${writeQuantity(volts(), 'voltage', undefined, 2)} peak at the switch.`
            }
          </Show>
          <Show when={props.noise.attenuation}>
            {(decibels) =>
              ` The input filter takes off ${writeQuantity(decibels(), 'decibel', 'dB', 2)} there at most; stray parts decide.`
            }
          </Show>
        </p>
      </Show>
    </div>
  );
}
