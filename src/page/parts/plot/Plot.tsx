import { createEffect, createSignal, createUniqueId, For, on, onCleanup, onMount, Show } from 'solid-js';
import { render } from 'solid-js/web';
import { SavePicture } from '../../export/SavePicture.tsx';
import { restBeforeFarDrawings } from '../../state/follow.ts';
import { usePace } from '../../state/pace.ts';
import { useSheet } from '../../state/sheet.ts';
import { whenNear } from '../near.ts';
import { type CanvasPlot, loadPlotting, mountPlot } from './canvas.ts';
import type { PlotData, PlotSeries } from './data.ts';
import { SvgPlot } from './SvgPlot.tsx';

const canvasHeight = 320;
/** A table longer than this is a file, not reading matter. */
const mostRows = 41;

/** A plot with its finding in words, a cursor to read it by, and its values as a table on demand. */
export function Plot(props: {
  title: string;
  finding: string;
  cursorLabel: string;
  data: PlotData;
  start?: number;
}) {
  const sheet = useSheet();
  const pace = usePace();
  const [index, setIndex] = createSignal<number | null>(null);
  /** Where no canvas can be had, the line drawing stands on the screen as well. */
  const [drawing, setDrawing] = createSignal(typeof CanvasRenderingContext2D === 'undefined');
  const [asTable, setAsTable] = createSignal(false);
  const tableId = createUniqueId();
  let host!: HTMLDivElement;
  let canvas: CanvasPlot | undefined;
  let width = 0;

  const last = () => props.data.x.length - 1;
  const shown = () => Math.min(index() ?? props.start ?? 0, last());
  const readout = () => readAt(props.data, shown());

  function move(next: number): void {
    setIndex(next);
    canvas?.point(next);
  }

  onMount(() => {
    let gone = false;
    const observer =
      typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(() => followWidth());
    const begin = () =>
      void loadPlotting().then((Plotting) => {
        if (gone) return;
        try {
          width = Math.floor(host.clientWidth);
          if (!Plotting || width === 0) throw new Error('no canvas');
          canvas = mountPlot(
            Plotting,
            host,
            props.data,
            { width, height: canvasHeight },
            setIndex,
            pace.last,
          );
          observer?.observe(host);
        } catch {
          canvas = undefined;
          setDrawing(true);
        }
      });
    let begun = false;
    const beginOnce = () => {
      if (!begun) begin();
      begun = true;
    };
    // In sight at once; far from the screen a plot is its words, cursor and table until the page has long been at rest.
    const unwatch = whenNear(host, beginOnce);
    const resting = setTimeout(() => pace.last(() => gone || beginOnce()), restBeforeFarDrawings);
    onCleanup(() => {
      gone = true;
      unwatch();
      clearTimeout(resting);
      observer?.disconnect();
      canvas?.destroy();
    });
  });

  function followWidth(): void {
    const next = Math.floor(host.clientWidth);
    if (next === width || next === 0) return;
    width = next;
    canvas?.resize(next);
  }

  createEffect(
    on(
      () => props.data,
      (data) => canvas?.show(data),
      { defer: true },
    ),
  );
  createEffect(
    on(sheet.preferences.theme, () => requestAnimationFrame(() => canvas?.repaint()), { defer: true }),
  );
  onMount(() => {
    const dark = globalThis.matchMedia?.('(prefers-color-scheme: dark)');
    const repaint = () => canvas?.repaint();
    dark?.addEventListener?.('change', repaint);
    onCleanup(() => dark?.removeEventListener?.('change', repaint));
  });

  return (
    <figure class="plot">
      <figcaption>
        <span class="plot-title">{props.title}</span> <span class="plot-finding">{props.finding}</span>
      </figcaption>
      <div class="plot-host" aria-hidden="true">
        <Show when={drawing()}>
          <SvgPlot data={props.data} />
        </Show>
        {/* The canvas has a place of its own: what a library puts in, the page must not clear away. */}
        <div class="plot-canvas" ref={host} />
      </div>
      <div class="plot-cursor">
        <input
          type="range"
          min="0"
          max={last()}
          step="1"
          value={shown()}
          aria-label={props.cursorLabel}
          aria-valuetext={readout()}
          onInput={(event) => move(Number(event.currentTarget.value))}
        />
        <p class="plot-readout">{readout()}</p>
        <button
          type="button"
          class="plain-button"
          aria-expanded={asTable()}
          aria-controls={tableId}
          onClick={() => setAsTable((now) => !now)}
        >
          {asTable() ? 'hide the table' : 'values as table'}
        </button>
        <SavePicture
          title={props.title}
          draw={(paper) => render(() => <SvgPlot data={props.data} />, paper)}
        />
      </div>
      <div id={tableId} class="plot-table" hidden={!asTable()}>
        <Show when={asTable()}>
          <PlotTable title={props.title} data={props.data} />
        </Show>
      </div>
    </figure>
  );
}

function readAt(data: PlotData, index: number): string {
  const x = data.x[index];
  if (x === undefined) return '';
  const parts = data.series.flatMap((series) => {
    const value = series.values[index];
    return value === null || value === undefined
      ? []
      : [`${series.label} ${(series.write ?? data.writeY)(value)}`];
  });
  return `at ${data.writeX(x)}: ${parts.length > 0 ? parts.join(', ') : 'no line here'}`;
}

/** Rows thinned evenly, first and last kept. */
export function thinned(length: number, most: number): readonly number[] {
  if (length <= most) return Array.from({ length }, (_, index) => index);
  const step = (length - 1) / (most - 1);
  return Array.from({ length: most }, (_, row) => Math.round(row * step));
}

function PlotTable(props: { title: string; data: PlotData }) {
  return (
    // A scrolling region must take the keyboard too.
    <section class="table-scroll" tabindex="0" aria-label={`Table: ${props.title}`}>
      <table>
        <caption class="only-read">{props.title}</caption>
        <thead>
          <tr>
            <th scope="col">{props.data.xLabel}</th>
            <For each={props.data.series}>{(series) => <th scope="col">{series.label}</th>}</For>
          </tr>
        </thead>
        <tbody>
          <For each={thinned(props.data.x.length, mostRows)}>
            {(index) => (
              <tr>
                <th scope="row">{props.data.writeX(props.data.x[index]!)}</th>
                <For each={props.data.series}>{(series) => <td>{cell(props.data, series, index)}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

function cell(data: PlotData, series: PlotSeries, index: number): string {
  const value = series.values[index];
  return value === null || value === undefined ? '–' : (series.write ?? data.writeY)(value);
}
