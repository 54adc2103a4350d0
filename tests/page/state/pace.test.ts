import { describe, expect, it } from 'vitest';
import { createPace } from '../../../src/page/state/pace.ts';

/** Idle moments that come when the test says so, and last as long as it says. */
function moments() {
  const asked: ((msLeft: () => number) => void)[] = [];
  return {
    whenFree: (work: (msLeft: () => number) => void) => void asked.push(work),
    come: (ms: number) => asked.shift()?.(() => ms),
    wanted: () => asked.length,
  };
}

describe('work that can wait', () => {
  it('is done in order, one piece a short moment', () => {
    const { whenFree, come } = moments();
    const pace = createPace(whenFree);
    const done: number[] = [];
    for (const piece of [1, 2, 3]) pace.later(() => done.push(piece));
    expect(pace.idle()).toBe(false);
    come(0);
    expect(done).toEqual([1]);
    come(0);
    come(0);
    expect(done).toEqual([1, 2, 3]);
    expect(pace.idle()).toBe(true);
  });

  it('is unseen until all else is done, and the page counts as idle before it', () => {
    const { whenFree, come } = moments();
    const pace = createPace(whenFree);
    const done: string[] = [];
    pace.last(() => done.push('folded'));
    pace.later(() => done.push('station'));
    come(0);
    expect(done).toEqual(['station']);
    expect(pace.idle()).toBe(true);
    come(0);
    expect(done).toEqual(['station', 'folded']);
  });

  it('goes on within a long moment', () => {
    const { whenFree, come, wanted } = moments();
    const pace = createPace(whenFree);
    const done: number[] = [];
    for (const piece of [1, 2, 3]) pace.later(() => done.push(piece));
    come(50);
    expect(done).toEqual([1, 2, 3]);
    expect(wanted()).toBe(0);
  });

  it('waits until what stands has been painted, and so does what is unseen', () => {
    const { whenFree, come, wanted } = moments();
    let painted = () => {};
    const pace = createPace(whenFree, (work) => {
      painted = work;
    });
    const done: string[] = [];
    pace.afterPaint(() => done.push('station'));
    pace.last(() => done.push('folded'));
    come(50);
    expect(done).toEqual([]);
    expect(wanted()).toBe(0);
    expect(pace.idle()).toBe(false);
    painted();
    expect(done).toEqual([]);
    come(50);
    expect(done).toEqual(['station', 'folded']);
    expect(pace.idle()).toBe(true);
  });

  it('does not wait for a paint on paper, nor is it done twice', () => {
    const { whenFree, come } = moments();
    let painted = () => {};
    const pace = createPace(whenFree, (work) => {
      painted = work;
    });
    const done: string[] = [];
    pace.afterPaint(() => done.push('station'));
    pace.flush();
    expect(done).toEqual(['station']);
    painted();
    come(50);
    expect(done).toEqual(['station']);
  });

  it('is done to the last piece when paper needs it, what it brings included', () => {
    const { whenFree } = moments();
    const pace = createPace(whenFree);
    const done: number[] = [];
    pace.later(() => pace.later(() => done.push(2)));
    pace.flush();
    expect(done).toEqual([2]);
    expect(pace.idle()).toBe(true);
  });

  it('has its turn although a piece before it fails', () => {
    const { whenFree, come } = moments();
    const pace = createPace(whenFree);
    const done: number[] = [];
    pace.later(() => {
      throw new Error('a piece that fails');
    });
    pace.later(() => done.push(2));
    expect(() => come(0)).toThrow('a piece that fails');
    come(0);
    expect(done).toEqual([2]);
  });
});
