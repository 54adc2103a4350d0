import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Band } from '../../../shared/band.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { afterFrame, createResults, type Results, type Schedule } from '../../../src/page/state/results.ts';
import { atOnce, figuresOnly } from '../support.tsx';

/** A band of which only the number of samples is looked at. */
const bandOf = (samples: number) => ({ samples }) as Band;

function begin() {
  const asked: { design: Design; tell: (share: number) => void; answer: (band: Outcome<Band>) => void }[] =
    [];
  const stopped: number[] = [];
  const [design, setDesign] = createSignal(startDesign);
  let results!: Results;
  const dispose = createRoot((done) => {
    results = createResults(
      design,
      {
        ...figuresOnly,
        band: (current, tell) =>
          new Promise((answer) => {
            asked.push({ design: current, tell, answer });
          }),
        stopBand: () => void stopped.push(asked.length),
      },
      atOnce,
    );
    return done;
  });
  return { asked, stopped, design, setDesign, results, dispose };
}

const settle = () => vi.advanceTimersByTimeAsync(1000);

describe('the band behind the figures', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('is asked for when typing rests, tells how far it is, and then stands', async () => {
    const { asked, results, dispose } = begin();
    expect(results.solution()).toBeDefined();
    expect(asked).toHaveLength(0);
    await settle();
    expect(asked.map(({ design }) => design)).toEqual([startDesign]);
    asked[0]!.tell(0.5);
    expect(results.bandProgress()).toBe(0.5);
    expect(results.band()).toBeUndefined();
    asked[0]!.answer(success(bandOf(1)));
    await settle();
    expect(results.band()?.samples).toBe(1);
    expect(results.bandProgress()).toBeNull();
    dispose();
  });

  it('is stopped by an edit; the late answer to the older design is thrown away and figures are nominal again', async () => {
    const { asked, stopped, setDesign, results, dispose } = begin();
    await settle();
    setDesign({ ...startDesign, name: 'newer' });
    expect(stopped).toEqual([1]);
    expect(results.bandProgress()).toBeNull();
    await settle();
    asked[0]!.answer(success(bandOf(1)));
    await settle();
    expect(results.band()).toBeUndefined();
    asked[1]!.answer(success(bandOf(2)));
    await settle();
    expect(results.band()?.samples).toBe(2);
    setDesign({ ...startDesign, name: 'newest' });
    expect(results.band()).toBeUndefined();
    dispose();
  });

  it('leaves the figures nominal where a design has none', async () => {
    const { asked, results, dispose } = begin();
    await settle();
    asked[0]!.answer(failure('finsDoNotFit', 'The fins do not fit.'));
    await settle();
    expect(results.band()).toBeUndefined();
    expect(results.bandProgress()).toBeNull();
    expect(results.fault()).toBeNull();
    dispose();
  });
});

describe('the curves behind the figures', () => {
  it('are begun at once for the first time, then only when the figures have been painted', () => {
    const painted: (() => void)[] = [];
    const whenPainted: Schedule = (work) => {
      painted.push(work);
      return () => {};
    };
    const rated: Design[] = [];
    const ratingCurve = (design: Design) => {
      rated.push(design);
      return figuresOnly.ratingCurve(design);
    };
    const [design, setDesign] = createSignal(startDesign);
    const { results, dispose } = createRoot((done) => ({
      results: createResults(design, { ...figuresOnly, ratingCurve }, atOnce, whenPainted),
      dispose: done,
    }));
    expect(rated).toEqual([startDesign]);
    const hotter = { ...startDesign, surroundings: { ...startDesign.surroundings, ambient: 310 } };
    setDesign(hotter);
    expect(results.solved()).toBe(hotter);
    expect(rated).toHaveLength(1);
    painted[0]?.();
    expect(rated[1]).toBe(hotter);
    dispose();
  });
});

describe('the moment after a frame', () => {
  /** Frames and free moments that come when the test says so. */
  function browser() {
    const frames = new Map<number, () => void>();
    const free = new Map<number, () => void>();
    vi.stubGlobal('requestAnimationFrame', (work: () => void) => frames.set(1, work) && 1);
    vi.stubGlobal('cancelAnimationFrame', (id: number) => frames.delete(id));
    vi.stubGlobal('requestIdleCallback', (work: () => void) => free.set(2, work) && 2);
    vi.stubGlobal('cancelIdleCallback', (id: number) => free.delete(id));
    return { paint: () => frames.get(1)?.(), rest: () => free.get(2)?.() };
  }

  beforeEach(() => vi.useFakeTimers());
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('comes once, when the page is free after the paint', () => {
    const { paint, rest } = browser();
    const work = vi.fn();
    afterFrame(work);
    rest();
    expect(work).not.toHaveBeenCalled();
    paint();
    expect(work).not.toHaveBeenCalled();
    rest();
    vi.runAllTimers();
    expect(work).toHaveBeenCalledTimes(1);
  });

  it('comes after a while where nothing is painted', () => {
    browser();
    const work = vi.fn();
    afterFrame(work);
    vi.advanceTimersByTime(200);
    expect(work).toHaveBeenCalledTimes(1);
  });

  it.each([false, true])('does not come once it is taken back (painted: %s)', (isPainted) => {
    const { paint, rest } = browser();
    const work = vi.fn();
    const takeBack = afterFrame(work);
    if (isPainted) paint();
    takeBack();
    paint();
    rest();
    vi.runAllTimers();
    expect(work).not.toHaveBeenCalled();
  });
});
