import { fireEvent, render, screen, waitFor, within } from '@solidjs/testing-library';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { type Design, designSchema } from '../../shared/design/schema.ts';
import { part, startDesign } from '../../shared/design/start.ts';
import { quantities } from '../../src/engine/catalogue/index.ts';
import { fieldId } from '../../src/page/parts/fieldId.ts';
import { Sheet } from '../../src/page/Sheet.tsx';
import Stations from '../../src/page/Stations.tsx';
import type { SheetState } from '../../src/page/state/sheet.ts';
import { startSheet } from '../../src/page/state/start.ts';
import type { TextStore } from '../../src/page/state/storage.ts';
import {
  atOnce,
  engine,
  figuresOnly,
  memoryStore,
  plainSpaces,
  sheetAround,
  throwingStore,
} from './support.tsx';

function show(design: Design = examples[0]!.design) {
  let state!: SheetState;
  const onReady = vi.fn();
  const shown = render(() => {
    state = sheetAround(design);
    return <Sheet state={state} stations={Stations} onReady={onReady} />;
  });
  return { ...shown, state, onReady };
}

const verdictTexts = (container: HTMLElement) =>
  [...container.querySelectorAll('.verdict-headline')].map((line) => plainSpaces(line.textContent));

/** Lazy parts are compiled on first use in a test; on a busy machine that takes a while. */
const arriving = { timeout: 20_000 };

describe('the sheet', () => {
  it.each(examples.map((example) => [example.key, example.design] as const))(
    'shows the verdicts of %s in words',
    (_key, design) => {
      const { container } = show(design);
      const expected = engine.solve(design).verdicts;
      expect(verdictTexts(container)).toEqual(expected.map((verdict) => plainSpaces(verdict.headline)));
      const words = [...container.querySelectorAll('.verdict .state')].map((state) => state.textContent);
      expect(words).toEqual(expected.map((verdict) => verdict.state));
    },
  );

  it('follows an edit at once, and undo brings the old figures back', () => {
    const { container, state } = show();
    const before = verdictTexts(container);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '20' } });
    expect(verdictTexts(container)).not.toEqual(before);
    fireEvent.blur(screen.getByLabelText('Output power (PEP)'));
    fireEvent.click(screen.getByText('Undo'));
    expect(verdictTexts(container)).toEqual(before);
    fireEvent.click(screen.getByText('Redo'));
    expect(state.store.design().amplifier.pep).toBe(20);
  });

  it('marks the figures as older while an entry cannot be read, and leads to it', () => {
    const { container } = show();
    const before = verdictTexts(container);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '20 kg' } });
    expect(verdictTexts(container)).toEqual(before);
    const note = container.querySelector<HTMLElement>('.older-note')!;
    expect(note.textContent).toContain('last good value');
    const link = within(note).getByRole('link', { name: 'Output power (PEP)' });
    expect(link.getAttribute('href')).toBe(`#${fieldId('amplifier.pep')}`);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '20' } });
    expect(container.querySelector('.older-note')).toBeNull();
  });

  it('says what the words of the states mean, before and after the band is there', () => {
    const { container } = show();
    const words = plainSpaces(container.querySelector('.state-key')?.textContent);
    expect(words).toMatch(/^fine: .*pessimistic edge.*; close: only nominally, .*; over: beyond/);
  });

  it('has every caution in sight, gravest first, with what to do', () => {
    const { container } = show();
    const expected = engine.solve(examples[0]!.design).cautions;
    const list = [...container.querySelectorAll('.caution')];
    expect(list.length).toBe(expected.length);
    expect(list.length).toBeGreaterThan(2);
    list.forEach((item, index) => {
      expect(item.textContent).toContain(expected[index]!.sentence);
      expect(item.textContent).toContain(expected[index]!.action);
      expect(item.closest('details')).toBeNull();
    });
  });

  it('opens the working of a figure: formula, values put in, source', async () => {
    const { container } = show();
    const summary = [...container.querySelectorAll('#source .found summary')].find((each) =>
      each.textContent?.includes('Current from the source at PEP'),
    )!;
    const details = summary.parentElement as HTMLDetailsElement;
    details.open = true;
    fireEvent(details, new Event('toggle'));
    const working = await waitFor(() => {
      const found = details.querySelector('.working');
      if (!found) throw new Error('the working has not arrived');
      return found;
    }, arriving);
    expect(working.querySelectorAll('math').length).toBeGreaterThan(1);
    expect(plainSpaces(working.textContent)).toMatch(/\d W/);
  });

  it('calls back once when it stands', async () => {
    const { onReady } = show();
    await waitFor(() => expect(onReady).toHaveBeenCalledTimes(1));
  });

  it('draws the curves of the three services, warming up, and the plots of amplifier and sink', async () => {
    const { container } = render(() => (
      <Sheet state={sheetAround(examples[0]!.design, { engine })} stations={Stations} />
    ));
    const titles = () => [...container.querySelectorAll('.plot-title')].map((title) => title.textContent);
    const expected = [
      'Power against output amplitude',
      'Heat against mismatch',
      'Derating of one device',
      'Sink rating against heat',
      'Junction temperature against duty',
      'Warming up in key-down',
    ];
    await waitFor(() => expect(titles()).toEqual(expect.arrayContaining(expected)), arriving);
    await waitFor(() => expect(container.querySelectorAll('#service .plot-line')).toHaveLength(5), arriving);
  });

  it('leaves the last figures and says so when the engine itself fails', () => {
    let state!: SheetState;
    const broken = {
      ...figuresOnly,
      solve: (design: Design) => {
        if (design.amplifier.pep === 21) throw new Error('no root');
        return engine.solve(design);
      },
    };
    const { container } = render(() => {
      state = sheetAround(examples[0]!.design, { engine: broken });
      return <Sheet state={state} stations={Stations} />;
    });
    const before = verdictTexts(container);
    state.store.edit('amplifier.pep', 21);
    expect(verdictTexts(container)).toEqual(before);
    expect(container.textContent).toContain('no root');
    state.store.undo();
    expect(container.textContent).not.toContain('no root');
  });
});

