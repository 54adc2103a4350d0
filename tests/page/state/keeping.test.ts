import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { memoryStore, throwingStore } from '../support.tsx';
import { openTab, type Tab, tellOthers } from './twoTabs.ts';

const design: Design = { ...startDesign, name: 'Mine' };
let tabs: Tab[] = [];

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  for (const tab of tabs) tab.dispose();
  tabs = [];
  vi.useRealTimers();
});

function tab(store: ReturnType<typeof memoryStore> | null = memoryStore()): Tab {
  const opened = openTab(store ?? undefined, 'a', design);
  tabs.push(opened);
  return opened;
}

const rest = () => vi.advanceTimersByTime(400);
const designIn = ({ shelf }: Tab, id: string) => {
  const found = shelf.read(id);
  return found.kind === 'kept' ? found.entry.design : undefined;
};
const setPower = ({ sheet }: Tab, pep: number) => sheet.edit('amplifier.pep', pep);
const press = ({ notices }: Tab, label: string) => {
  const action = notices
    .list()
    .flatMap((notice) => notice.actions ?? [])
    .find((each) => each.label === label);
  if (action === undefined) throw new Error(`nothing offers “${label}”`);
  action.run();
};
const titles = ({ notices }: Tab) => notices.list().map((notice) => notice.title);

describe('keeping the sheet', () => {
  it('writes when typing rests, and at once when asked or when the page is left', () => {
    const mine = tab();
    setPower(mine, 21);
    expect(designIn(mine, 'a')).toBeUndefined();
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(21);
    setPower(mine, 22);
    mine.designs.keepNow();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(22);
    setPower(mine, 23);
    window.dispatchEvent(new Event('pagehide'));
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(23);
  });

  it('writes nothing while nothing is changed, and remembers which design is shown', () => {
    const store = memoryStore();
    const mine = tab(store);
    rest();
    expect(mine.shelf.ids()).toEqual([]);
    expect(mine.memory.texts['heat-and-rail.open']).toBe('a');
  });

  it('keeps an edit that was made just before another design was opened', () => {
    const mine = tab();
    setPower(mine, 21);
    mine.designs.bringIn([{ ...startDesign, name: 'Other' }]);
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(21);
    mine.sheet.undo();
    rest();
    expect(mine.sheet.snapshot().id).toBe('a');
    expect(mine.sheet.design().amplifier.pep).toBe(21);
    expect(mine.memory.texts['heat-and-rail.open']).toBe('a');
  });

  it('remembers another design though nothing was edited before it was opened', () => {
    const mine = tab();
    mine.designs.bringIn([{ ...startDesign, name: 'Other' }]);
    rest();
    expect(mine.sheet.design().name).toBe('Other');
    expect(mine.memory.texts['heat-and-rail.open']).toBe(mine.sheet.snapshot().id);
  });

  it('says in words that the browser is full or blocked, works on in memory, and takes it back', () => {
    const mine = tab(null);
    setPower(mine, 21);
    rest();
    expect(titles(mine)[0]).toMatch(/keeps nothing/);
    const full = openTab(throwingStore, 'a', design);
    tabs.push(full);
    setPower(full, 21);
    rest();
    expect(titles(full)[0]).toMatch(/full/);
    full.designs.bringIn([examples[1]!.design]);
    expect(full.sheet.design().name).toBe(examples[1]!.design.name);
    full.designs.open('a');
    expect(full.sheet.design().amplifier.pep).toBe(21);
  });

  it('asks before the page is closed only while something is not kept', () => {
    const leave = () => {
      const event = new Event('beforeunload', { cancelable: true });
      window.dispatchEvent(event);
      return event.defaultPrevented;
    };
    const mine = tab();
    setPower(mine, 21);
    rest();
    expect(leave()).toBe(false);
    const blocked = tab(null);
    setPower(blocked, 21);
    rest();
    expect(leave()).toBe(true);
  });
});

