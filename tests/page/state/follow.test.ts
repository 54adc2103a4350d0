import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followInSight } from '../../../src/page/state/follow.ts';
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

  it('follows as soon as it comes into sight', () => {
    const { sheet, followed, power, setNear, dispose } = begin();
    setNear(false);
    sheet.store.edit('amplifier.pep', 33);
    setNear(true);
    expect(power(followed)).toBe(33);
    dispose();
  });
});