interface Node {
  readonly def?: { readonly shape?: Record<string, Node>; readonly element?: Node };
}

/** Dotted paths of every leaf of the design schema; of the efficiency points the first. */
function leaves(node: Node, path: string): readonly string[] {
  const shape = node.def?.shape;
  if (shape)
    return Object.entries(shape).flatMap(([key, child]) =>
      leaves(child, path === '' ? key : `${path}.${key}`),
    );
  const element = node.def?.element;
  if (!element?.def?.shape) return [path];
  // The parts of the path differ in what they are asked for: a connector, a piece of wire, a diode.
  const places = path === 'wiring.path' ? pathPlaces : { 0: Object.keys(element.def.shape) };
  return Object.entries(places).flatMap(([place, keys]) =>
    leaves(element, `${path}.${place}`).filter((leaf) => keys.some((key) => leaf.endsWith(`.${key}`))),
  );
}

const pathPlaces = {
  0: ['kind', 'connector', 'count', 'aged', 'resistance', 'rating'],
  1: ['size', 'length'],
  2: ['drop'],
};

/** Parts of the design that no station asks for yet: they come from files. */
const fromFiles = /^(format|version|doubts|bench)\b/;

describe('every field of the design', () => {
  it('has its place on the sheet in some design', () => {
    const designs: readonly Design[] = [
      {
        ...startDesign,
        converter: { ...startDesign.converter, kind: 'module' },
        wiring: {
          ...startDesign.wiring,
          path: [part('connector'), part('wire'), part('diode')],
        },
        sink: { ...startDesign.sink, finish: 'own' },
        device: { ...startDesign.device, pad: 'measured' },
        antenna: { ...startDesign.antenna, kind: 'smallLoop', exposureBy: 'overs' },
      },
      { ...startDesign, antenna: { ...startDesign.antenna, kind: 'smallLoaded' } },
      ...(['diode', 'synchronous'] as const).map((rectifier) => ({
        ...startDesign,
        converter: {
          ...startDesign.converter,
          kind: 'designed' as const,
          filterInductance: 1e-6,
          parts: { ...startDesign.converter.parts, core: 'N87' as const, rectifier },
        },
      })),
      {
        ...startDesign,
        amplifier: { ...startDesign.amplifier, calibration: 'readings' },
      },
      { ...startDesign, amplifier: { ...startDesign.amplifier, class: 'C' } },
      { ...startDesign, amplifier: { ...startDesign.amplifier, calibration: 'devices', swr: 2 } },
      {
        ...startDesign,
        amplifier: { ...startDesign.amplifier, class: 'D', calibration: 'devices', onResistance: 0.1 },
      },
      {
        ...startDesign,
        converter: { ...startDesign.converter, kind: 'designed', heatTo: 'amplifierSink' },
      },
      {
        ...startDesign,
        converter: { ...startDesign.converter, kind: 'module', heatTo: 'amplifierSink' },
        device: { ...startDesign.device, ladder: 'points', spreader: true, places: [{ x: 0.03, y: 0.04 }] },
        sink: {
          ...startDesign.sink,
          position: 'tilted',
          tapered: true,
          fan: 'along',
          fanPath: 'bypass',
          backExposed: true,
        },
        surroundings: { ...startDesign.surroundings, caseVents: 'vented' },
      },
      {
        ...startDesign,
        device: { ...startDesign.device, ladder: 'foster' },
        sink: { ...startDesign.sink, shape: 'pins' },
      },
      { ...startDesign, device: { ...startDesign.device, ladder: 'cauer' } },
      { ...startDesign, service: { ...startDesign.service, speechKind: 'own', keyDownMode: 'am' } },
    ];
    const found = new Set<string>();
    for (const design of designs) {
      const { container, unmount } = show(design);
      for (const control of container.querySelectorAll('[id^="field-"]')) found.add(control.id);
      unmount();
    }
    const all = leaves(designSchema as unknown as Node, '').filter((path) => !fromFiles.test(path));
    expect(all.length).toBeGreaterThan(60);
    expect(all.filter((path) => !found.has(fieldId(path)))).toEqual([]);
  });
});