describe('a design open in two tabs', () => {
  function pair(): { mine: Tab; theirs: Tab } {
    const store = memoryStore();
    const mine = tab(store);
    setPower(mine, 20);
    rest();
    const theirs = tab(store);
    setPower(theirs, 30);
    rest();
    return { mine, theirs };
  }

  it('is not written over: the other tab is asked first', () => {
    const { mine, theirs } = pair();
    setPower(mine, 40);
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(30);
    expect(titles(mine)[0]).toContain('“Mine” was changed in another tab');
    expect(titles(theirs)).toEqual([]);
    expect(mine.sheet.design().amplifier.pep).toBe(40);
  });

  it('is asked about as soon as the other tab writes', () => {
    const { mine } = pair();
    expect(titles(mine)).toEqual([]);
    tellOthers('a');
    expect(titles(mine)[0]).toContain('changed in another tab');
    expect(mine.shelf.ids()).toEqual(['a']);
  });

  it('keeps what is typed meanwhile as a copy, so that even a crash loses nothing', () => {
    const { mine } = pair();
    tellOthers('a');
    setPower(mine, 41);
    rest();
    const copy = mine.shelf.ids().find((id) => id !== 'a')!;
    expect(designIn(mine, copy)).toMatchObject({ name: 'Mine (2)', amplifier: { pep: 41 } });
    expect(mine.memory.texts['heat-and-rail.open']).toBe(copy);
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(30);
  });

  it('take theirs: the sheet shows it, nothing is written, undo brings mine back', () => {
    const { mine } = pair();
    setPower(mine, 40);
    rest();
    press(mine, 'Take theirs');
    rest();
    expect(mine.sheet.design().amplifier.pep).toBe(30);
    expect(mine.shelf.ids()).toEqual(['a']);
    expect(titles(mine)).toEqual([]);
    const stamp = mine.shelf.stampOf('a');
    rest();
    expect(mine.shelf.stampOf('a')).toBe(stamp);
    mine.sheet.undo();
    expect(mine.sheet.design().amplifier.pep).toBe(40);
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(40);
  });

  it('keep mine: it is written, and now the other tab is asked', () => {
    const { mine, theirs } = pair();
    setPower(mine, 40);
    rest();
    press(mine, 'Keep mine');
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(40);
    expect(mine.shelf.ids()).toEqual(['a']);
    tellOthers('a');
    expect(titles(mine)).toEqual([]);
    expect(titles(theirs)[0]).toContain('changed in another tab');
  });

  it('keep both: mine goes on under a name of its own', () => {
    const { mine } = pair();
    setPower(mine, 40);
    rest();
    press(mine, 'Keep both');
    expect(mine.sheet.design()).toMatchObject({ name: 'Mine (2)', amplifier: { pep: 40 } });
    expect(designIn(mine, 'a')).toMatchObject({ name: 'Mine', amplifier: { pep: 30 } });
    setPower(mine, 44);
    rest();
    expect(designIn(mine, mine.sheet.snapshot().id)?.amplifier.pep).toBe(44);
    expect(mine.shelf.ids()).toHaveLength(2);
  });

  it('asks nothing where both say the same', () => {
    const { mine, theirs } = pair();
    setPower(theirs, 20);
    rest();
    tellOthers('a');
    expect(titles(mine)).toEqual([]);
    setPower(mine, 21);
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(21);
  });

  it('notices a change that came while the tab slept', () => {
    const { mine } = pair();
    document.dispatchEvent(new Event('visibilitychange'));
    expect(titles(mine)[0]).toContain('changed in another tab');
  });

  it('says that it was deleted there, and keeps it again with the next change', () => {
    const { mine, theirs } = pair();
    tellOthers('a');
    press(mine, 'Take theirs');
    theirs.designs.remove('a', startDesign);
    tellOthers('a');
    expect(titles(mine)[0]).toContain('deleted in another tab');
    setPower(mine, 50);
    rest();
    expect(designIn(mine, 'a')?.amplifier.pep).toBe(50);
  });

  it('is settled by opening another design; what was typed stays as the copy', () => {
    const { mine } = pair();
    setPower(mine, 40);
    rest();
    mine.designs.bringIn([{ ...startDesign, name: 'Other' }]);
    expect(titles(mine)).toEqual([]);
    expect(mine.designs.list().map(({ found }) => found.kind === 'kept' && found.entry.design.name)).toEqual(
      expect.arrayContaining(['Mine', 'Mine (2)', 'Other']),
    );
  });
});
