import './plateMap.css';
import { createEffect, createMemo, createSignal, For, Index, on, Show } from 'solid-js';
import type { Outcome } from '../../../shared/outcome.ts';
import { converterFields, type PlatePart, partLayout, plateParts } from '../../../shared/plateLayout.ts';
import type { PlateMap as WarmPlate } from '../../../shared/solution.ts';
import { writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { SavePicture } from '../export/SavePicture.tsx';
import { niceTicks } from '../parts/plot/data.ts';
import { ServicePicker } from '../parts/ServicePicker.tsx';
import { usePace } from '../state/pace.ts';
import {
  fineStep,
  hasSpots,
  placeStep,
  type Spot,
  snapped,
  withoutSpots,
  withPartAt,
  withSpots,
} from '../state/places.ts';
import { useSheet } from '../state/sheet.ts';
import { type CellField, labelPlace, type Point, regionAbove } from './isotherms.ts';

const icePoint = 273.15;
const left = 40;
const top = 14;
const widest = 340;
const tallest = 250;
const isothermCount = 9;
/** Least clear distance of the figure on an isotherm, in drawing units. */
const labelRoom = 11;
/** A gain smaller than this is not worth moving parts, K. */
const worthwhile = 0.05;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What stands on parts that are no devices. */
const marks: Readonly<Partial<Record<PlatePart['key'], string>>> = {
  converter: 'C',
  switch: 'S',
  rectifier: 'D',
};

interface Isotherm {
  readonly celsius: number;
  readonly path: string;
  readonly figure: Point | null;
}

/** How the plate lies on the drawing. */
interface View {
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

/** The plate to scale with its temperatures; parts are moved by dragging and by the arrow keys. */
export function PlateMap() {
  const sheet = useSheet();
  const { store, results } = sheet;
  const pace = usePace();
  const [map, setMap] = createSignal<WarmPlate>();
  const [said, setSaid] = createSignal('');
  const [busy, setBusy] = createSignal(false);
  let moved: number | null = null;
  let asked = 0;
  let figure!: HTMLElement;

  // Drawing the lines of equal temperature is long work: an edit that leaves plate and parts as they are spares it.
  const layout = createMemo(
    () => {
      const found = partLayout(store.view);
      return found.ok ? found.value : [];
    },
    [],
    { equals: sameValues },
  );
  const fault = createMemo(() => {
    const found = plateParts(store.view);
    return found.ok ? null : found.reason.sentence;
  });
  const view = createMemo(() => viewOf(store.view.sink), viewOf(store.view.sink), { equals: sameValues });
  const isotherms = createMemo(() => {
    const shown = map();
    return shown ? isothermsOf(shown, view(), layout()) : [];
  });

  createEffect(
    on([results.solved, sheet.service], ([design, service]) => {
      if (!design) return;
      asked += 1;
      const turn = asked;
      void Promise.resolve(results.engine.plateMap(design, service)).then((found) => {
        // While a part is being moved the map goes with it; else it waits until the page has time.
        if (moved === null) pace.later(() => take(turn, found));
        else take(turn, found);
      });
    }),
  );

  function take(turn: number, found: Outcome<WarmPlate>): void {
    if (turn !== asked) return;
    setMap(found.ok ? found.value : undefined);
    if (moved !== null && found.ok) setSaid(placeWords(found.value, moved));
    moved = null;
  }

  function placeWords(shown: WarmPlate, index: number): string {
    const part = shown.parts[index];
    if (!part) return '';
    return `${capital(part.label)} ${spotWords(part)}, plate under it ${degrees(part.mean)}.`;
  }

  function inUnits(length: number): string {
    return writeQuantity(length, 'length', sheet.preferences.system() === 'inch' ? 'in' : 'mm', 3);
  }

  function spotWords({ x, y }: Spot): string {
    return `${inUnits(x)} from the left, ${inUnits(y)} from below`;
  }

  function move(index: number, spot: Spot, step: number): void {
    const part = layout()[index];
    if (!part) return;
    const next = snapped(store.view, part, spot, step);
    if (next.x === part.source.x && next.y === part.source.y) return;
    moved = index;
    const prefix = part.key === 'device' ? 'device.places.' : `sink.${converterFields[part.key]}.`;
    store.change((design) => withPartAt(design, layout(), index, next), prefix, `plate ${index}`);
  }

  async function suggest(): Promise<void> {
    setBusy(true);
    const wasWrong = fault() !== null;
    const design = store.design();
    const found = await results.engine.suggestedPlaces(design, sheet.service());
    setBusy(false);
    if (store.design() !== design) return;
    if (!found.ok) {
      setSaid(found.reason.sentence);
      return;
    }
    const { places, saved } = found.value;
    if (saved < worthwhile && !wasWrong) {
      setSaid('No places were found that keep the hottest junction cooler.');
      return;
    }
    store.change((now) => withSpots(now, layout(), places), 'device.places.');
    setSaid(
      wasWrong
        ? 'The parts stand apart now.'
        : `The hottest junction is ${writeQuantity(saved, 'temperatureDifference', 'K', 2)} cooler there.`,
    );
  }

  function drawCopy(paper: HTMLElement): () => void {
    const sketch = figure.querySelector('.plate-sketch');
    if (sketch) paper.append(sketch.cloneNode(true));
    return () => paper.replaceChildren();
  }

  return (
    <figure class="plate-map" ref={figure}>
      <figcaption>
        <span class="plot-title">Plate map</span> <span class="plot-finding">{finding(map())}</span>
      </figcaption>
      <ServicePicker legend="Plate in" />
      <div class="plate-body">
        <PlateSketch
          map={map()}
          isotherms={isotherms()}
          layout={layout()}
          view={view()}
          older={fault() !== null}
          spotWords={spotWords}
          move={move}
        />
        <div>
          <PlateTable map={map()} layout={layout()} inUnits={inUnits} />
          <Show when={fault()}>{(sentence) => <p class="reason">{sentence()}</p>}</Show>
          <p class="plate-actions">
            <button type="button" class="plain-button" disabled={busy()} onClick={() => void suggest()}>
              {busy() ? 'looking for places …' : 'suggest places'}
            </button>
            <Show when={hasSpots(store.view)}>
              <button
                type="button"
                class="plain-button"
                onClick={() => {
                  store.change(withoutSpots, 'device.places.');
                  setSaid('The parts are spread evenly.');
                }}
              >
                spread evenly
              </button>
            </Show>
            <SavePicture title="Plate map" draw={drawCopy} />
          </p>
          <p class="plate-said" aria-live="polite">
            {said()}
          </p>
          <p class="plate-hint">
            Drag a part, or choose it and press the arrow keys: 1 mm a step, with Shift a tenth of it.
          </p>
        </div>
      </div>
    </figure>
  );
}

function viewOf({ width, length }: { width: number; length: number }): View {
  const scale = Math.min(widest / width, tallest / length);
  return { scale, width: width * scale, height: length * scale };
}

/** Plain numbers and words in the same order. */
const sameValues = (before: unknown, now: unknown) => JSON.stringify(before) === JSON.stringify(now);

const degrees = (kelvin: number) => writeQuantity(kelvin, 'temperature', undefined, 4);

function finding(map: WarmPlate | undefined): string {
  if (!map || map.parts.length === 0) return '';
  const hottest = map.parts.reduce((most, part) => (part.peak > most.peak ? part : most));
  const above = writeQuantity(hottest.peak - map.plateMean, 'temperatureDifference', 'K', 2);
  return `Hottest under ${hottest.label}: ${degrees(hottest.peak)}, ${above} over the plate’s mean, when the junction is hottest.`;
}

function isothermsOf(map: WarmPlate, view: View, layout: readonly PlatePart[]): Isotherm[] {
  const field: CellField = {
    columns: map.columns,
    rows: map.rows,
    values: map.temperature.map((kelvin) => kelvin - icePoint),
    width: view.width,
    height: view.height,
  };
  const taken = layout.map(({ source }) => ({
    x: source.x * view.scale,
    y: source.y * view.scale,
    width: source.width * view.scale,
    height: source.length * view.scale,
  }));
  const size = { width: view.width, height: view.height };
  return niceTicks(map.lowest - icePoint, map.highest - icePoint, isothermCount).map((celsius) => {
    const loops = regionAbove(field, celsius);
    const figure = labelPlace(loops, size, taken, labelRoom);
    if (figure) taken.push({ x: figure[0], y: figure[1], width: 26, height: 12 });
    return { celsius, path: loops.map(closed).join(''), figure };
  });
}

function closed(loop: readonly Point[]): string {
  return `M${loop.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}z`;
}

interface SketchProps {
  readonly map: WarmPlate | undefined;
  readonly isotherms: readonly Isotherm[];
  readonly layout: readonly PlatePart[];
  readonly view: View;
  readonly older: boolean;
  readonly spotWords: (spot: Spot) => string;
  readonly move: (index: number, spot: Spot, step: number) => void;
}

function PlateSketch(props: SketchProps) {
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
          />
        )}
      </Index>
    </svg>
  );
}