describe('every figure of the solution', () => {
  it('can be read somewhere on the sheet', () => {
    const { container } = show();
    for (const details of container.querySelectorAll<HTMLDetailsElement>('.found-column details.more')) {
      details.open = true;
      fireEvent(details, new Event('toggle'));
    }
    const labels = [...container.querySelectorAll('.found-label')].map((label) => label.textContent ?? '');
    const keys = Object.keys(engine.solve(examples[0]!.design).values).map((key) => key.replace(/^.*\./, ''));
    const missing = [...new Set(keys)].filter((key) => {
      const entry = quantities[key];
      return entry && !entry.given && !labels.some((label) => label.startsWith(entry.label));
    });
    expect(missing).toEqual([]);
  });
});

/** A visit to the sheet with what the browser has kept. */
function visit(store: TextStore) {
  return render(() => {
    const state = startSheet(figuresOnly, store, { schedule: atOnce });
    return <Sheet state={state} stations={Stations} />;
  });
}

describe('between visits', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it('keeps design and texts, and brings them back', () => {
    vi.useFakeTimers();
    const store = memoryStore();
    const first = visit(store);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '25' } });
    fireEvent.input(screen.getByLabelText('Wire length, one way'), { target: { value: '3 kg' } });
    vi.advanceTimersByTime(400);
    first.unmount();
    visit(store);
    expect(screen.getByLabelText<HTMLInputElement>('Output power (PEP)').value).toBe('25');
    expect(screen.getByLabelText<HTMLInputElement>('Wire length, one way').value).toBe('3 kg');
    expect(screen.getByLabelText('Wire length, one way').getAttribute('aria-invalid')).toBe('true');
  });

  it('writes at the latest when the page is left', () => {
    vi.useFakeTimers();
    const store = memoryStore();
    visit(store);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '26' } });
    window.dispatchEvent(new Event('pagehide'));
    expect(Object.values(store.texts).join()).toContain('"pep":26');
  });

  it('works where storage throws, and says that nothing is kept', () => {
    vi.useFakeTimers();
    const { container } = visit(throwingStore);
    fireEvent.input(screen.getByLabelText('Output power (PEP)'), { target: { value: '27' } });
    vi.advanceTimersByTime(400);
    expect(container.querySelector('.notice')?.textContent).toContain('nothing is lost');
    expect(verdictTexts(container).length).toBe(5);
  });

  it('starts with an example and says why when the kept design is damaged', () => {
    const store = memoryStore({
      'heat-and-rail.open': 'a',
      'heat-and-rail.design.a': '{"design":{}}',
    });
    const { container } = visit(store);
    expect(container.querySelector('.notice')?.textContent).toContain('could not be read');
    expect(verdictTexts(container).length).toBe(5);
  });
});

describe('files', () => {
  it('opens one that is dropped on the sheet, and lists the faults of a damaged one', async () => {
    const { container, state } = show();
    const sheet = container.querySelector('.sheet')!;
    const drop = (text: string, name: string) => {
      const event = new Event('drop', { bubbles: true, cancelable: true });
      Object.assign(event, { dataTransfer: { files: [new File([text], name)] } });
      sheet.dispatchEvent(event);
    };
    drop(JSON.stringify({ ...startDesign, sink: { ...startDesign.sink, width: 9 } }), 'damaged.json');
    await waitFor(() =>
      expect(container.querySelector('.notice')?.textContent).toContain('Width across the fins'),
    );
    expect(state.store.design().name).toBe(examples[0]!.design.name);
    drop(JSON.stringify({ ...startDesign, name: 'Dropped' }), 'good.json');
    await waitFor(() => expect(state.store.design().name).toBe('Dropped'));
    expect(container.querySelector('.notice')).toBeNull();
  });
});
