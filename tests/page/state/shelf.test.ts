import { createRoot } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { createShelf, newId, type Shelf } from '../../../src/page/state/shelf.ts';
import type { TextStore } from '../../../src/page/state/storage.ts';
import { memoryStore, throwingStore } from '../support.tsx';

const typed = { 'sink.width': { text: '5 kg', reason: 'kg is a mass', unit: 'mm' } };
const kept = { design: startDesign, typed: {} };
const keyOf = (id: string) => `heat-and-rail.design.${id}`;

function shelfOn(store: TextStore | undefined): Shelf {
  return createRoot(() => createShelf(store, () => 1234));
}

/** A store with room for so many characters. */
function smallStore(room: number): ReturnType<typeof memoryStore> {
  const store = memoryStore();
  const used = () => Object.values(store.texts).join('').length;
  return {
    ...store,
    setItem: (key, value) => {
      const before = store.texts[key]?.length ?? 0;
      if (used() - before + value.length > room) throw new DOMException('no room', 'QuotaExceededError');
      store.texts[key] = value;
    },
  };
}

describe('the designs kept in a browser', () => {
  it('come back with their texts as typed, wrong ones included, and the time of the last change', () => {
    const store = memoryStore();
    shelfOn(store).write('a', { design: startDesign, typed });
    const found = shelfOn(store).read('a');
    expect(found).toMatchObject({ kind: 'kept', entry: { design: startDesign, typed, changed: 1234 } });
  });

  it('are found one by one, and a long pasted log comes back whole', () => {
    const store = memoryStore({ 'heat-and-rail.preferences': '{}' });
    const shelf = shelfOn(store);
    const text = '1; 24.5\n'.repeat(200);
    shelf.write('a', kept);
    shelf.write('b', {
      design: startDesign,
      typed: { 'bench.0.readings': { text, reason: null, unit: '' } },
    });
    expect([...shelf.ids()].sort()).toEqual(['a', 'b']);
    const found = shelf.read('b');
    expect(found.kind === 'kept' && found.entry.typed['bench.0.readings']?.text).toBe(text);
    expect(shelf.read('c').kind).toBe('nothing');
  });

  it('change their stamp with every write, and two tabs never give the same', () => {
    const store = memoryStore();
    const one = shelfOn(store);
    const other = shelfOn(store);
    const stamps = [one.write('a', kept), other.write('a', kept), one.write('a', kept)];
    const again = memoryStore();
    stamps.push(other.write('a', kept), shelfOn(again).write('a', kept));
    expect(new Set(stamps).size).toBe(5);
    expect(one.stampOf('a')).toBe(stamps[3]);
  });

  it.each([
    ['cut off', '{"design": {"format'],
    ['not a design', '{"design": {"name": "x"}}'],
    ['a bare null', 'null'],
    ['of a newer sheet', JSON.stringify({ design: { ...startDesign, version: 99 } })],
  ])('are left as they are when they cannot be read: %s', (_what, text) => {
    const store = memoryStore({ [keyOf('a')]: text });
    const shelf = shelfOn(store);
    const found = shelf.read('a');
    expect(found.kind).toBe('damaged');
    expect(found.kind === 'damaged' && found.faults.length).toBeGreaterThan(0);
    expect(store.texts[keyOf('a')]).toBe(text);
  });

  it('lose texts that are none', () => {
    const texts = { 'sink.width': 5, 'sink.length': { text: '1', reason: 7 } };
    const store = memoryStore({ [keyOf('a')]: JSON.stringify({ design: startDesign, typed: texts }) });
    const found = shelfOn(store).read('a');
    expect(found.kind === 'kept' && found.entry.typed).toEqual({
      'sink.length': { text: '1', reason: null, unit: '' },
    });
  });

  it('are taken away and put back as they were', () => {
    const store = memoryStore();
    const shelf = shelfOn(store);
    shelf.write('a', { design: startDesign, typed });
    const text = shelf.text('a')!;
    shelf.remove('a');
    expect(shelf.ids()).toEqual([]);
    shelf.restore('a', text);
    expect(store.texts[keyOf('a')]).toBe(text);
  });
});

describe('a browser that does not keep', () => {
  it('leaves the designs in memory and says whether it is full or blocked', () => {
    for (const [store, trouble] of [
      [throwingStore, 'full'],
      [undefined, 'blocked'],
    ] as const) {
      const shelf = shelfOn(store);
      expect(shelf.trouble()).toBeNull();
      shelf.write('a', { design: startDesign, typed });
      expect(shelf.trouble()).toBe(trouble);
      expect(shelf.unkept('a')).toBe(true);
      expect(shelf.ids()).toEqual(['a']);
      expect(shelf.read('a')).toMatchObject({ kind: 'kept', entry: { typed } });
    }
  });

  it('keeps what was left over as soon as there is room', () => {
    const size = JSON.stringify(startDesign).length;
    const store = smallStore(1.5 * size);
    const shelf = shelfOn(store);
    shelf.write('a', kept);
    shelf.write('b', kept);
    expect([shelf.trouble(), shelf.unkept('a'), shelf.unkept('b')]).toEqual(['full', false, true]);
    shelf.remove('a');
    expect([shelf.trouble(), shelf.unkept('b')]).toEqual([null, false]);
    expect(store.texts[keyOf('b')]).toContain(startDesign.name);
  });

  it('shows the newer state from memory where an older one is stored', () => {
    const size = JSON.stringify(startDesign).length;
    const shelf = shelfOn(smallStore(size + 200));
    shelf.write('a', kept);
    const design = { ...startDesign, name: 'x'.repeat(119) };
    shelf.write('a', { design, typed: { ...typed, b: { text: 'y'.repeat(500), reason: null, unit: '' } } });
    expect(shelf.trouble()).toBe('full');
    expect(shelf.read('a')).toMatchObject({ kind: 'kept', entry: { design } });
  });
});

it('names of entries differ', () => {
  expect(new Set(Array.from({ length: 200 }, newId)).size).toBe(200);
});
