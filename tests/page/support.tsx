import { cleanup, render } from '@solidjs/testing-library';
import type { JSX } from 'solid-js';
import { afterEach } from 'vitest';
import type { Design } from '../../shared/design/schema.ts';
import { startDesign } from '../../shared/design/start.ts';
import { failure } from '../../shared/outcome.ts';
import {
  amplifierCurves,
  benchReportOf,
  plateMap,
  ratingCurve,
  solve,
  suggestedPlaces,
  supplyCurves,
  sweep,
  warmUp,
} from '../../src/engine/index.ts';
import { createDesigns } from '../../src/page/state/designs.ts';
import { createNotices } from '../../src/page/state/notices.ts';
import { createPreferences } from '../../src/page/state/preferences.ts';
import { createResults, type Engine, type Schedule } from '../../src/page/state/results.ts';
import { createSheetState, SheetProvider, type SheetState } from '../../src/page/state/sheet.ts';
import { createShelf } from '../../src/page/state/shelf.ts';
import type { TextStore } from '../../src/page/state/storage.ts';
import { createSheetStore } from '../../src/page/state/store.ts';

afterEach(cleanup);

const noCurve = () => failure('notAsked', 'This test asks for no curves.');

export const engine = {
  solve,
  sweep,
  warmUp,
  ratingCurve,
  amplifierCurves,
  supplyCurves,
  plateMap,
  suggestedPlaces,
  benchReportOf,
  band: noCurve,
  stopBand: () => {},
} satisfies Engine;

/** A bench run as short as one can be. */
export const steadyRun: Design['bench'][number] = {
  kind: 'steady',
  power: 20,
  powerDoubt: 0.02,
  air: 295,
  sensorDoubt: 1,
  sensorPlace: 'beside',
  resistorWidth: 0.015,
  resistorLength: 0.02,
  sink: null,
  readings: [{ time: 0, temperature: 300, room: null }],
};

/** The real figures without the curves, for tests that do not look at plots. */
export const figuresOnly: Engine = {
  solve,
  sweep: noCurve,
  warmUp: noCurve,
  ratingCurve: noCurve,
  plateMap: noCurve,
  suggestedPlaces: noCurve,
  benchReportOf: noCurve,
  band: noCurve,
  stopBand: () => {},
  amplifierCurves: () => ({ output: noCurve(), mismatch: noCurve(), derating: noCurve() }),
  supplyCurves: () => ({ timeCurrent: null, converter: null, noise: null }),
};

/** Runs scheduled work at once, so that a test sees the result of an edit in the next line. */
export const atOnce: Schedule = (work) => {
  work();
  return () => {};
};

/** A store in memory, with what was written to it. */
export function memoryStore(
  first: Record<string, string> = {},
): TextStore & { readonly texts: Record<string, string> } {
  const texts = { ...first };
  return {
    texts,
    getItem: (key) => texts[key] ?? null,
    setItem: (key, value) => {
      texts[key] = value;
    },
    removeItem: (key) => {
      delete texts[key];
    },
    keys: () => Object.keys(texts),
  };
}

/** A store that is full or forbidden. */
export const throwingStore: TextStore = {
  getItem: () => {
    throw new Error('forbidden');
  },
  setItem: () => {
    throw new DOMException('no room', 'QuotaExceededError');
  },
  removeItem: () => {
    throw new Error('forbidden');
  },
  keys: () => {
    throw new Error('forbidden');
  },
};

/** The state of a sheet around a design, with the real engine. */
export function sheetAround(
  design: Design = startDesign,
  options: { engine?: Engine; schedule?: Schedule } = {},
): SheetState {
  const store = createSheetStore({ id: 'one', design, typed: {} });
  const notices = createNotices();
  return createSheetState({
    store,
    notices,
    designs: createDesigns({ sheet: store, notices, shelf: createShelf(memoryStore()), memories: [] }),
    preferences: createPreferences(undefined),
    results: createResults(store.design, options.engine ?? figuresOnly, options.schedule ?? atOnce),
  });
}

/** Renders parts inside a sheet and hands back its state. */
export function renderInSheet(
  part: () => JSX.Element,
  design: Design = startDesign,
  options: { engine?: Engine; schedule?: Schedule } = {},
) {
  let state!: SheetState;
  const shown = render(() => {
    state = sheetAround(design, options);
    return <SheetProvider value={state}>{part()}</SheetProvider>;
  });
  return { ...shown, state };
}

/** Text with plain spaces, as a reader sees it. */
export function plainSpaces(text: string | null | undefined): string {
  return (text ?? '').replace(/[\u00a0\u2009\u202f]/g, ' ');
}
