import { fireEvent, screen } from '@solidjs/testing-library';
import type { JSX } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import type { Design } from '../../shared/design/schema.ts';
import { part } from '../../shared/design/start.ts';
import { BenchRuns } from '../../src/page/parts/BenchRuns.tsx';
import { DoubtFields } from '../../src/page/parts/DoubtFields.tsx';
import { Field } from '../../src/page/parts/Field.tsx';
import { PathList } from '../../src/page/parts/PathList.tsx';
import { PointList } from '../../src/page/parts/PointList.tsx';
import { useSheet } from '../../src/page/state/sheet.ts';
import { undoByKeyboard } from '../../src/page/state/undoKeys.ts';
import { renderInSheet, steadyRun } from './support.tsx';

const first = examples[0]!.design;
const design: Design = {
  ...first,
  wiring: { ...first.wiring, path: [part('fuse'), part('connector', 2), part('joint', 4)] },
  converter: { ...first.converter, points: [first.converter.points[0]!, first.converter.points[0]!] },
  bench: [steadyRun, steadyRun],
};

const points = () => (
  <PointList
    path="converter.points"
    legend="Points"
    noun="point"
    most={3}
    columns={[{ key: 'efficiency', label: 'efficiency' }]}
  />
);

/** Every list on the sheet, with the buttons that change it. */
const lists: readonly [string, () => JSX.Element, number][] = [
  ['parts of the path', () => <PathList />, 6],
  ['points of a curve', points, 3],
  ['bench runs', () => <BenchRuns />, 3],
];

describe.each(lists)('the list of %s', (_name, list, least) => {
  it('takes back every addition, move and removal in one step', () => {
    const { state, container } = renderInSheet(list, design);
    const count = () => container.querySelectorAll<HTMLButtonElement>('button.plain-button').length;
    let changes = 0;
    for (let index = 0; index < count(); index += 1) {
      const before = state.store.design();
      fireEvent.click(container.querySelectorAll<HTMLButtonElement>('button.plain-button')[index]!);
      if (state.store.design() === before) continue;
      changes += 1;
      const after = state.store.design();
      state.store.undo();
      expect(state.store.design()).toBe(before);
      state.store.redo();
      expect(state.store.design()).toBe(after);
      state.store.undo();
    }
    expect(changes).toBeGreaterThanOrEqual(least);
  });
});

describe('an entry', () => {
  it.each([
    [
      'a number typed',
      'sink.width',
      (box: HTMLElement) => fireEvent.input(box, { target: { value: '6 in' } }),
    ],
    ['a number stepped', 'sink.width', (box: HTMLElement) => fireEvent.keyDown(box, { key: 'ArrowUp' })],
    ['a text', 'name', (box: HTMLElement) => fireEvent.input(box, { target: { value: 'x' } })],
    ['a choice', 'amplifier.class', (box: HTMLElement) => fireEvent.change(box, { target: { value: 'C' } })],
    ['a tick', 'amplifier.efficiencyMeasured', (box: HTMLElement) => fireEvent.click(box)],
  ] as const)('%s is taken back', (_what, path, act) => {
    const { state, container } = renderInSheet(() => <Field path={path} />, design);
    const box = container.querySelector<HTMLElement>('input, select:not(.field-unit)')!;
    act(box);
    fireEvent.blur(box);
    expect(state.store.design()).not.toEqual(design);
    state.store.undo();
    expect(state.store.design()).toBe(design);
    expect(state.store.canUndo()).toBe(false);
  });

  it('how something was measured is taken back', () => {
    const { state } = renderInSheet(() => <DoubtFields />, design);
    fireEvent.change(screen.getByLabelText('Width across the fins'), { target: { value: 'caliper' } });
    expect(state.store.design().doubts).toEqual({ ...design.doubts, 'sink.width': 'caliper' });
    state.store.undo();
    expect(state.store.design()).toBe(design);
  });
});

describe('control-Z', () => {
  function show() {
    return renderInSheet(() => {
      undoByKeyboard(useSheet().store);
      return (
        <>
          <Field path="sink.width" />
          <Field path="sink.length" />
          <textarea aria-label="log" />
          <button type="button">elsewhere</button>
        </>
      );
    }, design);
  }
  const type = (label: string, value: string) => {
    const box = screen.getByLabelText<HTMLInputElement>(label);
    box.focus();
    fireEvent.input(box, { target: { value } });
    return box;
  };
  /** Whether the sheet took the key: otherwise it is the browser's own. */
  const press = (target: HTMLElement, key = 'z', more: object = {}) =>
    !fireEvent.keyDown(target, { key, ctrlKey: true, ...more });

  it('is the browser’s own while a text is changed, and the sheet’s once the field was left', () => {
    const { state } = show();
    const box = type('Width across the fins', '120');
    expect(press(box)).toBe(false);
    expect(state.store.design().sink.width).toBe(0.12);
    box.blur();
    const next = screen.getByLabelText<HTMLInputElement>('Length along the fins');
    next.focus();
    expect(press(next)).toBe(true);
    expect(state.store.design()).toBe(design);
    expect(press(next, 'y')).toBe(true);
    expect(state.store.design().sink.width).toBe(0.12);
    expect(press(next, 'Z', { shiftKey: true })).toBe(false);
  });

  it('steps on in the same field after it was left and entered again', () => {
    const { state } = show();
    const box = type('Width across the fins', '120');
    box.blur();
    type('Width across the fins', '130').blur();
    box.focus();
    expect(press(box)).toBe(true);
    expect(state.store.design().sink.width).toBe(0.12);
    expect(press(box)).toBe(true);
    expect(state.store.design()).toBe(design);
    expect(press(box)).toBe(false);
  });

  it('is the browser’s own in a log that is being typed, and the sheet’s on a button', () => {
    const { state } = show();
    type('Width across the fins', '120').blur();
    const log = screen.getByLabelText<HTMLTextAreaElement>('log');
    log.focus();
    log.value = '1; 25';
    expect(press(log)).toBe(false);
    const button = screen.getByText('elsewhere');
    button.focus();
    expect(press(button, 'z', { altKey: true })).toBe(false);
    expect(press(button)).toBe(true);
    expect(state.store.design()).toBe(design);
  });
});
