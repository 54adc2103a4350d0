import { Show } from 'solid-js';
import { createFigures } from '../parts/Found.tsx';
import { useSheet } from '../state/sheet.ts';
import { arrowHead } from './Dimension.tsx';

/** The converter as a block: what goes in, what comes out, what is lost. */
export function ConverterDrawing() {
  const sheet = useSheet();
  const figures = createFigures();
  return (
    <Show
      when={sheet.store.view.converter.kind !== 'none'}
      fallback={
        <p class="no-drawing">
          The final runs straight from the source; the rail is what the wire leaves of it.
        </p>
      }
    >
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
    </Show>
  );
}
