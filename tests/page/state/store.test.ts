import fc from 'fast-check';
import { createEffect, createRoot } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { createSheetStore, type SheetStore } from '../../../src/page/state/store.ts';

function inStore(check: (store: SheetStore) => void): void {
  createRoot((dispose) => {
    check(createSheetStore({ id: 'one', design: startDesign, typed: {} }));
    dispose();
  });
}

describe('the store of the sheet', () => {
  it('takes a good value and leaves the rest of the design alone', () => {
    inStore((store) => {
      store.edit('sink.width', 0.2);
      expect(store.design().sink.width).toBe(0.2);
      expect(store.design().sink.length).toBe(startDesign.sink.length);
      expect(store.design().source).toBe(startDesign.source);
    });
  });

  it('keeps the last good value when a text cannot be read, and names the field', () => {
    inStore((store) => {
      store.edit('sink.width', 0.2);
      store.refuse('sink.width', { text: '5 kg', reason: 'kg is a mass', unit: 'mm' });
      expect(store.design().sink.width).toBe(0.2);
      expect(store.typed('sink.width')?.text).toBe('5 kg');
      expect(store.wrong()).toEqual(['sink.width']);
      store.edit('sink.width', 0.21);
      expect(store.wrong()).toEqual([]);
    });
  });

  it('calls who shows a text only when that text changes', () => {
    const shown: (string | undefined)[] = [];
    const { store, dispose } = createRoot((dispose) => {
      const store = createSheetStore({ id: 'one', design: startDesign, typed: {} });
      createEffect(() => shown.push(store.typed('sink.width')?.text));
      return { store, dispose };
    });
    const refused = (text: string) => ({ text, reason: 'kg is a mass', unit: 'mm' });
    store.refuse('sink.width', refused('5 kg'));
    store.refuse('sink.length', refused('6 kg'));
    store.refuse('sink.width', refused('7 kg'));
    store.undo();
    expect(shown).toEqual([undefined, '5 kg', '7 kg', '5 kg']);
    dispose();
  });

  it('does not count a wrong text in a field that is out of sight', () => {
    inStore((store) => {
      store.edit('sink.finish', 'own');
      store.refuse('sink.emissivity', { text: 'x', reason: 'no number', unit: '%' });
      expect(store.wrong()).toEqual(['sink.emissivity']);
      store.edit('sink.finish', 'bare');
      expect(store.wrong()).toEqual([]);
      store.edit('sink.finish', 'own');
      expect(store.wrong()).toEqual(['sink.emissivity']);
    });
  });

  it('counts the typing in one field as one step back, until the field is left', () => {
    inStore((store) => {
      store.edit('sink.width', 0.11);
      store.edit('sink.width', 0.12);
      store.commit();
      store.edit('sink.width', 0.13);
      store.undo();
      expect(store.design().sink.width).toBe(0.12);
      store.undo();
      expect(store.design().sink.width).toBe(startDesign.sink.width);
      expect(store.canUndo()).toBe(false);
      store.redo();
      store.redo();
      expect(store.design().sink.width).toBe(0.13);
      expect(store.canRedo()).toBe(false);
    });
  });

  it('counts no step for typing that ends where it began, and one for what is typed after it', () => {
    inStore((store) => {
      const { width } = startDesign.sink;
      store.edit('sink.width', 0.11);
      store.refuse('sink.width', { text: '', reason: 'nothing there', unit: 'mm' });
      store.edit('sink.width', width);
      expect(store.design()).toBe(startDesign);
      expect(store.canUndo()).toBe(false);
      store.edit('sink.width', 0.12);
      store.undo();
      expect(store.design().sink.width).toBe(width);
      expect(store.canUndo()).toBe(false);
    });
  });

  it('brings back a wrong text too, and the old design after another one was opened', () => {
    inStore((store) => {
      store.refuse('sink.width', { text: 'abc', reason: 'no number', unit: 'mm' });
      store.open({ id: 'two', design: { ...startDesign, name: 'Other' }, typed: {} });
      expect(store.wrong()).toEqual([]);
      store.undo();
      expect(store.design().name).toBe(startDesign.name);
      expect(store.typed('sink.width')?.text).toBe('abc');
    });
  });

  it('forgets the texts of efficiency points when the list of points changes', () => {
    inStore((store) => {
      store.refuse('converter.points.0.efficiency', { text: 'x', reason: 'no number', unit: '%' });
      store.refuse('sink.width', { text: 'y', reason: 'no number', unit: 'mm' });
      store.change((design) => design, 'converter.points.');
      expect(store.typed('converter.points.0.efficiency')).toBeUndefined();
      expect(store.typed('sink.width')?.text).toBe('y');
    });
  });

  it('steps back and forth like a plain list of states, whatever is done', () => {
    const moves = fc.array(
      fc.oneof(
        fc.record({
          kind: fc.constant('edit' as const),
          value: fc.double({ min: 0.01, max: 1, noNaN: true }),
        }),
        fc.constant({ kind: 'undo' as const, value: 0 }),
        fc.constant({ kind: 'redo' as const, value: 0 }),
      ),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(moves, (list) => {
        inStore((store) => {
          let states = [startDesign.sink.width];
          let at = 0;
          for (const move of list) {
            if (move.kind === 'edit') {
              store.edit('sink.width', move.value);
              store.commit();
              states = [...states.slice(0, at + 1), move.value];
              at += 1;
            } else if (move.kind === 'undo') {
              store.undo();
              at = Math.max(0, at - 1);
            } else {
              store.redo();
              at = Math.min(states.length - 1, at + 1);
            }
            expect(store.design().sink.width).toBe(states[at]);
          }
        });
      }),
    );
  });
});
