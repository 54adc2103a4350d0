import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { keep, readKept } from '../../../src/page/state/keeping.ts';
import { memoryStore, throwingStore } from '../support.tsx';

const typed = { 'sink.width': { text: '5 kg', reason: 'kg is a mass', unit: 'mm' } };

describe('what the browser keeps between visits', () => {
  it('brings back the design and the texts as typed, wrong ones included', () => {
    const store = memoryStore();
    expect(keep(store, { design: startDesign, typed })).toBe(true);
    const found = readKept(store);
    expect(found).toEqual({ kind: 'kept', kept: { design: startDesign, typed } });
  });

  it('finds nothing in an empty store', () => {
    expect(readKept(memoryStore()).kind).toBe('nothing');
  });

  it.each([
    ['cut off', '{"design": {"format'],
    ['not a design', '{"design": {"name": "x"}}'],
    ['a bare null', 'null'],
  ])('sets a damaged entry aside instead of throwing it away: %s', (_what, text) => {
    const store = memoryStore({ 'heat-and-rail.sheet': text });
    const found = readKept(store);
    expect(found.kind).toBe('damaged');
    expect(store.texts['heat-and-rail.damaged']).toBe(text);
  });

  it('drops texts that are none', () => {
    const store = memoryStore();
    store.setItem(
      'heat-and-rail.sheet',
      JSON.stringify({
        design: startDesign,
        typed: { 'sink.width': 5, 'sink.length': { text: '1', reason: 7 } },
      }),
    );
    const found = readKept(store);
    expect(found.kind === 'kept' && found.kept.typed).toEqual({
      'sink.length': { text: '1', reason: null, unit: '' },
    });
  });

  it('says so when the store is full, forbidden or missing, and never throws', () => {
    expect(keep(throwingStore, { design: startDesign, typed: {} })).toBe(false);
    expect(keep(undefined, { design: startDesign, typed: {} })).toBe(false);
    expect(readKept(throwingStore).kind).toBe('nothing');
    expect(readKept(undefined).kind).toBe('nothing');
  });
});
