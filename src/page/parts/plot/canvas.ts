import type uPlot from 'uplot';
import { restBeforeFarDrawings } from '../../state/follow.ts';
import { watchNear } from '../near.ts';
import { lastPoint, type PlotData, type PlotSeries, spread } from './data.ts';
import { type Drawn, freePlace, placeLabels, placesOf } from './labels.ts';

export interface CanvasPlot {
  readonly show: (data: PlotData) => void;
  readonly resize: (width: number) => void;
  readonly repaint: () => void;
  /** Puts the cursor on a point of the x axis. */
  readonly point: (index: number) => void;
  readonly destroy: () => void;
}

type Maker = typeof uPlot;

const labelSize = 13;
const rightMargin = 84;
const edgesAlpha = 0.1;

/** Loads the plotting library when the first plot comes near; undefined where it cannot run. */
export async function loadPlotting(): Promise<Maker | undefined> {
  try {
    return (await import('uplot')).default;
  } catch {
    return undefined;
  }
}

/** A plot on a canvas inside the host, with names at the ends of the lines and levels named on the levels. */
export function mountPlot(
  Plot: Maker,
  host: HTMLElement,
  first: PlotData,
  size: { width: number; height: number },
  onCursor: (index: number) => void,
  whenAtRest: (work: () => void) => void,
): CanvasPlot {
  let data = first;
  // Read once a theme: asking the browser for a style in the middle of an edit makes it lay out the whole sheet.
  const known = new Map<string, string>();
  const css = (name: string): string => {
    const found = known.get(name) ?? getComputedStyle(host).getPropertyValue(name).trim();
    known.set(name, found);
    return found;
  };
  const font = (weight = '') => `${weight} ${labelSize}px ${css('--text-face')}`.trim();

  const axis = (side: 'x' | 'y'): uPlot.Axis => ({
    stroke: () => css('--ink-soft'),
    font: font(),
    grid: { stroke: () => css('--hairline'), width: 1, show: side === 'y' },
    ticks: { stroke: () => css('--hairline'), width: 1, size: 5, show: side === 'x' },
    size: side === 'x' ? 46 : 48,
    gap: 5,
    splits: () => [...(side === 'x' ? data.xTicks : data.yTicks)],
    values: (_plot, ticks) => ticks.map(side === 'x' ? data.tickX : data.tickY),
  });

  const plot = new Plot(
    {
      width: size.width,
      height: size.height,
      pxAlign: 0,
      padding: [18, rightMargin, 0, 0],
      legend: { show: false },
      cursor: { y: false, drag: { x: false, y: false }, points: { size: 8 } },
      scales: {
        x: { time: false, range: () => [...data.xRange] as [number, number] },
        y: { range: () => [...data.yRange] as [number, number] },
      },
      axes: [axis('x'), axis('y')],
      series: [
        {},
        ...first.series.map((series, index) => ({
          stroke: () => css(data.series[index]?.tone ?? '--ink'),
          width: 2,
          dash: [...series.dash],
          points: { show: false },
        })),
      ],
      hooks: {
        drawClear: [(self) => drawBands(self, data, css)],
        draw: [(self) => drawNames(self, data, css, font)],
        setCursor: [
          (self) => self.cursor.idx !== null && self.cursor.idx !== undefined && onCursor(self.cursor.idx),
        ],
      },
    },
    aligned(first),
    host,
  );

  // In sight the newest data are drawn after the figures have been painted, out of sight when the page is at rest.
  let near = true;
  let drawn = true;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let asked = false;
  let gone = false;
  const draw = () => {
    asked = false;
    if (gone || drawn) return;
    drawn = true;
    plot.setData(aligned(data));
  };
  const drawSoon = () => {
    if (drawn || asked) return;
    clearTimeout(resting);
    if (!near) {
      resting = setTimeout(() => whenAtRest(draw), restBeforeFarDrawings);
      return;
    }
    asked = true;
    requestAnimationFrame(() => setTimeout(draw));
  };
  const unwatch = watchNear(host, (isNear) => {
    near = isNear;
    host.classList.toggle('plot-far', !isNear);
    drawSoon();
  });

  return {
    show(next) {
      data = next;
      drawn = false;
      drawSoon();
    },
    resize: (width) => plot.setSize({ width, height: size.height }),
    repaint() {
      known.clear();
      plot.redraw(false);
    },
    point(index) {
      const at = data.x[index];
      if (at !== undefined) plot.setCursor({ left: plot.valToPos(at, 'x'), top: 0 }, false);
    },
    destroy() {
      unwatch();
      clearTimeout(resting);
      gone = true;
      plot.destroy();
    },
  };
}

