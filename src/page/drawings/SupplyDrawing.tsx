import { Show } from 'solid-js';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

/** The 12 V path at the peak of the envelope: source, fuse, wire, load, and the steps by which the voltage falls. */
export function SupplyDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  const levels = () => {
    const open = figures.value('sourceVoltage');
    const terminal = figures.value('terminalVoltagePep');
    const load = figures.value('inputVoltagePep');
    return open === undefined || terminal === undefined || load === undefined
      ? undefined
      : { open, terminal, load };
  };
  return (
    <svg class="drawing" viewBox="0 0 400 268" role="img" aria-label={said(figures.text)}>
      <path class="outline" d="M36 74V38H84M122 38H330V60M330 124V146H36V106" />
      <path class="outline" d="M18 74H54M26 82H46M18 90H54M26 98H46M36 98V106" />
      <path class="outline" d="M84 31H122V45H84zM84 38H122" />
      <rect class="part" x="296" y="60" width="68" height="64" />
      <text x="330" y="88" text-anchor="middle">
        {sheet.store.view.converter.kind === 'none' ? 'final' : 'converter'}
      </text>
      <text class="caption" x="330" y="106" text-anchor="middle">
        {figures.text('loadPowerPep')}
      </text>
      <text class="figure" x="103" y="22" text-anchor="middle">
        {figures.text('fuseRating')}
      </text>
      <text class="figure" x="66" y="92">
        {figures.text('inputCurrentPep')}
      </text>
      <text class="caption" x="66" y="107">
        at PEP
      </text>
      <text class="caption" x="226" y="30" text-anchor="middle">
        {sheet.store.view.wiring.size.replace('mm2', 'mm²')}
      </text>
      <Dimension path="wiring.length" from={[122, 146]} to={[330, 146]} off={16} />
      <Show when={levels()}>{(volts) => <Levels {...volts()} />}</Show>
    </svg>
  );
}

const firstLevel = 204;
/** Height of the whole fall in the drawing; the fall alone is to scale. */
const fall = 40;

/** The voltage from the open terminals down to the load; only the steps are to scale, not the whole. */
function Levels(props: { open: number; terminal: number; load: number }) {
  const whole = () => Math.max(props.open - props.load, 1e-9);
  const y = (volts: number) => firstLevel + (fall * (props.open - volts)) / whole();
  const volts = (value: number) => writeQuantity(value, 'voltage', 'V');
  return (
    <>
      <path class="outline" d={`M18 ${firstLevel}H112V${y(props.terminal)}H240V${y(props.load)}H382`} />
      <text x="18" y={firstLevel - 6}>
        {volts(props.open)} <tspan class="caption">open</tspan>
      </text>
      <text x="122" y={y(props.terminal) - 6}>
        {volts(props.terminal)} <tspan class="caption">terminals</tspan>
      </text>
      <text x="382" y={y(props.load) - 6} text-anchor="end">
        {volts(props.load)} <tspan class="caption">at the load</tspan>
      </text>
    </>
  );
}

function said(text: (key: string) => string): string {
  return `12 V path: ${text('sourceVoltage')} open, ${text('terminalVoltagePep')} at the terminals and ${text('inputVoltagePep')} at the load with ${text('inputCurrentPep')}.`;
}
