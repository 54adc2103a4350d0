import { createMemo, For, Show } from 'solid-js';
import { lastPoint, type PlotData, type PlotLimit, type PlotMark, type PlotSeries, spread } from './data.ts';
import { type Drawn, freePlace, placeLabels, placesOf } from './labels.ts';

/** The size of the drawing in its own units; text has 12.5 of them. */
const usualSize = { width: 720, height: 330 };
const margin = { top: 16, right: 96, bottom: 44, left: 58 };
const labelHeight = 15;
/** About as wide as a letter of a name is, bold. */
const nameWidth = 7;

/** The plot as a line drawing: shown in print and where no canvas can be had. */
export function SvgPlot(props: { data: PlotData; size?: { width: number; height: number } }) {
  const { width, height } = props.size ?? usualSize;
  const x = (value: number) => {
    const [low, high] = props.data.xRange;
    return margin.left + ((value - low) / (high - low)) * (width - margin.left - margin.right);
  };
  const y = (value: number) => {
    const [low, high] = props.data.yRange;
    return height - margin.bottom - ((value - low) / (high - low)) * (height - margin.top - margin.bottom);
  };
  const right = width - margin.right;
  const bottom = height - margin.bottom;
  const fitsLeft = (mark: PlotMark) => x(mark.x) - margin.left > mark.label.length * nameWidth + 10;
  const points = (values: readonly (number | null)[]) => pathOf(props.data.x.map(x), values, y);
  const drawn = createMemo((): Drawn => {
    const xs = props.data.x.map(x);
    return {
      dots: props.data.marks.flatMap((mark) =>
        mark.y === undefined ? [] : [[x(mark.x), y(mark.y)] as const],
      ),
      lines: props.data.series.map((series) =>
        series.values.map((value, index) => (value === null ? null : ([xs[index]!, y(value)] as const))),
      ),
    };
  });
  const boxOf = (from: number, length: number, baseline: number) => ({
    left: from,
    right: from + length * nameWidth,
    top: baseline - labelHeight + 3,
    bottom: baseline + 3,
  });
  /** Where a limit is named: on its line at the left or the right, or under it, wherever no curve passes. */
  const limitPlace = (limit: PlotLimit) => {
    const long = limit.label.length;
    const places = [-5, 14].flatMap((away) =>
      (['start', 'end'] as const).map((anchor) => {
        const at = anchor === 'start' ? margin.left + 6 : right - 6;
        const baseline = y(limit.value) + away;
        return {
          anchor,
          at,
          baseline,
          box: boxOf(anchor === 'start' ? at : at - long * nameWidth, long, baseline),
        };
      }),
    );
    return freePlace(places, drawn());
  };
  const baselineOf = (row: number) => bottom - 6 - labelHeight * row;
  const edgeOf = (mark: PlotMark, side: 'left' | 'right') => x(mark.x) + (side === 'left' ? -5 : 5);
  const markPlaces = createMemo(() =>
    placeLabels(
      props.data.marks.map((mark) => {
        const long = mark.label.length;
        const boxAt = (row: number, side: 'left' | 'right') =>
          boxOf(edgeOf(mark, side) - (side === 'left' ? long * nameWidth : 0), long, baselineOf(row));
        const likes = fitsLeft(mark) ? 'left' : 'right';
        const top = mark.y === undefined ? margin.top : y(mark.y);
        const rows = Math.floor((bottom - margin.top) / labelHeight);
        return placesOf(rows, boxAt, likes, [margin.left, right], top);
      }),
      drawn(),
    ),
  );
  const endLabels = createMemo(() => {
    const ends = props.data.series.flatMap((series) => {
      const last = lastPoint(series);
      if (!last) return [];
      const atEdge = last.index === props.data.x.length - 1;
      return [{ series, atEdge, x: atEdge ? right + 8 : x(props.data.x[last.index]!) + 6, y: y(last.value) }];
    });
    const atEdge = ends.filter((end) => end.atEdge);
    const placed = spread(
      atEdge.map((end) => end.y),
      labelHeight,
      margin.top,
      bottom,
    );
    // A line that ends within the plot is named where it ends.
    return [
      ...atEdge.map((end, index) => ({ ...end, y: placed[index]! })),
      ...ends.filter((end) => !end.atEdge),
    ];
  });

  return (
    <svg class="plot-svg" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <For each={props.data.bands}>
        {(band) => (
          <rect
            x={margin.left}
            width={right - margin.left}
            y={y(band.to)}
            height={Math.max(0, y(band.from) - y(band.to))}
            fill={`var(${band.tone})`}
            class="plot-band"
          />
        )}
      </For>
      <For each={props.data.series}>
        {(series) => (
          <path
            class="plot-edges"
            fill={`var(${series.tone})`}
            d={edgesPath(props.data.x.map(x), series.edges, (value) =>
              Math.min(Math.max(y(value), margin.top), bottom),
            )}
          />
        )}
      </For>
      <For each={props.data.yTicks}>
        {(tick) => (
          <>
            <path class="plot-grid" d={`M${margin.left} ${y(tick)}H${right}`} />
            <text class="plot-tick" x={margin.left - 8} y={y(tick) + 4} text-anchor="end">
              {props.data.tickY(tick)}
            </text>
          </>
        )}
      </For>
      <For each={props.data.xTicks}>
        {(tick) => (
          <>
            <path class="plot-grid" d={`M${x(tick)} ${bottom}v5`} />
            <text class="plot-tick" x={x(tick)} y={bottom + 19} text-anchor="middle">
              {props.data.tickX(tick)}
            </text>
          </>
        )}
      </For>
      <path class="plot-axis" d={`M${margin.left} ${bottom}H${right}`} />
      <text class="plot-tick" x={right} y={height - 6} text-anchor="end">
        {props.data.xLabel}
      </text>
      <text class="plot-tick" x={margin.left + 6} y={margin.top - 4}>
        {props.data.yLabel}
      </text>
      <For each={props.data.limits}>
        {(limit) => (
          <>
            <path
              class="plot-limit"
              stroke={`var(${limit.tone})`}
              d={`M${margin.left} ${y(limit.value)}H${right}`}
            />
          </>
        )}
      </For>
      <For each={props.data.series}>
        {(series) => (
          <path
            class="plot-line"
            stroke={`var(${series.tone})`}
            stroke-dasharray={series.dash.join(' ')}
            d={points(series.values)}
          />
        )}
      </For>
      <For each={props.data.limits}>
        {(limit) => (
          <text
            class="plot-name"
            fill={`var(${limit.tone})`}
            x={limitPlace(limit).at}
            y={limitPlace(limit).baseline}
            text-anchor={limitPlace(limit).anchor}
          >
            {limit.label}
          </text>
        )}
      </For>
      <For each={props.data.marks}>
        {(mark, index) => (
          <>
            <path
              class="plot-mark"
              stroke={`var(${mark.tone})`}
              d={`M${x(mark.x)} ${bottom}V${mark.y === undefined ? margin.top : y(mark.y)}`}
            />
            <text
              class="plot-name"
              fill={`var(${mark.tone})`}
              x={edgeOf(mark, markPlaces()[index()]!.side)}
              y={baselineOf(markPlaces()[index()]!.row)}
              text-anchor={markPlaces()[index()]!.side === 'left' ? 'end' : 'start'}
            >
              {mark.label}
            </text>
          </>
        )}
      </For>
      <For each={props.data.marks}>
        {(mark) => (
          <Show when={mark.y !== undefined}>
            <circle fill={`var(${mark.tone})`} cx={x(mark.x)} cy={y(mark.y!)} r="3.5" />
          </Show>
        )}
      </For>
      <For each={endLabels()}>
        {(end) => (
          <text class="plot-name" fill={`var(${end.series.tone})`} x={end.x} y={end.y + 4}>
            {end.series.label}
          </text>
        )}
      </For>
    </svg>
  );
}

/** Along the upper edge and back along the lower. */
function edgesPath(xs: readonly number[], edges: PlotSeries['edges'], y: (value: number) => number): string {
  if (!edges || xs.length === 0) return '';
  const there = xs.map((at, i) => `${at.toFixed(1)} ${y(edges.high[i]!).toFixed(1)}`);
  const back = xs.map((at, i) => `${at.toFixed(1)} ${y(edges.low[i]!).toFixed(1)}`).reverse();
  return `M${[...there, ...back].join('L')}z`;
}

function pathOf(
  xs: readonly number[],
  values: readonly (number | null)[],
  y: (value: number) => number,
): string {
  let pen = 'M';
  let path = '';
  values.forEach((value, index) => {
    const at = xs[index];
    if (value === null || at === undefined) {
      pen = 'M';
      return;
    }
    path += `${pen}${at.toFixed(1)} ${y(value).toFixed(1)}`;
    pen = 'L';
  });
  return path;
}