function aligned(data: PlotData): uPlot.AlignedData {
  return [[...data.x], ...data.series.map((series) => [...series.values])] as uPlot.AlignedData;
}

type Css = (name: string) => string;

function drawBands(plot: uPlot, data: PlotData, css: Css): void {
  const { ctx, bbox } = plot;
  ctx.save();
  for (const band of data.bands) {
    const top = Math.max(plot.valToPos(band.to, 'y', true), bbox.top);
    const bottom = Math.min(plot.valToPos(band.from, 'y', true), bbox.top + bbox.height);
    ctx.globalAlpha = 0.12;
    ctx.fillStyle = css(band.tone);
    if (bottom > top) ctx.fillRect(bbox.left, top, bbox.width, bottom - top);
  }
  for (const series of data.series) shadeEdges(plot, data.x, series, css);
  ctx.restore();
}

/** The band around a line, from its upper edge back along the lower, kept inside the axes. */
function shadeEdges(plot: uPlot, xs: readonly number[], { edges, tone }: PlotSeries, css: Css): void {
  if (!edges) return;
  const { ctx, bbox } = plot;
  const point = (index: number, value: number) => {
    const y = plot.valToPos(value, 'y', true);
    ctx.lineTo(plot.valToPos(xs[index]!, 'x', true), Math.min(Math.max(y, bbox.top), bbox.top + bbox.height));
  };
  ctx.globalAlpha = edgesAlpha;
  ctx.fillStyle = css(tone);
  ctx.beginPath();
  for (let i = 0; i < xs.length; i++) point(i, edges.high[i]!);
  for (let i = xs.length - 1; i >= 0; i--) point(i, edges.low[i]!);
  ctx.fill();
}

function drawNames(plot: uPlot, data: PlotData, css: Css, font: (weight?: string) => string): void {
  const { ctx, bbox } = plot;
  const ratio = globalThis.devicePixelRatio || 1;
  const scaled = (text: string) => text.replace(`${labelSize}px`, `${labelSize * ratio}px`);
  const right = bbox.left + bbox.width;
  const bottom = bbox.top + bbox.height;
  ctx.save();
  ctx.textBaseline = 'middle';
  ctx.lineWidth = ratio;

  const drawn = drawnOn(plot, data);
  for (const limit of data.limits) {
    const y = plot.valToPos(limit.value, 'y', true);
    if (y < bbox.top || y > bottom) continue;
    line(ctx, css(limit.tone), [bbox.left, y, right, y], [1, 0]);
    ctx.font = scaled(font());
    const { side, left, middle } = limitPlace(plot, ctx.measureText(limit.label).width, y, drawn, ratio);
    ctx.textAlign = side;
    halo(ctx, css, limit.label, left, middle, css(limit.tone), ratio);
  }
  placeMarks(plot, data, drawn, css, scaled(font()), ratio);

  const ends = data.series.flatMap((series) => {
    const last = lastPoint(series);
    if (!last) return [];
    const x = plot.valToPos(data.x[last.index]!, 'x', true);
    return [{ series, x, atEdge: last.index === data.x.length - 1, y: plot.valToPos(last.value, 'y', true) }];
  });
  ctx.font = scaled(font('600'));
  ctx.textAlign = 'left';
  const atEdge = ends.filter((end) => end.atEdge);
  const placed = spread(
    atEdge.map((end) => end.y),
    16 * ratio,
    bbox.top,
    bottom,
  );
  atEdge.forEach(({ series }, index) => {
    ctx.fillStyle = css(series.tone);
    ctx.fillText(series.label, right + 8 * ratio, placed[index]!);
  });
  // A line that ends within the plot is named where it ends.
  for (const { series, x, y } of ends.filter((end) => !end.atEdge)) {
    halo(ctx, css, series.label, x + 6 * ratio, y, css(series.tone), ratio);
  }
  ctx.font = scaled(font());
  ctx.fillStyle = css('--ink-soft');
  ctx.fillText(data.yLabel, bbox.left + 4 * ratio, bbox.top - 9 * ratio);
  ctx.textAlign = 'right';
  ctx.fillText(data.xLabel, right, bottom + 36 * ratio);
  ctx.restore();
}

