import { For, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import type { PlatePlace } from '../../../shared/solution.ts';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

const sheetWidth = 400;
const widest = 220;
const tallest = 190;

/** The sink to scale in two views: the plate with the devices on it, and the fins seen from their ends. */
export function SinkDrawing() {
  const sheet = useSheet();
  const design = () => sheet.store.view;
  const scale = () => Math.min(widest / design().sink.width, tallest / design().sink.length);
  const width = () => design().sink.width * scale();
  const length = () => design().sink.length * scale();
  const base = () => Math.max(design().sink.baseThickness * scale(), 1.5);
  const fin = () => (design().sink.shape === 'fins' ? design().sink.finHeight * scale() : 0);
  const left = () => 84 + (widest - width()) / 2;
  const top = 34;
  const profile = () => top + length() + 30;
  const places = () => sheet.results.solution()?.places ?? [];
  const height = () => profile() + base() + fin() + 58;

  return (
    <svg
      class="drawing"
      viewBox={`0 0 ${sheetWidth} ${height().toFixed(0)}`}
      role="img"
      aria-label={describe(design())}
    >
      <rect class="outline" x={left()} y={top} width={width()} height={length()} />
      <path class="hidden-line" d={finLines(design(), left(), top, scale())} />
      <For each={places()}>
        {(place) => (
          <rect
            class="part"
            x={left() + (place.x - place.width / 2) * scale()}
            y={top + (design().sink.length - place.y - place.length / 2) * scale()}
            width={place.width * scale()}
            height={place.length * scale()}
          />
        )}
      </For>
      <Dimension path="sink.width" from={[left(), top]} to={[left() + width(), top]} off={-14} />
      <Dimension
        path="sink.length"
        from={[left() + width(), top]}
        to={[left() + width(), top + length()]}
        off={16}
      />
      <Show when={places()[0]}>
        {(place) => <FirstDevice place={place()} design={design()} left={left()} top={top} scale={scale()} />}
      </Show>

      <path class="outline" d={profilePath(design(), left(), profile(), scale(), base())} />
      <Dimension
        path="sink.baseThickness"
        from={[left() + width(), profile()]}
        to={[left() + width(), profile() + base()]}
        off={16}
      />
      <Show when={design().sink.shape === 'fins'}>
        <Dimension
          path="sink.finHeight"
          from={[left(), profile() + base()]}
          to={[left(), profile() + base() + fin()]}
          off={-16}
        />
        <Dimension
          path="sink.finThickness"
          from={[left(), profile() + base() + fin()]}
          to={[left() + design().sink.finThickness * scale(), profile() + base() + fin()]}
          off={18}
          outside
        />
        <text class="caption" x={left() + width()} y={profile() + base() + fin() + 22} text-anchor="end">
          {design().sink.finCount} fins
        </text>
      </Show>
      <text class="caption" x="0" y={height() - 6}>
        {design().sink.shape === 'fins'
          ? 'To scale. Above: device side, fins behind it; below: ends of the fins.'
          : 'To scale. Above: device side; below: edge.'}
      </text>
    </svg>
  );
}

/** Dimensions of the first device's contact face. */
function FirstDevice(props: { place: PlatePlace; design: Design; left: number; top: number; scale: number }) {
  const x = () => props.left + (props.place.x - props.place.width / 2) * props.scale;
  const y = () =>
    props.top + (props.design.sink.length - props.place.y - props.place.length / 2) * props.scale;
  const w = () => props.place.width * props.scale;
  const h = () => props.place.length * props.scale;
  return (
    <>
      <Dimension path="device.contactWidth" from={[x(), y()]} to={[x() + w(), y()]} off={-12} />
      <Dimension path="device.contactLength" from={[x() + w(), y()]} to={[x() + w(), y() + h()]} off={10} />
    </>
  );
}

function finPitch(design: Design): number {
  const { width, finCount, finThickness } = design.sink;
  return (width - finThickness) / Math.max(finCount - 1, 1);
}

/** Edges of the fins behind the plate. */
function finLines(design: Design, left: number, top: number, scale: number): string {
  if (design.sink.shape !== 'fins') return '';
  const lines = Array.from({ length: design.sink.finCount }, (_, index) => {
    const x = left + (finPitch(design) * index + design.sink.finThickness / 2) * scale;
    return `M${x.toFixed(1)} ${top}v${(design.sink.length * scale).toFixed(1)}`;
  });
  return lines.join('');
}

/** The outline of plate and fins seen from the ends of the fins, as one line. */
function profilePath(design: Design, left: number, top: number, scale: number, base: number): string {
  const width = design.sink.width * scale;
  if (design.sink.shape !== 'fins') return `M${left} ${top}h${width}v${base}h${-width}z`;
  const fin = design.sink.finHeight * scale;
  const thick = Math.max(design.sink.finThickness * scale, 0.6);
  const under = top + base;
  const comb = Array.from({ length: design.sink.finCount }, (_, index) => {
    const x = left + width - finPitch(design) * scale * index;
    return `H${x.toFixed(2)}v${fin.toFixed(2)}h${(-thick).toFixed(2)}V${under.toFixed(2)}`;
  });
  return `M${left} ${top}h${width}V${under}${comb.join('')}H${left}z`;
}

function describe(design: Design): string {
  const kind = design.sink.shape === 'fins' ? `a plate with ${design.sink.finCount} fins` : 'a flat panel';
  return `Drawing to scale of ${kind} with ${design.device.count} devices on it.`;
}
