import { createRoot } from 'solid-js';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { createEditing } from '../../../src/page/state/editing.ts';
import { sheetAround } from '../support.tsx';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

function begin() {
  return createRoot((dispose) => {
    const sheet = sheetAround();
    return { sheet, editing: createEditing(sheet), dispose };
  });
}

it('is said from the moment somebody comes to a field until some seconds after the last entry', () => {
  const { sheet, editing, dispose } = begin();
  expect(editing()).toBe(false);
  sheet.setFocused('amplifier.pep');
  expect(editing()).toBe(true);
  vi.advanceTimersByTime(4000);
  sheet.store.edit('amplifier.pep', 33);
  vi.advanceTimersByTime(4000);
  expect(editing()).toBe(true);
  vi.advanceTimersByTime(2000);
  expect(editing()).toBe(false);
  dispose();
});
