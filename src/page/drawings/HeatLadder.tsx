import { createMemo, Index, Show } from 'solid-js';
import type { HeatNode } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { niceTicks, spread } from '../parts/plot/data.ts';
import { useSheet } from '../state/sheet.ts';

const width = 400;
const top = 26;
const bottom = 286;
const axisX = 52;
const icePoint = 273.15;

/** The heat path as a ladder on a scale of temperature: each rung stands where its temperature is. */
export function HeatLadder() {
  const sheet = useSheet();
  const nodes = createMemo(() => sheet.results.solution()?.heatPath[sheet.service()] ?? []);
  const limit = () => sheet.results.solution()?.values.designLimit;
  const range = createMemo(() => {
    const all = nodes().flatMap((node) => [node.mean, node.peak]);
    const high = Math.max(...all, limit() ?? 0);
    const low = Math.min(...all);
    return { low: low - 5, high: high + 8 };
  });
  const y = (kelvin: number) =>
    bottom - ((kelvin - range().low) / (range().high - range().low)) * (bottom - top);
  const labels = createMemo(() => {
    const middles = nodes().map((node) => y(node.peak));
    return spread(middles, 34, top + 8, bottom - 8);
  });
  const ticks = createMemo(() => niceTicks(range().low - icePoint, range().high - icePoint, 5));

  return (
    <Show
      when={nodes().length > 0}
      fallback={<p class="no-drawing">No temperatures for {sheet.nameOf(sheet.service())}.</p>}
    >
      <svg
        class="drawing"
        viewBox={`0 0 ${width} 310`}
        role="img"
        aria-label={`Heat path for ${sheet.nameOf(sheet.service())}: ${nodes().map(said).join(', ')}.`}
      >
        <path class="thin" d={`M${axisX} ${top - 8}V${bottom}`} />
        <Index each={ticks()}>
          {(tick) => (
            <>
              <path class="thin" d={`M${axisX - 5} ${y(tick() + icePoint)}h5`} />
              <text class="caption" x={axisX - 9} y={y(tick() + icePoint) + 4} text-anchor="end">
                {tick()}
              </text>
            </>
          )}
        </Index>
        <text class="caption" x={axisX - 9} y={top - 12} text-anchor="end">
          °C
        </text>
        <Show when={limit()}>
          {(kelvin) => (
            <>
              <path class="limit-line" d={`M${axisX} ${y(kelvin())}H${width}`} />
              {/* Named at the top, where no rung can come: rungs stand close together about the limit. */}
              <path class="limit-line" d={`M${width - 172} 10h24`} />
              <text class="limit-text" x={width} y="14" text-anchor="end">
                design limit {writeQuantity(kelvin(), 'temperature')}
              </text>
            </>
          )}
        </Show>
        <Index each={nodes()}>
          {(node, index) => (
            <>
              <Show when={nodes()[index + 1]}>
                {(next) => <path class="outline" d={resistor(axisX + 34, y(node().peak), y(next().peak))} />}
              </Show>
              <circle class="node" cx={axisX + 34} cy={y(node().peak)} r="3.4" />
              <path
                class="leader"
                d={`M${axisX + 40} ${y(node().peak)}L${axisX + 76} ${labels()[index]}H${axisX + 84}`}
              />
              <text x={axisX + 90} y={labels()[index]! - 1}>
                <tspan class="figure">{writeQuantity(node().peak, 'temperature')}</tspan>
              </text>
              <text class="caption" x={axisX + 90} y={labels()[index]! + 13}>
                {node().label}
                {Math.abs(node().peak - node().mean) > 0.5
                  ? ` (mean ${writeQuantity(node().mean, 'temperature')})`
                  : ''}
              </text>
            </>
          )}
        </Index>
      </svg>
    </Show>
  );
}

function said(node: HeatNode): string {
  return `${node.label} ${writeQuantity(node.peak, 'temperature')}`;
}

/** A zigzag between two rungs; a plain line where there is no room for it. */
function resistor(x: number, from: number, to: number): string {
  const span = to - from;
  if (Math.abs(span) < 16) return `M${x} ${from}V${to}`;
  const lead = Math.min(8, Math.abs(span) * 0.2) * Math.sign(span);
  const turns = 6;
  const stepSize = (span - 2 * lead) / turns;
  const zigzag = Array.from({ length: turns }, (_, index) => {
    const side = index % 2 === 0 ? 6 : -6;
    return `L${x + side} ${from + lead + stepSize * (index + 0.5)}`;
  });
  return `M${x} ${from}V${from + lead}${zigzag.join('')}L${x} ${to - lead}V${to}`;
}
