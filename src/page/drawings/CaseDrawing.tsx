import { Show } from 'solid-js';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

/** Depth is drawn at 45° and half length, the usual oblique projection. */
const depthFactor = 0.5 * Math.SQRT1_2;

/** The case from the back, to scale, with the sink on it. */
export function CaseDrawing() {
  const sheet = useSheet();
  const design = () => sheet.store.view;
  const box = () => design().surroundings;
  const scale = () =>
    Math.min(
      250 / (box().caseWidth + box().caseDepth * depthFactor),
      170 / (box().caseHeight + box().caseDepth * depthFactor),
    );
  const width = () => box().caseWidth * scale();
  const height = () => box().caseHeight * scale();
  const depth = () => box().caseDepth * depthFactor * scale();
  const left = 40;
  const top = () => 20 + depth();
  const sinkWidth = () => design().sink.width * scale();
  const sinkHeight = () => design().sink.length * scale();
  /** How far a sink taller than the case reaches below it. */
  const overhang = () => Math.max(0, (sinkHeight() - height()) / 2);
  const total = () => top() + Math.max(height(), sinkHeight()) + 52;

  return (
    <svg
      class="drawing"
      viewBox={`0 0 400 ${total().toFixed(0)}`}
      role="img"
      aria-label="The case from the back, to scale."
    >
      <path
        class="thin"
        d={`M${left} ${top()}l${depth()} ${-depth()}h${width()}v${height()}l${-depth()} ${depth()}`}
      />
      <path class="thin" d={`M${left + width()} ${top()}l${depth()} ${-depth()}`} />
      <rect class="outline" x={left} y={top()} width={width()} height={height()} />
      <rect
        class="part"
        classList={{ inside: design().sink.placement === 'inside' }}
        x={left + (width() - sinkWidth()) / 2}
        y={top() + (height() - sinkHeight()) / 2}
        width={sinkWidth()}
        height={sinkHeight()}
      />
      <Show when={box().caseVents === 'vented'}>
        <path class="thin" d={ventSlots(left, top(), width(), height())} />
      </Show>
      <Dimension
        path="surroundings.caseWidth"
        from={[left, top() + height()]}
        to={[left + width(), top() + height()]}
        off={22 + overhang()}
      />
      <Dimension
        path="surroundings.caseHeight"
        from={[left + width() + depth(), top() - depth()]}
        to={[left + width() + depth(), top() - depth() + height()]}
        off={14}
      />
      <Dimension
        path="surroundings.caseDepth"
        from={[left + width(), top() + height()]}
        to={[left + width() + depth(), top() + height() - depth()]}
        off={12}
      />
      <text class="caption" x="0" y={total() - 4}>
        To scale, seen from the back{box().caseVents === 'vented' ? '; the slots stand for the vents' : ''}.
        <Show when={design().sink.placement === 'inside'}> The sink is inside.</Show>
        <Show when={sinkHeight() > height() && design().sink.placement === 'outside'}>
          {' '}
          The sink is taller than the case.
        </Show>
      </text>
    </svg>
  );
}

const slots = 9;

/** Rows of slots low and high on the back; their size is not to scale. */
function ventSlots(left: number, top: number, width: number, height: number): string {
  const row = (y: number) =>
    Array.from({ length: slots }, (_, k) => {
      const x = left + (width * (k + 1)) / (slots + 1);
      return `M${x.toFixed(1)} ${y.toFixed(1)}v6`;
    }).join('');
  return row(top + 4) + row(top + height - 10);
}
