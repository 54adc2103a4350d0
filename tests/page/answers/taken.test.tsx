import { fireEvent, screen } from '@solidjs/testing-library';
import { createSignal } from 'solid-js';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../shared/answers.ts';
import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { TakenNote } from '../../../src/page/answers/parts.tsx';
import { type Taken, takeEdits } from '../../../src/page/answers/taken.ts';
import { renderInSheet } from '../support.tsx';

const fan: readonly Edit[] = [
  { path: 'sink.fan', value: 'along' },
  { path: 'sink.fanFlow', value: 0.02 },
];

/** A note under a list of answers, and an answer that has just been taken. */
function take(edits = fan, design = startDesign) {
  const [taken, setTaken] = createSignal<Taken | null>(null);
  const { state, container } = renderInSheet(() => <TakenNote taken={taken()} />, design);
  const { store } = state;
  store.edit('sink.fanFlow', 0.01, { text: '10 L/s', unit: 'L/s' });
  store.commit();
  setTaken(takeEdits(store, 'Blow along the fins', edits));
  return { state, store, note: () => container.querySelector('.taken')!.textContent };
}

const takeBack = () => fireEvent.click(screen.getByText('take it back'));

describe('an answer that was taken', () => {
  it('is taken back alone: what was edited since stays, and the way back is a step', () => {
    const { store, note } = take();
    expect(note()).toBe('Taken: Blow along the fins. take it back');
    store.edit('amplifier.pep', 33);
    store.commit();
    const edited = store.design();
    takeBack();
    expect(store.design().amplifier.pep).toBe(33);
    expect(store.design().sink).toEqual({ ...startDesign.sink, fanFlow: 0.01 });
    expect(store.typed('sink.fanFlow')?.text).toBe('10 L/s');
    expect(note()).toBe('');
    // The keyboard does not fall back to the top of the page.
    expect(document.activeElement?.className).toBe('taken');
    store.undo();
    expect(store.design()).toBe(edited);
    expect(note()).toContain('Taken');
  });

  it('leaves runs on the sink as it is given, as they were', () => {
    const logged = examples.find(({ design }) => design.bench.length > 0)!.design;
    const design = { ...logged, bench: logged.bench.map((run) => ({ ...run, sink: null })) };
    const { store } = take([{ path: 'sink.width', value: 0.3 }], design);
    expect(store.design().bench[0]?.sink?.width).toBe(design.sink.width);
    takeBack();
    expect(store.design().sink.width).toBe(design.sink.width);
    expect(store.design().bench).toEqual(design.bench);
  });

  it('puts no text back over a value entered since', () => {
    const { store } = take([{ path: 'sink.fan', value: 'along' }]);
    store.edit('sink.fanFlow', 0.03, { text: '30 L/s', unit: 'L/s' });
    store.commit();
    takeBack();
    expect(store.design().sink).toMatchObject({ fan: startDesign.sink.fan, fanFlow: 0.03 });
    expect(store.typed('sink.fanFlow')?.text).toBe('30 L/s');
  });

  it('is told of no more once its step is undone, and again once it is redone', () => {
    const { store, note } = take();
    store.edit('amplifier.pep', 33);
    store.commit();
    store.undo();
    expect(note()).toContain('Taken');
    store.undo();
    expect(note()).toBe('');
    store.redo();
    expect(note()).toContain('Taken');
    store.undo();
    // The same by hand is not the answer’s step.
    for (const { path, value } of fan) store.edit(path, value as string);
    expect(note()).toBe('');
  });

  it('belongs to its design: on another one it is not told of', () => {
    const { state, store, note } = take();
    state.designs.bringIn([{ ...store.design(), name: 'Another' }]);
    expect(note()).toBe('');
    expect(screen.queryByText('take it back')).toBeNull();
    store.undo();
    expect(note()).toContain('Taken');
  });

  it('says so where its own values have been edited since', () => {
    const { store, note } = take();
    store.edit('sink.fanFlow', 0.03);
    store.commit();
    expect(note()).toBe(
      'Taken: Blow along the fins. What it changed has been edited since; Undo leads back step by step.',
    );
    expect(screen.queryByText('take it back')).toBeNull();
    store.undo();
    takeBack();
    expect(store.design().sink.fan).toBe(startDesign.sink.fan);
  });
});
