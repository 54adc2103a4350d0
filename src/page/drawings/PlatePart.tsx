import { Show } from 'solid-js';
import type { PlatePart } from '../../../shared/plateLayout.ts';
import { fineStep, placeStep, type Spot } from '../state/places.ts';
import { useSheet } from '../state/sheet.ts';
import { capital, degrees, left, marks, type View } from './plateMapShape.ts';

interface PartProps {
  readonly part: PlatePart;
  readonly index: number;
  readonly view: View;
  readonly bottom: number;
  readonly mean: number | undefined;
  readonly svg: () => SVGSVGElement;
  readonly spotWords: (spot: Spot) => string;
  readonly move: (index: number, spot: Spot, step: number) => void;
  readonly turn: (key: PlatePart['key']) => void;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A part of the plate: its contact face, its spreader, and the ways to move it. */
export function Part(props: PartProps) {
  const { store } = useSheet();
  /** From where the pointer took hold to the middle of the part, m; null when it is not held. */
  let held: Spot | null = null;
  const source = () => props.part.source;
  const words = () => {
    const warm = props.mean === undefined ? '' : `, plate under it ${degrees(props.mean)}`;
    return `${capital(props.part.label)}, ${props.spotWords(source())}${warm}. Arrow keys move it, R turns it.`;
  };

  function onPlate(event: PointerEvent): Spot | null {
    const matrix = props.svg().getScreenCTM?.();
    if (!matrix) return null;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return { x: (point.x - left) / props.view.scale, y: (props.bottom - point.y) / props.view.scale };
  }

  function take(event: PointerEvent & { currentTarget: SVGGElement }): void {
    const at = onPlate(event);
    if (!at || event.button !== 0) return;
    held = { x: source().x - at.x, y: source().y - at.y };
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    event.preventDefault();
  }

  function drag(event: PointerEvent): void {
    const at = held && onPlate(event);
    if (!held || !at) return;
    props.move(props.index, { x: at.x + held.x, y: at.y + held.y }, event.shiftKey ? fineStep : placeStep);
  }

  function release(): void {
    held = null;
    store.commit();
  }

  function press(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'r' || event.key === 'R') {
      props.turn(props.part.key);
      return;
    }
    const arrow = arrows[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = event.shiftKey ? fineStep : placeStep;
    props.move(props.index, { x: source().x + arrow[0] * step, y: source().y + arrow[1] * step }, step);
  }

  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot stand in a drawing
    <g
      class="plate-part"
      role="button"
      tabindex="0"
      aria-label={words()}
      onKeyDown={press}
      onPointerDown={take}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={release}
      onBlur={() => store.commit()}
    >
      <Show when={source().width > props.part.face.width || source().length > props.part.face.length}>
        <Box class="spreader" of={source()} view={props.view} bottom={props.bottom} />
      </Show>
      <Box class="face" of={props.part.face} view={props.view} bottom={props.bottom} />
      <text
        x={left + source().x * props.view.scale}
        y={props.bottom - source().y * props.view.scale + 4}
        text-anchor="middle"
      >
        {marks[props.part.key] ?? props.index + 1}
      </text>
    </g>
  );
}

function Box(props: { class: string; of: PlatePart['source']; view: View; bottom: number }) {
  const scale = () => props.view.scale;
  return (
    <rect
      class={props.class}
      x={left + (props.of.x - props.of.width / 2) * scale()}
      y={props.bottom - (props.of.y + props.of.length / 2) * scale()}
      width={props.of.width * scale()}
      height={props.of.length * scale()}
    />
  );
}
