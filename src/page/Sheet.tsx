import { createEffect, createSignal, type JSX, onCleanup, onMount } from 'solid-js';
import { PowerPath } from './drawings/PowerPath.tsx';
import { openFile } from './state/openSave.ts';
import { openForPrint } from './state/printing.ts';
import { SheetProvider, type SheetState } from './state/sheet.ts';
import { AmplifierStation } from './stations/AmplifierStation.tsx';
import { Cautions } from './stations/Cautions.tsx';
import { Head, NoticeList } from './stations/Head.tsx';
import { DeviceStation, SinkStation, SurroundingsStation } from './stations/HeatStations.tsx';
import { PeopleStation } from './stations/PeopleStation.tsx';
import { ServiceStation } from './stations/ServiceStation.tsx';
import { ConverterStation, SourceStation } from './stations/SupplyStations.tsx';
import { Verdicts } from './stations/Verdicts.tsx';

/** The whole sheet, in the order in which energy flows. */
export function Sheet(props: { state: SheetState; onReady?: () => void }) {
  markReady(props.state, () => props.onReady?.());
  undoByKeyboard(props.state);
  openForPrint();
  createEffect(() => {
    document.title = `${props.state.store.design().name} – Heat and Rail`;
  });
  return (
    <SheetProvider value={props.state}>
      <DropZone state={props.state}>
        <Hatch />
        <Head />
        <NoticeList />
        <main>
          <Verdicts />
          <PowerPath />
          <SourceStation number={1} />
          <ConverterStation number={2} />
          <AmplifierStation number={3} />
          <DeviceStation number={4} />
          <SinkStation number={5} />
          <SurroundingsStation number={6} />
          <ServiceStation number={7} />
          <PeopleStation number={8} />
          <Cautions number={9} />
        </main>
        <footer class="foot">
          <p>Everything is computed in this browser; nothing you enter leaves it.</p>
        </footer>
      </DropZone>
    </SheetProvider>
  );
}

/** A design file dropped anywhere on the sheet is opened. */
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
        const file = event.dataTransfer?.files[0];
        if (file) void openFile(file, props.state.store, props.state.notices);
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

/** Calls back once, when figures and curves have been painted. */
function markReady(state: SheetState, ready: () => void): void {
  let done = false;
  createEffect(() => {
    if (done || state.results.curves() === undefined) return;
    done = true;
    requestAnimationFrame(() => requestAnimationFrame(ready));
  });
}

/** Control-Z outside a text box steps through the design; inside one it is the browser's own. */
function undoByKeyboard(state: SheetState): void {
  onMount(() => {
    const listen = (event: KeyboardEvent) => {
      const inText = event.target instanceof HTMLInputElement && event.target.type === 'text';
      if (inText || !(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) state.store.redo();
      else state.store.undo();
    };
    document.addEventListener('keydown', listen);
    onCleanup(() => document.removeEventListener('keydown', listen));
  });
}
