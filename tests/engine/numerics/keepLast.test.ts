import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepLast, sameContent } from '../../../src/engine/numerics/keepLast.ts';

const plain = fc.jsonValue({ maxDepth: 3 });

describe('same content', () => {
  it('is found in a copy', () => {
    fc.assert(
      fc.property(plain, (value) => {
        expect(sameContent(value, structuredClone(value))).toBe(true);
      }),
    );
  });

  it('agrees with deep equality for any two values', () => {
    const equal = (one: unknown, other: unknown) => {
      try {
        expect(one).toStrictEqual(other);
        return true;
      } catch {
        return false;
      }
    };
    fc.assert(
      fc.property(plain, plain, (a, b) => {
        expect(sameContent(a, b)).toBe(equal(a, b));
      }),
    );
  });

  it.each([
    ['a number and its word', 1, '1'],
    ['nothing and an empty record', null, {}],
    ['an empty list and an empty record', [], {}],
    ['a record with one more', { a: 1 }, { a: 1, b: 2 }],
    ['a record with one less', { a: 1, b: 2 }, { a: 1 }],
    ['a deep change', { a: [{ b: 1 }] }, { a: [{ b: 2 }] }],
  ])('is not found in %s', (_what, one, other) => {
    expect(sameContent(one, other)).toBe(false);
  });
});

describe('a function with its last answers kept', () => {
  const counted = (most: number) => {
    let calls = 0;
    const answer = keepLast(
      ({ value }: { value: { x: number }; other: number }) => {
        calls += 1;
        return { square: value.x ** 2 };
      },
      ({ value }) => value,
      most,
    );
    return { answer, calls: () => calls };
  };

  it('answers the same question from what it has kept, whatever else is said with it', () => {
    const { answer, calls } = counted(1);
    const first = answer({ value: { x: 3 }, other: 1 });
    expect(answer({ value: { x: 3 }, other: 2 })).toBe(first);
    expect(calls()).toBe(1);
  });

  it('works out another question, and an old one that it has dropped', () => {
    const { answer, calls } = counted(2);
    for (const x of [1, 2, 1, 3, 2]) expect(answer({ value: { x }, other: 0 })).toEqual({ square: x * x });
    expect(calls()).toBe(3);
    answer({ value: { x: 1 }, other: 0 });
    expect(calls()).toBe(4);
  });

  it('sees that a question was changed in place', () => {
    const { answer } = counted(1);
    const value = { x: 2 };
    expect(answer({ value, other: 0 }).square).toBe(4);
    value.x = 5;
    expect(answer({ value, other: 0 }).square).toBe(25);
  });
});
