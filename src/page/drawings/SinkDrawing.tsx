import { createMemo, For, Show } from 'solid-js';
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
  const view = createMemo(() => profileOf(design().sink));
  const fin = () => view().height * scale();
  /** Fins above the plate too, in the view of the ends. */
  const upper = () => (view().bothSides ? fin() : 0);
  const left = () => 84 + (widest - width()) / 2;
  const top = 34;
  const profile = () => top + length() + 30 + upper();
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
      <path class="hidden-line" d={behindPlate(design(), left(), top, scale())} />
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

      <path class="outline" d={profilePath(design().sink, view(), left(), profile(), scale(), base())} />
      <Dimension
        path="sink.baseThickness"
        from={[left() + width(), profile()]}
        to={[left() + width(), profile() + base()]}
        off={16}
      />
      <Show when={view().count > 0}>
        <Dimension
          path={view().heightPath}
          from={[left(), profile() + base()]}
          to={[left(), profile() + base() + fin()]}
          off={-16}
        />
        <Dimension
          path={view().thicknessPath}
          from={[left(), profile() + base() + fin()]}
          to={[left() + view().tip * scale(), profile() + base() + fin()]}
          off={18}
          outside
        />
        <text class="caption" x={left() + width()} y={profile() + base() + fin() + 22} text-anchor="end">
          {countWords(design().sink)}
        </text>
      </Show>
      <text class="caption" x="0" y={height() - 6}>
        To scale. Above: device side; below: {view().count > 0 ? 'seen along the fins or pins.' : 'the edge.'}
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

type Sink = Design['sink'];

/** What the end view shows: so many upright bars of this height and thickness on the plate. */
interface Profile {
  readonly count: number;
  readonly height: number;
  /** Thickness at the plate and at the tip, m. */
  readonly root: number;
  readonly tip: number;
  readonly bothSides: boolean;
  readonly closed: boolean;
  readonly heightPath: string;
  readonly thicknessPath: string;
}

function profileOf(sink: Sink): Profile {
  if (sink.shape === 'panel') {
    return {
      count: 0,
      height: 0,
      root: 0,
      tip: 0,
      bothSides: false,
      closed: false,
      heightPath: '',
      thicknessPath: '',
    };
  }
  if (sink.shape === 'pins') {
    return {
      count: sink.pinColumns,
      height: sink.pinHeight,
      root: sink.pinThickness,
      tip: sink.pinThickness,
      bothSides: false,
      closed: false,
      heightPath: 'sink.pinHeight',
      thicknessPath: 'sink.pinThickness',
    };
  }
  return {
    count: sink.finCount,
    height: sink.finHeight,
    root: sink.tapered ? sink.finRoot : sink.finThickness,
    tip: sink.tapered ? sink.finTip : sink.finThickness,
    bothSides: sink.shape === 'finsBothSides',
    closed: sink.shape === 'tunnel',
    heightPath: 'sink.finHeight',
    thicknessPath: sink.tapered ? 'sink.finTip' : 'sink.finThickness',
  };
}

function pitchOf(width: number, count: number, thickness: number): number {
  return (width - thickness) / Math.max(count - 1, 1);
}

/** Middles of the fins behind the plate, or the pins. */
function behindPlate(design: Design, left: number, top: number, scale: number): string {
  const { sink } = design;
  if (sink.shape === 'pins') return pinsBehind(sink, left, top, scale);
  const { count, root } = profileOf(sink);
  const lines = Array.from({ length: count }, (_, index) => {
    const x = left + (pitchOf(sink.width, count, root) * index + root / 2) * scale;
    return `M${x.toFixed(1)} ${top}v${(sink.length * scale).toFixed(1)}`;
  });
  return lines.join('');
}

/** Pins as small squares; more than this many would be a grey smear. */
const mostPinsDrawn = 400;

function pinsBehind(sink: Sink, left: number, top: number, scale: number): string {
  if (sink.pinColumns * sink.pinRows > mostPinsDrawn) return '';
  const size = sink.pinThickness * scale;
  const across = pitchOf(sink.width, sink.pinColumns, sink.pinThickness) * scale;
  const along = pitchOf(sink.length, sink.pinRows, sink.pinThickness) * scale;
  const squares = Array.from({ length: sink.pinColumns * sink.pinRows }, (_, index) => {
    const x = left + across * (index % sink.pinColumns);
    const y = top + along * Math.floor(index / sink.pinColumns);
    return `M${x.toFixed(1)} ${y.toFixed(1)}h${size.toFixed(1)}v${size.toFixed(1)}h${(-size).toFixed(1)}z`;
  });
  return squares.join('');
}

/** The outline of plate and fins seen from the ends of the fins, as one line. */
function profilePath(
  sink: Sink,
  view: Profile,
  left: number,
  top: number,
  scale: number,
  base: number,
): string {
  const width = sink.width * scale;
  const under = top + base;
  const lower = comb(sink, view, left, under, scale, 1);
  const upper = view.bothSides ? comb(sink, view, left, top, scale, -1) : `H${left + width}`;
  const outline = `M${left} ${top}${upper}V${under}${lower}H${left}z`;
  if (!view.closed) return outline;
  const bottom = under + view.height * scale;
  return `${outline}M${left} ${under}V${bottom}h${width}V${under}`;
}

/** The edge of the plate with its fins: leftwards and down for the lower side, rightwards and up for the upper. */
function comb(sink: Sink, view: Profile, left: number, edge: number, scale: number, down: 1 | -1): string {
  const pitch = pitchOf(sink.width, view.count, view.root) * scale;
  const root = Math.max(view.root * scale, 0.6);
  const slope = (root - Math.max(view.tip * scale, 0.6)) / 2;
  const height = view.height * scale * down;
  const start = down > 0 ? left + sink.width * scale : left;
  const bars = Array.from({ length: view.count }, (_, index) => {
    const x = start - down * pitch * index;
    const tip = `${(-down * slope).toFixed(2)} ${height.toFixed(2)}`;
    const flat = (-down * (root - 2 * slope)).toFixed(2);
    return `H${x.toFixed(2)}l${tip}h${flat}L${(x - down * root).toFixed(2)} ${edge}`;
  });
  return `${bars.join('')}H${down > 0 ? left : left + sink.width * scale}`;
}

function countWords(sink: Sink): string {
  if (sink.shape === 'pins') return `${sink.pinColumns} × ${sink.pinRows} pins`;
  return sink.shape === 'finsBothSides' ? `${sink.finCount} fins a side` : `${sink.finCount} fins`;
}

function describe(design: Design): string {
  const { sink } = design;
  const kind = sink.shape === 'panel' ? 'a flat panel' : `a plate with ${countWords(sink)}`;
  return `Drawing to scale of ${kind} with ${design.device.count} devices on it.`;
}