function rangeWords(map: WarmPlate | undefined): string {
  return map ? `Isotherms from ${degrees(map.lowest)} to ${degrees(map.highest)}.` : 'No temperatures yet.';
}

function plainDegrees(celsius: number): string {
  return writeNumber(celsius, celsius % 1 === 0 ? 3 : 4, true);
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

interface PartProps {
  readonly part: PlatePart;
  readonly index: number;
  readonly view: View;
  readonly bottom: number;
  readonly mean: number | undefined;
  readonly svg: () => SVGSVGElement;
  readonly spotWords: (spot: Spot) => string;
  readonly move: (index: number, spot: Spot, step: number) => void;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A part of the plate: its contact face, its spreader, and the ways to move it. */
function Part(props: PartProps) {
  const { store } = useSheet();
  /** From where the pointer took hold to the middle of the part, m; null when it is not held. */
  let held: Spot | null = null;
  const source = () => props.part.source;
  const words = () => {
    const warm = props.mean === undefined ? '' : `, plate under it ${degrees(props.mean)}`;
    return `${capital(props.part.label)}, ${props.spotWords(source())}${warm}. Arrow keys move it.`;
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
    const arrow = arrows[event.key];
    if (!arrow || event.altKey || event.ctrlKey || event.metaKey) return;
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

/** The same in figures. */
function PlateTable(props: {
  map: WarmPlate | undefined;
  layout: readonly PlatePart[];
  inUnits: (length: number) => string;
}) {
  return (
    <table class="plate-table">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">across, up</th>
          <th scope="col">heat</th>
          <th scope="col">mean</th>
          <th scope="col">hottest</th>
        </tr>
      </thead>
      <tbody>
        <Index each={props.layout}>
          {(part, index) => {
            const warm = () => props.map?.parts[index];
            return (
              <tr>
                <th scope="row">{shortName(part(), index)}</th>
                <td>
                  {props.inUnits(part().source.x)}, {props.inUnits(part().source.y)}
                </td>
                <td>{warm() ? writeQuantity(warm()!.heat, 'power') : '–'}</td>
                <td>{warm() ? degrees(warm()!.mean) : '–'}</td>
                <td>{warm() ? degrees(warm()!.peak) : '–'}</td>
              </tr>
            );
          }}
        </Index>
      </tbody>
    </table>
  );
}

function shortName(part: PlatePart, index: number): string {
  return part.key === 'device'
    ? `${index + 1} device`
    : `${marks[part.key]} ${part.label.replace('the ', '')}`;
}
