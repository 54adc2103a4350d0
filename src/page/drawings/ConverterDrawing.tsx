import { Match, Show, Switch } from 'solid-js';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { arrowHead } from './Dimension.tsx';
import '../parts/supplyParts.css';

/** The converter: a block for a bought module, its circuit when it is designed from parts. */
export function ConverterDrawing() {
  const sheet = useSheet();
  return (
    <Switch
      fallback={
        <p class="no-drawing">
          The final runs straight from the source; the rail is what the wire leaves of it.
        </p>
      }
    >
      <Match when={sheet.store.view.converter.kind === 'module'}>
        <Block />
      </Match>
      <Match when={sheet.store.view.converter.kind === 'designed'}>
        <Circuit />
      </Match>
    </Switch>
  );
}

/** What goes in, what comes out, what is lost. */
function Block() {
  const figures = createFigures();
  return (
    <svg
      class="drawing"
      viewBox="0 0 400 190"
      role="img"
      aria-label={`Converter: ${figures.text('inputVoltagePep')} in, ${figures.text('railVoltagePep')} out, ${figures.text('converterLossPep')} lost.`}
    >
      <rect class="outline" x="140" y="40" width="120" height="74" />
      <path class="outline" d="M140 114L260 40" />
      <path class="outline" d="M20 77H134" />
      <path class="arrow" d={arrowHead(140, 77, 'right')} />
      <path class="outline" d="M260 77H374" />
      <path class="arrow" d={arrowHead(380, 77, 'right')} />
      <path class="heat-line" d="M200 114V148" />
      <path class="arrow" d={arrowHead(200, 154, 'down')} />
      <text class="figure" x="20" y="66">
        {figures.text('inputVoltagePep')}
      </text>
      <text class="caption" x="20" y="96">
        {figures.text('converterInputCurrentPep')}
      </text>
      <text class="figure" x="380" y="66" text-anchor="end">
        {figures.text('railVoltagePep')}
      </text>
      <text class="caption" x="380" y="96" text-anchor="end">
        {figures.text('railCurrentPep')}
      </text>
      <text class="figure" x="160" y="66">
        {figures.text('converterEfficiencyPep')}
      </text>
      <text class="figure heat-text" x="210" y="152">
        {figures.text('converterLossPep')}
      </text>
      <text class="caption" x="210" y="168">
        heat at PEP
      </text>
    </svg>
  );
}

const top = 62;
const ground = 150;

/** One phase of the power stage with its values: choke, switch, rectifier, capacitors. */
function Circuit() {
  const sheet = useSheet();
  const figures = createFigures();
  const parts = () => sheet.store.view.converter.parts;
  const filtered = () => sheet.store.view.converter.filterInductance > 0;
  return (
    <svg
      class="drawing"
      viewBox="0 0 400 214"
      role="img"
      aria-label={`Step-up converter: ${figures.text('inductance')}, switch and rectifier at ${figures.text('switchingFrequency')}, ${figures.text('inputVoltagePep')} in, ${figures.text('railVoltagePep')} out, ${figures.text('converterLossPep')} lost.`}
    >
      <path class="outline" d={`M14 ${top}H116M172 ${top}H386M14 ${ground}H386`} />
      <Show when={filtered()}>
        <rect class="gap" x="28" y={top - 5} width="34" height="10" />
        <path class="outline" d={coil(28, 3)} />
      </Show>
      <path class="outline" d={coil(116, 5)} />
      <Capacitor x={92} />
      <Capacitor x={306} />
      <path class="outline" d={`M200 ${top}V${top + 26}M200 ${ground - 26}V${ground}`} />
      <path class="outline" d={`M200 ${ground - 26}L188 ${top + 30}`} />
      <circle class="part" cx="200" cy={top + 26} r="2.5" />
      <circle class="part" cx="200" cy={ground - 26} r="2.5" />
      <Show
        when={parts().rectifier === 'diode'}
        fallback={
          <>
            <rect class="gap" x="236" y={top - 6} width="28" height="12" />
            <path class="outline" d={`M238 ${top}L260 ${top - 12}`} />
            <circle class="part" cx="238" cy={top} r="2.5" />
            <circle class="part" cx="262" cy={top} r="2.5" />
          </>
        }
      >
        <path class="part" d={`M242 ${top - 8}V${top + 8}L258 ${top}zM258 ${top - 8}V${top + 8}`} />
      </Show>
      <text class="figure" x="14" y={ground - 38}>
        {figures.text('inputVoltagePep')}
      </text>
      <text class="caption" x="14" y={ground - 22}>
        {figures.text('converterInputCurrentPep')}
      </text>
      <text class="figure" x="144" y={top - 16} text-anchor="middle">
        {figures.text('inductance')}
      </text>
      <text class="caption" x="250" y={top - 16} text-anchor="middle">
        {figures.text('rectifierRms')} r.m.s.
      </text>
      <text class="caption" x="210" y={ground - 40}>
        {figures.text('switchRms')} r.m.s.
      </text>
      <text class="caption" x="210" y={ground - 25}>
        D = {figures.text('switchDuty')}
      </text>
      <text class="caption" x="92" y={ground + 18} text-anchor="middle">
        {figures.text('inputCapacitance')}
      </text>
      <text class="caption" x="306" y={ground + 18} text-anchor="middle">
        {figures.text('outputCapacitance')}
      </text>
      <text class="figure" x="386" y={ground - 38} text-anchor="end">
        {figures.text('railVoltagePep')}
      </text>
      <text class="caption" x="386" y={ground - 22} text-anchor="end">
        {figures.text('railCurrentPep')}
      </text>
      <text class="caption" x="14" y={ground + 44}>
        {figures.text('switchingFrequency')}
        {parts().phases > 1 ? `, one of ${parts().phases} phases drawn` : ''}
      </text>
      <text class="caption heat-text" x="386" y={ground + 44} text-anchor="end">
        {figures.text('converterLossPep')} of heat at PEP
      </text>
    </svg>
  );
}

/** Half turns beside each other on the upper line. */
function coil(x: number, turns: number): string {
  const width = 56 / 5;
  return `M${x} ${top}${`a${width / 2} ${width / 2} 0 0 1 ${width} 0`.repeat(turns)}`;
}

function Capacitor(props: { x: number }) {
  const middle = (top + ground) / 2;
  return (
    <path
      class="outline"
      d={`M${props.x} ${top}V${middle - 3}M${props.x - 10} ${middle - 3}h20M${props.x - 10} ${middle + 3}h20M${props.x} ${middle + 3}V${ground}`}
    />
  );
}
