import {
  type Component,
  createEffect,
  createMemo,
  createSignal,
  ErrorBoundary,
  type JSX,
  Show,
} from 'solid-js';
import { PowerPath } from './later.tsx';
import { Place } from './parts/Place.tsx';
import { PaperPlace } from './print/PaperPlace.tsx';
import { holdAddressed } from './state/addressed.ts';
import { createEditing } from './state/editing.ts';
import { holdTyped } from './state/holdTyped.ts';
import { keptOffline } from './state/offline.ts';
import { openLinks } from './state/openLink.ts';
import { openFiles } from './state/openSave.ts';
import { usePace } from './state/pace.ts';
import { SheetProvider, type SheetState } from './state/sheet.ts';
import { undoByKeyboard } from './state/undoKeys.ts';
import { Head, NoticeList } from './stations/Head.tsx';
import { Verdicts } from './stations/Verdicts.tsx';

interface SheetProps {
  readonly state: SheetState;
  /** The stations, apart because they may arrive after the verdicts stand. */
  readonly stations: Component<{ onStanding: () => void }>;
  /** Called once, when figures, stations, curves and all that was put off have been painted. */
  readonly onReady?: () => void;
}

/** The whole sheet: title block, verdicts, power path, then the stations. */
export function Sheet(props: SheetProps) {
  const [standing, setStanding] = createSignal(false);
  const goToHash = holdAddressed();
  holdTyped();
  const editing = createEditing(props.state);
  markReady(props.state, standing, () => props.onReady?.());
  undoByKeyboard(props.state.store);
  openLinks(props.state.designs, props.state.notices);
  const name = createMemo(() => props.state.store.design().name);
  createEffect(() => {
    document.title = `${name()} – Heat and Rail`;
  });
  return (
    <SheetProvider value={props.state}>
      <DropZone state={props.state}>
        <Hatch />
        <NoticeList />
        <Head />
        <main classList={{ editing: editing() }}>
          <Verdicts />
          <Place class="power-path-place">
            <PowerPath />
          </Place>
          <ErrorBoundary
            fallback={
              <p class="reason">
                The stations could not be loaded. Reload the page; what you entered is kept.
              </p>
            }
          >
            <props.stations
              onStanding={() => {
                setStanding(true);
                goToHash();
              }}
            />
          </ErrorBoundary>
        </main>
        <Show when={standing()}>
          <footer class="foot">
            <p>
              Everything is computed in this browser; nothing you enter leaves it.
              <Show when={keptOffline()}> The sheet is kept in it and opens without a network.</Show>
            </p>
          </footer>
        </Show>
        <PaperPlace />
      </DropZone>
    </SheetProvider>
  );
}

/** Design files dropped anywhere on the sheet are opened. */
function DropZone(props: { state: SheetState; children: JSX.Element }) {
  const [over, setOver] = createSignal(false);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a convenience; the menu opens files by keyboard
    <div
      class="sheet"
      classList={{ 'drop-over': over() }}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const files = event.dataTransfer?.files;
        if (files?.length) void openFiles(files, props.state.designs, props.state.notices);
      }}
    >
      {props.children}
    </div>
  );
}

/** The hatching that stands for heat in every drawing. */
function Hatch() {
  return (
    <svg class="only-read" aria-hidden="true">
      <defs>
        <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="hatch-line" d="M0 0V6" />
        </pattern>
      </defs>
    </svg>
  );
}

/** Calls back once, when figures, stations, curves and all that was put off have been painted. */
function markReady(state: SheetState, standing: () => boolean, ready: () => void): void {
  let done = false;
  const pace = usePace();
  createEffect(() => {
    if (done || !standing() || !pace.idle() || state.results.curves() === undefined) return;
    done = true;
    requestAnimationFrame(() => requestAnimationFrame(ready));
  });
}
