import { For, Index, Show } from 'solid-js';
import type { PlatePart } from '../../../shared/plateLayout.ts';
import type { PlateMap as WarmPlate } from '../../../shared/solution.ts';
import { niceTicks } from '../parts/plot/data.ts';
import type { Spot } from '../state/places.ts';
import { Part } from './PlatePart.tsx';
import { type Isotherm, left, plainDegrees, rangeWords, top, type View } from './plateMapShape.ts';

interface SketchProps {
  readonly map: WarmPlate | undefined;
  readonly isotherms: readonly Isotherm[];
  readonly layout: readonly PlatePart[];
  readonly view: View;
  readonly older: boolean;
  readonly spotWords: (spot: Spot) => string;
  readonly move: (index: number, spot: Spot, step: number) => void;
  readonly turn: (key: PlatePart['key']) => void;
}

/** The drawing of the plate: shades of warmth, their figures, and the parts to move. */
export function PlateSketch(props: SketchProps) {
  let svg!: SVGSVGElement;
  const bottom = () => top + props.view.height;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with movable parts is no fieldset
    <svg
      ref={svg}
      class="drawing plate-sketch"
      classList={{ older: props.older }}
      viewBox={`0 0 400 ${(bottom() + 62).toFixed(0)}`}
      role="group"
      aria-label={`Plate from the device side, to scale, with ${props.layout.length} ${props.layout.length === 1 ? 'part' : 'parts'} to move.`}
    >
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group in a drawing is not interactive */}
      <g role="img" aria-label={rangeWords(props.map)}>
        <g transform={`translate(${left} ${bottom()}) scale(1 -1)`}>
          <For each={props.isotherms}>
            {(isotherm) => <path class="warmth" fill-rule="evenodd" d={isotherm.path} />}
          </For>
        </g>
        <rect class="outline" x={left} y={top} width={props.view.width} height={props.view.height} />
        <Ruler view={props.view} bottom={bottom()} />
        <For each={props.isotherms}>
          {(isotherm) => (
            <Show when={isotherm.figure}>
              {(at) => (
                <text
                  class="isotherm-figure"
                  x={left + at()[0]}
                  y={bottom() - at()[1] + 4}
                  text-anchor="middle"
                >
                  {plainDegrees(isotherm.celsius)}
                </text>
              )}
            </Show>
          )}
        </For>
        <Scale isotherms={props.isotherms} y={bottom() + 34} />
      </g>
      <Index each={props.layout}>
        {(part, index) => (
          <Part
            part={part()}
            index={index}
            view={props.view}
            bottom={bottom()}
            mean={props.map?.parts[index]?.mean}
            svg={() => svg}
            spotWords={props.spotWords}
            move={props.move}
            turn={props.turn}
          />
        )}
      </Index>
    </svg>
  );
}

/** Marks along the lower and the left edge, in the middle of which the origin of places is seen. */
function Ruler(props: { view: View; bottom: number }) {
  const marks = (size: number) => niceTicks(0, (size / props.view.scale) * 1000, 6);
  const place = (mark: number) => (mark / 1000) * props.view.scale;
  return (
    <g class="plate-ruler">
      <For each={marks(props.view.width)}>
        {(mark) => (
          <>
            <path d={`M${left + place(mark)} ${props.bottom}v4`} />
            <text class="caption" x={left + place(mark)} y={props.bottom + 15} text-anchor="middle">
              {mark}
            </text>
          </>
        )}
      </For>
      <For each={marks(props.view.height)}>
        {(mark) => (
          <>
            <path d={`M${left} ${props.bottom - place(mark)}h-4`} />
            <text class="caption" x={left - 7} y={props.bottom - place(mark) + 4} text-anchor="end">
              {mark}
            </text>
          </>
        )}
      </For>
      <text class="caption" x={left - 7} y={props.bottom + 15} text-anchor="end">
        mm
      </text>
    </g>
  );
}

/** The steps of shade with the temperatures between them. */
function Scale(props: { isotherms: readonly Isotherm[]; y: number }) {
  const step = () => Math.min(38, 300 / Math.max(props.isotherms.length, 1));
  return (
    <g>
      <For each={props.isotherms}>
        {(isotherm, index) => (
          <>
            <rect
              class="warmth"
              x={left + (index() + 1) * step()}
              y={props.y}
              width={(props.isotherms.length - index()) * step()}
              height="9"
            />
            <text class="caption" x={left + (index() + 1) * step()} y={props.y + 22} text-anchor="middle">
              {plainDegrees(isotherm.celsius)}
            </text>
          </>
        )}
      </For>
      <rect
        class="scale-frame"
        x={left}
        y={props.y}
        width={(props.isotherms.length + 1) * step()}
        height="9"
      />
      <text class="caption" x={left} y={props.y + 22}>
        °C
      </text>
    </g>
  );
}
