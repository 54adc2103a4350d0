import { createMemo, Match, mergeProps, Switch } from 'solid-js';
import { writeEcho } from '../../engine/quantity/write.ts';
import { fieldId } from '../parts/fieldId.ts';
import { knownField, leafAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';

type Point = readonly [number, number];

interface DimensionProps {
  /** The field this line stands for; it lights up while the field is edited, and a click on it goes there. */
  readonly path: string;
  /** Ends of the measured distance, in drawing units. */
  readonly from: Point;
  readonly to: Point;
  /** How far the line stands off the measured edge; its sign says to which side. */
  readonly off: number;
  /** Where the figure stands along the line; for distances too short to hold it. */
  readonly outside?: boolean;
}

const arrow = 6;
/** A workshop drawing needs no more figures of a length. */
const drawnFigures = 4;
/** Shorter than this the arrows stand outside and point inwards. */
const tight = 22;

const isSame = (one: Point, other: Point) => one[0] === other[0] && one[1] === other[1];

/** A dimension line with arrows, as on a workshop drawing. */
export function Dimension(props: DimensionProps) {
  const sheet = useSheet();
  const spec = knownField(props.path) as NumberField;
  const value = createMemo(() => leafAt(sheet.store.view, props.path) as number | null);
  const text = createMemo(() => {
    const si = value();
    const unit = sheet.preferences.unitOf(props.path, spec);
    return si === null ? '?' : writeEcho(si, spec.dimension, unit, drawnFigures);
  });
  const lit = () => sheet.focused() === props.path;
  // Each edit of the sink makes these points anew, mostly with the same numbers.
  const from = createMemo(() => props.from, undefined, { equals: isSame });
  const to = createMemo(() => props.to, undefined, { equals: isSame });
  const vertical = () => Math.abs(to()[0] - from()[0]) < 1e-6;
  const horizontal = () => Math.abs(to()[1] - from()[1]) < 1e-6;
  const line = mergeProps(props, {
    get from() {
      return from();
    },
    get to() {
      return to();
    },
  });

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a convenience for the mouse; the field itself takes the keyboard
    <g
      class="dimension"
      classList={{ lit: lit() }}
      onClick={() => document.getElementById(fieldId(props.path))?.focus()}
    >
      <Switch fallback={<Slanted {...line} text={text()} />}>
        <Match when={vertical()}>
          <Vertical {...line} text={text()} />
        </Match>
        <Match when={horizontal()}>
          <Horizontal {...line} text={text()} />
        </Match>
      </Switch>
    </g>
  );
}

function Horizontal(props: DimensionProps & { text: string }) {
  const left = () => Math.min(props.from[0], props.to[0]);
  const right = () => Math.max(props.from[0], props.to[0]);
  const y = () => props.from[1] + props.off;
  const edge = () => props.from[1];
  const inward = () => right() - left() < tight;
  return (
    <>
      <path class="extension" d={`M${left()} ${edge()}V${y()}M${right()} ${edge()}V${y()}`} />
      <path d={inward() ? `M${left() - 14} ${y()}H${right() + 14}` : `M${left()} ${y()}H${right()}`} />
      <path class="arrow" d={arrowHead(left(), y(), inward() ? 'right' : 'left')} />
      <path class="arrow" d={arrowHead(right(), y(), inward() ? 'left' : 'right')} />
      <text
        x={props.outside ? right() + 18 : (left() + right()) / 2}
        y={props.outside ? y() + 4 : y() - 4}
        text-anchor={props.outside ? 'start' : 'middle'}
      >
        {props.text}
      </text>
    </>
  );
}

function Vertical(props: DimensionProps & { text: string }) {
  const top = () => Math.min(props.from[1], props.to[1]);
  const bottom = () => Math.max(props.from[1], props.to[1]);
  const x = () => props.from[0] + props.off;
  const inward = () => bottom() - top() < tight;
  return (
    <>
      <path class="extension" d={`M${props.from[0]} ${top()}H${x()}M${props.from[0]} ${bottom()}H${x()}`} />
      <path d={inward() ? `M${x()} ${top() - 12}V${bottom() + 12}` : `M${x()} ${top()}V${bottom()}`} />
      <path class="arrow" d={arrowHead(x(), top(), inward() ? 'down' : 'up')} />
      <path class="arrow" d={arrowHead(x(), bottom(), inward() ? 'up' : 'down')} />
      <text
        x={x() + (props.off < 0 ? -6 : 6)}
        y={(top() + bottom()) / 2 + 4}
        text-anchor={props.off < 0 ? 'end' : 'start'}
      >
        {props.text}
      </text>
    </>
  );
}

/** Along an edge drawn at an angle; stands off at right angles to it. */
function Slanted(props: DimensionProps & { text: string }) {
  const angle = () => Math.atan2(props.to[1] - props.from[1], props.to[0] - props.from[0]);
  const shift = () => [-Math.sin(angle()) * props.off, Math.cos(angle()) * props.off] as const;
  const start = () => [props.from[0] + shift()[0], props.from[1] + shift()[1]] as const;
  const end = () => [props.to[0] + shift()[0], props.to[1] + shift()[1]] as const;
  const turn = () => (angle() * 180) / Math.PI;
  return (
    <>
      <path
        class="extension"
        d={`M${props.from.join(' ')}L${start().join(' ')}M${props.to.join(' ')}L${end().join(' ')}`}
      />
      <path d={`M${start().join(' ')}L${end().join(' ')}`} />
      <path
        class="arrow"
        d={arrowHead(0, 0, 'left')}
        transform={`translate(${start().join(' ')}) rotate(${turn()})`}
      />
      <path
        class="arrow"
        d={arrowHead(0, 0, 'right')}
        transform={`translate(${end().join(' ')}) rotate(${turn()})`}
      />
      <text x={(start()[0] + end()[0]) / 2 + 7} y={(start()[1] + end()[1]) / 2 + 10}>
        {props.text}
      </text>
    </>
  );
}

export function arrowHead(x: number, y: number, towards: 'left' | 'right' | 'up' | 'down'): string {
  const half = arrow * 0.32;
  if (towards === 'left') return `M${x} ${y}l${arrow} ${-half}v${2 * half}z`;
  if (towards === 'right') return `M${x} ${y}l${-arrow} ${-half}v${2 * half}z`;
  if (towards === 'up') return `M${x} ${y}l${-half} ${arrow}h${2 * half}z`;
  return `M${x} ${y}l${-half} ${-arrow}h${2 * half}z`;
}
