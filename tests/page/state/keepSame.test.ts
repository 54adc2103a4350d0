import { describe, expect, it } from 'vitest';
import { keepSame } from '../../../src/page/state/keepSame.ts';

describe('what is kept of the answer before', () => {
  const before = { values: { a: 1, b: 2 }, rows: [{ size: 'AWG 14' }, { size: 'AWG 12' }], note: null };

  it('is all of it where nothing has changed', () => {
    expect(keepSame(before, structuredClone(before))).toBe(before);
  });

  it('is every part that has not changed, and the answer still says what the newer one says', () => {
    const now = structuredClone(before);
    now.rows[1]!.size = 'AWG 10';
    const kept = keepSame(before, now);
    expect(kept).toEqual(now);
    expect(kept).not.toBe(before);
    expect(kept.values).toBe(before.values);
    expect(kept.rows).not.toBe(before.rows);
    expect(kept.rows[0]).toBe(before.rows[0]);
  });

  it.each([
    ['a list that grew', [1, 2], [1, 2, 3]],
    ['a list that shrank', [1, 2, 3], [1, 2]],
    ['a key that came', { a: 1 }, { a: 1, b: undefined }],
    ['a key in the place of another', { a: 1, b: undefined }, { a: 1, c: undefined }],
    ['nothing where something was', { a: { b: 1 } }, { a: null }],
    ['a list where an object was', { a: {} }, { a: [] }],
    ['something where nothing was', undefined, { a: 1 }],
  ])('is never %s', (_case, first, now) => {
    const kept = keepSame(first, now);
    expect(kept).toStrictEqual(now);
    expect(kept).not.toBe(first);
  });
});