/** Dots and lines as they stand on the canvas. */
function drawnOn(plot: uPlot, data: PlotData): Drawn {
  const xs = data.x.map((at) => plot.valToPos(at, 'x', true));
  return {
    dots: data.marks.flatMap((mark) =>
      mark.y === undefined
        ? []
        : [[plot.valToPos(mark.x, 'x', true), plot.valToPos(mark.y, 'y', true)] as const],
    ),
    lines: data.series.map((series) =>
      series.values.map((value, index) =>
        value === null ? null : ([xs[index]!, plot.valToPos(value, 'y', true)] as const),
      ),
    ),
  };
}

/** Where a limit is named: on its line at the left or the right, or under it, wherever no curve passes. */
function limitPlace(plot: uPlot, width: number, y: number, drawn: Drawn, ratio: number) {
  const { bbox } = plot;
  const half = 8 * ratio;
  const places = [-9, 9].flatMap((away) =>
    (['left', 'right'] as const).map((side) => {
      const middle = y + away * ratio;
      const left = side === 'left' ? bbox.left + 6 * ratio : bbox.left + bbox.width - 6 * ratio;
      const from = side === 'left' ? left : left - width;
      return {
        side,
        left,
        middle,
        box: { left: from, right: from + width, top: middle - half, bottom: middle + half },
      };
    }),
  );
  return freePlace(places, drawn);
}

function placeMarks(plot: uPlot, data: PlotData, drawn: Drawn, css: Css, face: string, ratio: number): void {
  const { ctx, bbox } = plot;
  const bottom = bbox.top + bbox.height;
  ctx.font = face;
  const middleOf = (row: number) => bottom - (11 + 16 * row) * ratio;
  const half = 8 * ratio;
  const rows = Math.floor(bbox.height / (16 * ratio));
  const edgeOf = (x: number, side: 'left' | 'right') => x + (side === 'left' ? -5 : 5) * ratio;
  const labels = data.marks.map((mark) => {
    const x = plot.valToPos(mark.x, 'x', true);
    const top = mark.y === undefined ? bbox.top : plot.valToPos(mark.y, 'y', true);
    const width = ctx.measureText(mark.label).width;
    const likes = x - bbox.left > width + 10 * ratio ? 'left' : 'right';
    const boxAt = (row: number, side: 'left' | 'right') => {
      const from = side === 'left' ? edgeOf(x, side) - width : edgeOf(x, side);
      return { left: from, right: from + width, top: middleOf(row) - half, bottom: middleOf(row) + half };
    };
    return { mark, x, top, places: placesOf(rows, boxAt, likes, [bbox.left, bbox.left + bbox.width], top) };
  });
  const placed = placeLabels(
    labels.map(({ places }) => places),
    drawn,
  );
  for (const { mark, x, top } of labels)
    line(ctx, css(mark.tone), [x, bottom, x, top], [2 * ratio, 3 * ratio]);
  labels.forEach(({ mark, x }, index) => {
    const { row, side } = placed[index]!;
    ctx.textAlign = side === 'left' ? 'right' : 'left';
    halo(ctx, css, mark.label, edgeOf(x, side), middleOf(row), css(mark.tone), ratio);
  });
  for (const { mark, x, top } of labels) if (mark.y !== undefined) dot(ctx, css(mark.tone), x, top, ratio);
}

function line(
  ctx: CanvasRenderingContext2D,
  colour: string,
  at: readonly [number, number, number, number],
  dash: number[],
): void {
  ctx.strokeStyle = colour;
  ctx.setLineDash(dash);
  ctx.beginPath();
  ctx.moveTo(at[0], at[1]);
  ctx.lineTo(at[2], at[3]);
  ctx.stroke();
  ctx.setLineDash([]);
}

function dot(ctx: CanvasRenderingContext2D, colour: string, x: number, y: number, ratio: number): void {
  ctx.fillStyle = colour;
  ctx.beginPath();
  ctx.arc(x, y, 4 * ratio, 0, 2 * Math.PI);
  ctx.fill();
}

/** Text with the paper around it, so that a line underneath does not strike it through. */
function halo(
  ctx: CanvasRenderingContext2D,
  css: Css,
  text: string,
  x: number,
  y: number,
  colour: string,
  ratio: number,
): void {
  ctx.strokeStyle = css('--paper');
  ctx.lineWidth = 4 * ratio;
  ctx.lineJoin = 'round';
  ctx.strokeText(text, x, y);
  ctx.lineWidth = ratio;
  ctx.fillStyle = colour;
  ctx.fillText(text, x, y);
}
