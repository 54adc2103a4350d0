import { createMemo, Index, Match, Show, Switch } from 'solid-js';
import type { PathRow } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

const left = 60;
const right = 316;

/**
 * The 12 V path at the peak of the envelope: source, every part in order, load, and below it the steps by which the
 * voltage falls. The numbers are those of the table of parts.
 */
export function SupplyDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  const rows = () => sheet.results.solution()?.path ?? [];
  const count = createMemo(() => rows().length);
  const levels = () => {
    const open = figures.value('sourceVoltage');
    const terminal = figures.value('terminalVoltagePep');
    const load = figures.value('inputVoltagePep');
    return open === undefined || terminal === undefined || load === undefined
      ? undefined
      : { open, terminal, load };
  };
  return (
    <svg class="drawing" viewBox="0 0 400 274" role="img" aria-label={said(figures.text, rows())}>
      <path class="outline" d="M36 74V38H60M330 124V146H36V106M316 38H330V60" />
      <path class="outline" d="M18 74H54M26 82H46M18 90H54M26 98H46M36 98V106" />
      <Show when={count() > 0} fallback={<path class="outline" d="M60 38H316" />}>
        <Index each={rows()}>
          {(row, index) => <Piece row={row()} number={index + 1} {...place(count(), index)} />}
        </Index>
      </Show>
      <rect class="part" x="296" y="60" width="68" height="64" />
      <text x="330" y="84" text-anchor="middle">
        {sheet.store.view.converter.kind === 'none' ? 'final' : 'converter'}
      </text>
      <Show when={sheet.store.view.boards.transmitPower > 0}>
        <text class="caption" x="330" y="99" text-anchor="middle">
          and boards
        </text>
      </Show>
      <text class="caption" x="330" y="114" text-anchor="middle">
        {figures.text('loadPowerPep')}
      </text>
      <text class="figure" x="66" y="92">
        {figures.text('inputCurrentPep')}
      </text>
      <text class="caption" x="66" y="107">
        at PEP
      </text>
      <text class="caption" x="150" y="92">
        fuse {figures.text('fuseRating')}
      </text>
      <text class="caption" x="150" y="107">
        {sheet.store.view.wiring.size.replace('mm2', 'mm²')}
      </text>
      <Dimension path="wiring.length" from={[122, 146]} to={[330, 146]} off={16} />
      <Show when={levels()}>{(volts) => <Levels {...volts()} rows={rows()} />}</Show>
    </svg>
  );
}

function place(count: number, index: number): { from: number; to: number } {
  const width = (right - left) / Math.max(count, 1);
  return { from: left + width * index, to: left + width * (index + 1) };
}

/** A part on the line: a box for what is a thing, a plain line for wire, a triangle for a diode. */
function Piece(props: { row: PathRow; number: number; from: number; to: number }) {
  const middle = () => (props.from + props.to) / 2;
  const isWire = () => props.row.kind === 'mainWire' || props.row.kind === 'wire';
  return (
    <g classList={{ 'path-weak': props.row.weakest }}>
      <Show
        when={!isWire()}
        fallback={<path class="outline outline-strong" d={`M${props.from} 38H${props.to}`} />}
      >
        <path class="outline" d={`M${props.from} 38H${props.to}`} />
        <PartSymbol kind={props.row.kind} x={middle()} />
      </Show>
      <text class="caption" x={middle()} y="24" text-anchor="middle">
        {props.number}
      </text>
    </g>
  );
}

/** What a part is, as on a circuit diagram. */
function PartSymbol(props: { kind: PathRow['kind']; x: number }) {
  const at = (left: number) => props.x + left;
  return (
    <Switch fallback={<rect class="part" x={at(-8)} y="33" width="16" height="10" />}>
      <Match when={props.kind === 'fuse'}>
        <rect class="part" x={at(-11)} y="32" width="22" height="12" />
        <path class="outline" d={`M${at(-11)} 38H${at(11)}`} />
      </Match>
      <Match when={props.kind === 'connector'}>
        <path class="part" d={`M${at(-2)} 32A6 6 0 0 0 ${at(-2)} 44`} />
        <circle class="part" cx={at(3)} cy="38" r="3.5" />
      </Match>
      <Match when={props.kind === 'switch' || props.kind === 'relay'}>
        <rect class="gap" x={at(-8)} y="34" width="16" height="8" />
        <path class="outline" d={`M${at(-8)} 38L${at(8)} 29`} />
        <circle class="part" cx={at(-8)} cy="38" r="2" />
        <circle class="part" cx={at(8)} cy="38" r="2" />
      </Match>
      <Match when={props.kind === 'joint'}>
        <circle class="part" cx={at(0)} cy="38" r="4" />
      </Match>
      <Match when={props.kind === 'diode' || props.kind === 'transistor'}>
        <path class="part" d={`M${at(-6)} 31V45L${at(6)} 38zM${at(6)} 31V45`} />
      </Match>
    </Switch>
  );
}

const firstLevel = 208;
/** Height of the whole fall in the drawing; the fall alone is to scale. */
const fall = 44;
/** Where the fall inside the source stands. */
const sourceStep = 40;

/** The voltage from the open terminals down to the load, one step a part; only the steps are to scale. */
function Levels(props: { open: number; terminal: number; load: number; rows: readonly PathRow[] }) {
  const whole = () => Math.max(props.open - props.load, 1e-9);
  const y = (volts: number) => firstLevel + (fall * (props.open - volts)) / whole();
  const volts = (value: number) => writeQuantity(value, 'voltage', 'V');
  const steps = () => {
    let level = props.terminal;
    let path = `M18 ${firstLevel}H${sourceStep}V${y(level).toFixed(1)}`;
    props.rows.forEach((row, index) => {
      const { from, to } = place(props.rows.length, index);
      level -= row.drop;
      path += `H${((from + to) / 2).toFixed(1)}V${y(Math.max(level, props.load)).toFixed(1)}`;
    });
    return `${path}V${y(props.load).toFixed(1)}H382`;
  };
  return (
    <>
      <path class="outline" d={steps()} />
      <text x="18" y={firstLevel - 6}>
        {volts(props.open)} <tspan class="caption">open</tspan>
      </text>
      <text x="18" y={firstLevel + fall + 14}>
        {volts(props.terminal)} <tspan class="caption">at the terminals</tspan>
      </text>
      <text x="382" y={firstLevel + fall - 6} text-anchor="end">
        {volts(props.load)} <tspan class="caption">at the load</tspan>
      </text>
    </>
  );
}

function said(text: (key: string) => string, rows: readonly PathRow[]): string {
  const parts = rows.map((row, index) => `${index + 1} ${row.name}`).join(', ');
  return `12 V path: ${text('sourceVoltage')} open, ${text('terminalVoltagePep')} at the terminals and ${text('inputVoltagePep')} at the load with ${text('inputCurrentPep')}. On the way: ${parts}.`;
}
