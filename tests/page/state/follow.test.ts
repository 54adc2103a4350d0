import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followAtRest, followInSight } from '../../../src/page/state/follow.ts';
import { atOncePace } from '../../../src/page/state/pace.ts';
import { sheetAround } from '../support.tsx';

function begin() {
  const [near, setNear] = createSignal(true);
  return createRoot((dispose) => {
    const sheet = sheetAround();
    const followed = followInSight(sheet, near, atOncePace);
    const power = (of: typeof sheet) => of.results.solved()?.amplifier.pep;
    return { sheet, followed, power, setNear, dispose };
  });
}

describe('a band of the sheet', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('has the newest figures at once while it is in sight', () => {
    const { sheet, followed, power, dispose } = begin();
    sheet.store.edit('amplifier.pep', 33);
    expect(power(followed)).toBe(33);
    expect(followed.results.solution()).toBe(sheet.results.solution());
    dispose();
  });

  it('keeps the older ones out of sight, and follows when they rest', () => {
    const { sheet, followed, power, setNear, dispose } = begin();
    const before = power(sheet);
    setNear(false);
    sheet.store.edit('amplifier.pep', 33);
    expect(power(sheet)).toBe(33);
    expect(power(followed)).toBe(before);
    vi.advanceTimersByTime(1000);
    expect(power(followed)).toBe(33);
    dispose();
  });

  it('shows at the next free moment what comes for the first time', () => {
    const works: (() => void)[] = [];
    const schedule = (work: () => void) => {
      works.push(work);
      return () => {};
    };
    const { sheet, followed, dispose } = createRoot((dispose) => {
      const sheet = sheetAround(undefined, { schedule });
      return { sheet, followed: followInSight(sheet, () => false, atOncePace), dispose };
    });
    expect(followed.results.curves()).toBeUndefined();
    while (works.length > 0) works.shift()?.();
    expect(followed.results.curves()).toBeDefined();
    expect(followed.results.curves()).toBe(sheet.results.curves());
    dispose();
  });

  it('says later, too, that its figures are older than an entry that cannot be read', () => {
    const { sheet, followed, setNear, dispose } = begin();
    const refused = { text: '20 kg', reason: 'a mass is no power', unit: 'W' };
    sheet.store.refuse('amplifier.pep', refused);
    expect(followed.older()).toEqual(['amplifier.pep']);
    setNear(false);
    sheet.store.edit('amplifier.pep', 33);
    expect(followed.older()).toEqual(['amplifier.pep']);
    vi.advanceTimersByTime(1000);
    expect(followed.older()).toEqual([]);
    dispose();
  });

  it('has parts that follow the sheet, not the band after it has followed', () => {
    const { sheet, followed, power, setNear, dispose } = begin();
    const part = createRoot(() => followInSight(followed, () => false, atOncePace));
    setNear(false);
    sheet.store.edit('amplifier.pep', 33);
    expect(power(part)).not.toBe(33);
    vi.advanceTimersByTime(1000);
    expect(power(followed)).toBe(33);
    expect(power(part)).toBe(33);
    dispose();
  });

  it('follows as soon as it comes into sight', () => {
    const { sheet, followed, power, setNear, dispose } = begin();
    setNear(false);
    sheet.store.edit('amplifier.pep', 33);
    setNear(true);
    expect(power(followed)).toBe(33);
    dispose();
  });
});

describe('a drawing that takes long', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  function draw() {
    return createRoot((dispose) => {
      const [near, setNear] = createSignal(true);
      const [newest, setNewest] = createSignal(1);
      return { drawn: followAtRest(newest, near, atOncePace), setNewest, setNear, dispose };
    });
  }

  it('is the newest in sight', () => {
    const { drawn, setNewest, dispose } = draw();
    setNewest(2);
    expect(drawn()).toBe(2);
    dispose();
  });

  it('waits out of sight until edits have come to rest', () => {
    const { drawn, setNewest, setNear, dispose } = draw();
    setNear(false);
    vi.runAllTimers();
    for (const edit of [2, 3, 4]) {
      setNewest(edit);
      vi.advanceTimersByTime(1000);
    }
    expect(drawn()).toBe(1);
    vi.advanceTimersByTime(1000);
    expect(drawn()).toBe(4);
    dispose();
  });

  it('is drawn as soon as it comes into sight', () => {
    const { drawn, setNewest, setNear, dispose } = draw();
    setNear(false);
    setNewest(2);
    setNear(true);
    expect(drawn()).toBe(2);
    dispose();
  });
});
