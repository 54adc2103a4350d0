import { createMemo, Show } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import { applies } from '../state/applies.ts';
import { knownField, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';

type Sink = Design['sink'];

const middleX = 170;
const size = 104;
const ground = 134;
const degree = 180 / Math.PI;

/** Whether the picture shows the ends of the fins instead of their broad side. */
const endsSeen: Readonly<Record<Sink['position'], boolean>> = {
  upright: false,
  tilted: false,
  crosswise: true,
  finsUp: true,
  finsDown: true,
};

/** Which way is up: the sink from its side as it stands or lies, with the way the warm air goes. */
export function SinkStands() {
  const sheet = useSheet();
  const sink = () => sheet.store.view.sink;
  const picture = createMemo(() => pictureOf(sink()));
  const tilted = () => applies(sheet.store.view, 'sink.tilt');
  const blown = () => applies(sheet.store.view, 'sink.fanFlow');
  return (
    <svg class="drawing" viewBox="0 0 400 172" role="img" aria-label={describe(sink(), blown())}>
      <path class="thin" d={`M40 ${ground}H360`} />
      <path class="thin" d="M58 120V44" />
      <path class="arrow" d="M58 36l-3 9h6z" />
      <text class="caption" x="58" y="30" text-anchor="middle">
        up
      </text>
      <g transform={picture().transform}>
        <path class="outline" d={picture().outline} />
        <Show when={blown()}>
          <path class="fan-line" d={picture().fan} />
        </Show>
      </g>
      <path class="air-line" d={picture().air} />
      <path class="arrow" d={picture().head} />
      <Show when={tilted()}>
        <Tilt tilt={sink().tilt} foot={footOf(sink())} />
      </Show>
      <text class="caption" x="0" y="164">
        From the side. The dashed arrow is the warm air{blown() ? '; the fan blows along the fins' : ''}.
      </text>
    </svg>
  );
}

/** The angle from upright; lights up with its field. */
function Tilt(props: { tilt: number; foot: number }) {
  const sheet = useSheet();
  const spec = knownField('sink.tilt') as NumberField;
  const reach = size * 0.8;
  const end = () => `${middleX + reach * Math.sin(props.tilt)} ${props.foot - reach * Math.cos(props.tilt)}`;
  return (
    <g class="dimension" classList={{ lit: sheet.focused() === 'sink.tilt' }}>
      <path class="extension" d={`M${middleX} ${props.foot}v${-size - 10}`} />
      <path d={`M${middleX} ${props.foot - reach}A${reach} ${reach} 0 0 1 ${end()}`} />
      <text x={middleX - 6} y={props.foot - reach - 2} text-anchor="end">
        {writeEcho(props.tilt, spec.dimension, sheet.preferences.unitOf('sink.tilt', spec))}
      </text>
    </g>
  );
}

interface Picture {
  readonly transform: string;
  readonly outline: string;
  readonly fan: string;
  readonly air: string;
  readonly head: string;
}

/** Sizes on the drawing: the plate as long as seen from the side, thickness, fins, and how many ends are seen. */
function sizesOf(sink: Sink) {
  const ends = endsSeen[sink.position];
  const along = ends ? sink.width : sink.length;
  const height = finHeightOf(sink);
  const deep = height * (sink.shape === 'finsBothSides' ? 2 : 1) + sink.baseThickness;
  const scale = size / Math.max(along, deep);
  return {
    ends,
    plate: along * scale,
    base: Math.max(sink.baseThickness * scale, 1.5),
    fin: height * scale,
    count: ends ? countOf(sink) : 0,
  };
}

function finHeightOf(sink: Sink): number {
  if (sink.shape === 'panel') return 0;
  return sink.shape === 'pins' ? sink.pinHeight : sink.finHeight;
}

function countOf(sink: Sink): number {
  if (sink.shape === 'panel') return 0;
  return sink.shape === 'pins' ? sink.pinColumns : sink.finCount;
}

function pictureOf(sink: Sink): Picture {
  const { ends, plate, base, fin, count } = sizesOf(sink);
  const sides = sink.shape === 'finsBothSides' ? [1, -1] : [1];
  const start = (side: number) => (side > 0 ? 0 : -base);
  const box = (side: number) => `M${start(side)} 0h${side * fin}v${-plate}h${-side * fin}`;
  // The plate stands on the origin with its fins to the right; ends of fins are lines across, broad sides one box.
  const outline = [
    `M0 0v${-plate}h${-base}v${plate}z`,
    ...(fin > 0 && (!ends || sink.shape === 'tunnel') ? sides.map(box) : []),
  ].join('');
  const ribs = ends
    ? sides.flatMap((side) =>
        Array.from({ length: count }, (_, k) => {
          const y = -(plate * (k + 0.5)) / Math.max(count, 1);
          return `M${start(side)} ${y}h${side * fin}`;
        }),
      )
    : [];
  return {
    transform: transformOf(sink, plate, base, fin),
    outline: outline + ribs.join(''),
    fan: `M0 9h${Math.max(fin, 8)}M${Math.max(fin, 8) / 2} 9v-7`,
    ...airOf(sink, plate, base, fin),
  };
}

/** Where the lower edge of a leaning plate stands, so that its fins stay above the ground. */
function footOf(sink: Sink): number {
  return ground - 4 - sizesOf(sink).fin * Math.sin(sink.tilt);
}

function transformOf(sink: Sink, plate: number, base: number, fin: number): string {
  const lift = sink.shape === 'finsBothSides' ? fin + base : base;
  if (sink.position === 'finsUp') return `translate(${middleX + plate / 2} ${ground - lift}) rotate(-90)`;
  if (sink.position === 'finsDown') return `translate(${middleX - plate / 2} ${ground - fin - 8}) rotate(90)`;
  if (sink.position === 'tilted')
    return `translate(${middleX} ${footOf(sink)}) rotate(${sink.tilt * degree})`;
  return `translate(${middleX} ${ground - 12})`;
}

/** The warm air: along upright fins, around level ones, up from fins that point up, sideways from under hanging ones. */
function airOf(sink: Sink, plate: number, base: number, fin: number): Pick<Picture, 'air' | 'head'> {
  const up = (x: number, from: number, to: number) => ({
    air: `M${x} ${from}V${to + 8}`,
    head: `M${x} ${to}l-3 9h6z`,
  });
  if (sink.position === 'finsUp') return up(middleX, ground - base - fin - 4, 14);
  if (sink.position === 'finsDown') {
    const x = middleX + plate / 2 + 14;
    const y = ground - fin / 2 - 8;
    return { air: `M${middleX + plate / 2 + 2} ${y}H${x}V36`, head: `M${x} 28l-3 9h6z` };
  }
  if (sink.position === 'crosswise') return up(middleX + fin + 12, ground - 12, 20);
  if (sink.position === 'tilted') {
    const angle = sink.tilt;
    const across = fin / 2;
    const point = (distance: number): [number, number] => [
      middleX + across * Math.cos(angle) + distance * Math.sin(angle),
      footOf(sink) + across * Math.sin(angle) - distance * Math.cos(angle),
    ];
    const [x, y] = point(plate * 0.15);
    const [endX, endY] = point(plate + 14);
    return {
      air: `M${x} ${y}L${endX} ${endY}`,
      head: arrowAlong(endX, endY, angle),
    };
  }
  return up(middleX + Math.max(fin, 10) / 2, ground - 16, ground - 12 - plate - 14);
}

/** An arrow head that points up, turned clockwise by an angle. */
function arrowAlong(x: number, y: number, angle: number): string {
  const turned = (across: number, back: number) =>
    `${x + across * Math.cos(angle) - back * Math.sin(angle)} ${y + across * Math.sin(angle) + back * Math.cos(angle)}`;
  return `M${x} ${y}L${turned(-3, 9)}L${turned(3, 9)}z`;
}

const words: Readonly<Record<Sink['position'], string>> = {
  upright: 'plate and fins upright',
  crosswise: 'plate upright with level fins',
  finsUp: 'plate level with the fins up',
  finsDown: 'plate level with the fins down',
  tilted: 'fins leaning from upright',
};

function describe(sink: Sink, blown: boolean): string {
  return `How the sink stands, from the side: ${words[sink.position]}${blown ? ', a fan blowing along the fins' : ''}.`;
}
