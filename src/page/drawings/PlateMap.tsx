import './plateMap.css';
import { createEffect, createMemo, createSignal, For, Index, on, Show } from 'solid-js';
import type { Outcome } from '../../../shared/outcome.ts';
import { converterFields, type PlatePart, partLayout, plateParts } from '../../../shared/plateLayout.ts';
import type { PlateMap as WarmPlate } from '../../../shared/solution.ts';
import { writeQuantity } from '../../engine/quantity/write.ts';
import { SavePicture } from '../export/SavePicture.tsx';
import { createNear } from '../parts/near.ts';
import { ServicePicker } from '../parts/ServicePicker.tsx';
import { followAtRest } from '../state/follow.ts';
import { usePace } from '../state/pace.ts';
import {
  hasSpots,
  type Spot,
  snapped,
  withoutSpots,
  withPartAt,
  withPartTurned,
  withSpots,
} from '../state/places.ts';
import { useSheet } from '../state/sheet.ts';
import { PlateSketch } from './PlateSketch.tsx';
import { capital, degrees, finding, isothermsOf, sameValues, shortName, viewOf } from './plateMapShape.ts';

/** A gain smaller than this is not worth moving parts, K. */
const worthwhile = 0.05;

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
  const drawn = followAtRest(
    map,
    createNear(() => figure),
    pace,
  );
  const isotherms = createMemo(() => {
    const shown = drawn();
    return shown ? isothermsOf(shown, view(), layout()) : [];
  });

  createEffect(
    on([results.solved, sheet.service], ([design, service]) => {
      if (!design) return;
      asked += 1;
      const turn = asked;
      const ask = () => {
        if (turn === asked) void Promise.resolve(results.engine.plateMap(design, service)).then(answered);
      };
      const answered = (found: Outcome<WarmPlate>) => {
        // While a part is being moved the map goes with it; else it waits until the page has time.
        if (moved === null) pace.later(() => take(turn, found));
        else take(turn, found);
      };
      if (moved === null) pace.afterPaint(ask);
      else ask();
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

  function turn(key: PlatePart['key']): void {
    const prefix = key === 'device' ? 'device.' : `sink.${converterFields[key]}.`;
    store.change((design) => withPartTurned(design, key), prefix);
    setSaid(`${capital(turnedName(key, layout()))} turned by a quarter.`);
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
          turn={turn}
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
            <For each={kindsOf(layout())}>
              {(key) => (
                <button type="button" class="plain-button" onClick={() => turn(key)}>
                  turn {turnedName(key, layout())}
                </button>
              )}
            </For>
            <SavePicture title="Plate map" draw={drawCopy} />
          </p>
          <p class="plate-said" aria-live="polite">
            {said()}
          </p>
          <p class="plate-hint">
            Drag a part, or choose it and press the arrow keys: 1 mm a step, with Shift a tenth of it; R turns
            it by a quarter, all devices together.
          </p>
        </div>
      </div>
    </figure>
  );
}

/** Kinds of parts on the plate, each once. */
function kindsOf(layout: readonly PlatePart[]): PlatePart['key'][] {
  return [...new Set(layout.map(({ key }) => key))];
}

/** What turns together: the devices, or one part of the converter. */
function turnedName(key: PlatePart['key'], layout: readonly PlatePart[]): string {
  const parts = layout.filter((part) => part.key === key);
  if (key !== 'device') return parts[0]?.label ?? '';
  return parts.length === 1 ? 'the device' : 'the devices';
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
