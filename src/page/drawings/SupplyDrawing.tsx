import { Show } from 'solid-js';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

/** The 12 V path with its voltages: source, fuse, wire, load; and the steps by which the voltage falls. */
export function SupplyDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  const drops = () => {
    const open = figures.value('sourceVoltage');
    const terminal = figures.value('terminalVoltagePep');
    const load = figures.value('inputVoltagePep');
    return open === undefined || terminal === undefined || load === undefined
      ? undefined
      : { open, terminal, load };
  };
  return (
    <svg class="drawing" viewBox="0 0 400 250" role="img" aria-label={said(figures.text)}>
      <path class="outline" d="M48 78V40H96M48 112v38H336M116 40H336V62M336 128v22" />
      <path class="outline" d="M30 78h36M38 86h20M30 94h36M38 102h20M48 102v10" />
      <path class="outline" d="M96 33h40v14H96zM96 40h40" />
      <rect class="outline" x="306" y="62" width="60" height="66" />
      <text x="336" y="92" text-anchor="middle">
        {sheet.store.design().converter.kind === 'none' ? 'final' : 'conv.'}
      </text>
      <text class="caption" x="336" y="109" text-anchor="middle">
        {figures.text('loadPowerPep')}
      </text>
      <text class="figure" x="116" y="24" text-anchor="middle">
        {figures.text('fuseRating')}
      </text>
      <text class="figure" x="76" y="98">
        {figures.text('inputCurrentPep')}
      </text>
      <text class="caption" x="76" y="112">
        at PEP
      </text>
      <Dimension path="wiring.length" from={[136, 150]} to={[336, 150]} off={16} />
      <text class="caption" x="222" y="34" text-anchor="middle">
        {sheet.store.design().wiring.size.replace('mm2', 'mm²')}
      </text>
      <Show when={drops()}>{(volts) => <Steps {...volts()} />}</Show>
    </svg>
  );
}

/** Voltage steps, drawn from zero so that the drop keeps its true proportion. */
function Steps(props: { open: number; terminal: number; load: number }) {
  const y = (volts: number) => 240 - 40 * (volts / props.open);
  return (
    <>
      <path class="thin" d="M20 240H380" />
      <path class="outline" d={`M20 ${y(props.open)}H100V${y(props.terminal)}H260V${y(props.load)}H380`} />
      <text class="caption" x="20" y={y(props.open) - 5}>
        open {props.open.toFixed(1)} V
      </text>
      <text class="caption" x="180" y={y(props.terminal) + 15} text-anchor="middle">
        terminals {props.terminal.toFixed(1)} V
      </text>
      <text class="caption" x="380" y={y(props.load) + 15} text-anchor="end">
        load {props.load.toFixed(1)} V
      </text>
    </>
  );
}

function said(text: (key: string) => string): string {
  return `12 V path: ${text('sourceVoltage')} open, ${text('terminalVoltagePep')} at the terminals and ${text('inputVoltagePep')} at the load with ${text('inputCurrentPep')}.`;
}
