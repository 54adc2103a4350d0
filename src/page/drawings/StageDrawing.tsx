import { createMemo, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';

const left = 40;
const right = 385;
const voltageTop = 22;
const voltageBottom = 130;
const currentTop = 146;
const currentBottom = 206;
const samples = 96;

const x = (phase: number) => left + (phase / (2 * Math.PI)) * (right - left);
/** Where the curves are reckoned: the cosine of the phase, and its place on the paper as a path says it. */
const phases = Array.from({ length: samples + 1 }, (_, index) => {
  const phase = (2 * Math.PI * index) / samples;
  return { cosine: Math.cos(phase), place: `${index === 0 ? 'M' : 'L'}${x(phase).toFixed(1)} ` };
});

/** A curve over one cycle, to a tenth of a unit of the drawing. */
function curve(at: (cosine: number) => number): string {
  let path = '';
  for (const { cosine, place } of phases) path += place + Math.round(at(cosine) * 10) / 10;
  return path;
}

/** Current of one device: max(0, standing + drive cos). Amperes. */
interface Pulse {
  readonly standing: number;
  readonly drive: number;
}

interface Stage {
  readonly rail: number;
  readonly amplitude: number;
  readonly angle: number;
  readonly atPep: Pulse;
  readonly backedOff: Pulse;
}

/** Why a class has no picture. */
function notDrawn(design: Design): string {
  return design.amplifier.calibration === 'readings' && !['D', 'E', 'F'].includes(design.amplifier.class)
    ? 'A final known by readings has no waveforms to draw.'
    : `Class ${design.amplifier.class} switches: its waveforms hang on the network and are not drawn.`;
}

/** Voltage and current at a device over one RF cycle at PEP and backed off, as the conduction-angle model sees them. */
export function StageDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  const stage = createMemo<Stage | undefined>(() => {
    const rail = figures.value('railVoltagePep');
    const amplitude = figures.value('fundamentalVoltage');
    const angle = figures.value('conductionAnglePep');
    const standing = figures.value('quiescentPerDevice');
    const drive = figures.value('driveCurrentPep');
    const less = figures.value('driveCurrentBackOff');
    if (rail === undefined || amplitude === undefined || angle === undefined) return undefined;
    if (standing === undefined || drive === undefined || less === undefined) return undefined;
    return { rail, amplitude, angle, atPep: { standing, drive }, backedOff: { standing, drive: less } };
  });
  return (
    <>
      <Show when={stage()}>{(found) => <Waveforms stage={found()} />}</Show>
      <Show when={stage() === undefined && figures.value('dcPowerPep') !== undefined}>
        <p class="no-drawing">{notDrawn(sheet.store.view)}</p>
      </Show>
      <Balance />
    </>
  );
}

function Waveforms(props: { stage: Stage }) {
  const figures = createFigures();
  const top = () => props.stage.rail * 2;
  const v = (volts: number) => voltageBottom - (volts / top()) * (voltageBottom - voltageTop);
  const voltage = () => {
    const { rail, amplitude } = props.stage;
    const tall = (voltageBottom - voltageTop) / (2 * rail);
    return curve((cosine) => voltageBottom - (rail + amplitude * cosine) * tall);
  };
  const current = ({ standing, drive }: Pulse) => {
    const { atPep } = props.stage;
    const tall = (currentBottom - currentTop) / Math.max(atPep.standing + atPep.drive, 1e-9);
    return curve((cosine) => currentBottom - Math.max(0, standing - drive * cosine) * tall);
  };
  const start = () => Math.PI - props.stage.angle / 2;

  return (
    <svg
      class="drawing"
      viewBox="0 0 400 232"
      role="img"
      aria-label={`One RF cycle at PEP: rail ${figures.text('railVoltagePep')}, amplitude ${figures.text('fundamentalVoltage')}, current up to ${figures.text('peakCurrentPep')} flows for ${figures.text('conductionAnglePep')}; 6 dB down up to ${figures.text('peakCurrentBackOff')} for ${figures.text('conductionAngleBackOff')}.`}
    >
      <path
        class="thin"
        d={`M${left} ${voltageTop - 8}V${voltageBottom}H${right}M${left} ${currentTop}V${currentBottom}H${right}`}
      />
      <path class="hidden-line" d={`M${left} ${v(props.stage.rail)}H${right}`} />
      <path class="outline" d={voltage()} />
      <path class="heat-line" d={current(props.stage.atPep)} />
      <path class="back-off-line" d={current(props.stage.backedOff)} />
      <text class="caption" x={right} y={currentTop + 4} text-anchor="end">
        {figures.text('peakCurrentPep')} at PEP
      </text>
      <text class="caption" x={right} y={currentTop + 18} text-anchor="end">
        {figures.text('peakCurrentBackOff')} at 6 dB less
      </text>
      <text class="caption" x={left + 6} y={v(props.stage.rail) + 14}>
        rail {figures.text('railVoltagePep')}
      </text>
      <text
        class="caption"
        x={x(Math.PI)}
        y={v(props.stage.rail - props.stage.amplitude) - 6}
        text-anchor="middle"
      >
        least {(props.stage.rail - props.stage.amplitude).toFixed(1)} V
      </text>
      <text class="caption" x={left - 6} y={voltageTop} text-anchor="end">
        v
      </text>
      <text class="caption" x={left - 6} y={currentTop + 8} text-anchor="end">
        i
      </text>
      <path
        class="thin"
        d={`M${x(start())} ${currentBottom}v12M${x(2 * Math.PI - start())} ${currentBottom}v12M${x(start())} ${currentBottom + 8}H${x(2 * Math.PI - start())}`}
      />
      <text x={x(Math.PI)} y={currentBottom + 23} text-anchor="middle">
        {figures.text('conductionAnglePep')}
      </text>
    </svg>
  );
}

/** Where the DC power of the final goes at PEP, as one bar. */
function Balance() {
  const figures = createFigures();
  const parts = createMemo(() => {
    const dc = figures.value('dcPowerPep');
    const heat = figures.value('deviceHeatPep');
    const network = figures.value('networkLossPep');
    const out = figures.value('pep');
    if (!dc || heat === undefined || network === undefined || out === undefined) return undefined;
    const whole = out + network + heat;
    return { out: out / whole, network: network / whole, heat: heat / whole };
  });
  return (
    <Show when={parts()}>
      {(share) => (
        <svg
          class="drawing"
          viewBox="0 0 400 66"
          role="img"
          aria-label={`Of the power in, ${figures.text('pep')} reach the antenna connector, ${figures.text('networkLossPep')} stay in the network, ${figures.text('deviceHeatPep')} heat the devices.`}
        >
          <rect class="bar-out" x="0" y="24" width={400 * share().out} height="16" />
          <rect class="bar-network" x={400 * share().out} y="24" width={400 * share().network} height="16" />
          <rect
            class="bar-heat"
            x={400 * (share().out + share().network)}
            y="24"
            width={400 * share().heat}
            height="16"
          />
          <text class="caption" x="0" y="17">
            {figures.text('pep')} out
          </text>
          <text class="caption" x={400 * share().out} y="56" text-anchor="middle">
            network {figures.text('networkLossPep')}
          </text>
          <text class="caption heat-text" x="400" y="17" text-anchor="end">
            {figures.text('deviceHeatPep')} heat
          </text>
        </svg>
      )}
    </Show>
  );
}
