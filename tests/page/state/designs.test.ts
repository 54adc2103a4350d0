import { afterEach, describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import type { Verdict } from '../../../shared/solution.ts';
import { nameOfCopy, verdictWords } from '../../../src/page/state/shelfWords.ts';
import { memoryStore } from '../support.tsx';
import { openTab, type Tab } from './twoTabs.ts';

const named = (name: string) => ({ ...startDesign, name });
let tab: Tab;

afterEach(() => tab.dispose());

function begin(): Tab {
  tab = openTab(memoryStore(), 'a', named('First'));
  tab.sheet.edit('amplifier.pep', 21);
  tab.designs.keepNow();
  return tab;
}

const names = () =>
  tab.designs.list().map(({ found }) => (found.kind === 'kept' ? found.entry.design.name : 'unreadable'));

describe('several designs', () => {
  it('stand beside each other: bringing one in writes over nothing', () => {
    const { designs, sheet } = begin();
    designs.bringIn([named('Second'), named('Third')]);
    expect(sheet.design().name).toBe('Second');
    expect(names()).toEqual(expect.arrayContaining(['First', 'Second', 'Third']));
    designs.open('a');
    expect(sheet.design()).toMatchObject({ name: 'First', amplifier: { pep: 21 } });
  });

  it('are not doubled by opening the same again', () => {
    const { designs } = begin();
    designs.bringIn([named('Second')]);
    const id = designs.openId();
    designs.open('a');
    designs.bringIn([named('Second')]);
    expect(designs.openId()).toBe(id);
    expect(names()).toHaveLength(2);
  });

  it('get a name of their own beside one of the same name, once', () => {
    const { designs, sheet } = begin();
    const saved = named('First');
    designs.bringIn([saved]);
    expect(sheet.design()).toEqual({ ...saved, name: 'First (2)' });
    const id = designs.openId();
    designs.bringIn([{ ...saved, amplifier: { ...saved.amplifier, pep: 22 } }, saved]);
    expect(names().sort()).toEqual(['First', 'First (2)', 'First (3)']);
    designs.bringIn([saved]);
    expect(designs.openId()).toBe(id);
    designs.open('a');
    designs.bringIn([{ ...sheet.design() }]);
    expect(designs.openId()).toBe('a');
  });

  it('an example that was only looked at leaves nothing behind, a changed one stays', () => {
    const { designs, sheet } = begin();
    designs.bringIn([examples[1]!.design]);
    expect(names()).toContain(examples[1]!.title);
    designs.bringIn([examples[2]!.design]);
    expect(names()).not.toContain(examples[1]!.title);
    sheet.edit('amplifier.pep', 33);
    designs.open('a');
    expect(names()).toContain(examples[2]!.title);
  });

  it('are duplicated under a free name, texts included', () => {
    const { designs, sheet } = begin();
    sheet.refuse('sink.width', { text: 'abc', reason: 'no number', unit: 'mm' });
    designs.duplicate('a');
    expect(sheet.design().name).toBe('First (2)');
    expect(sheet.typed('sink.width')?.text).toBe('abc');
    designs.duplicate('a');
    expect(sheet.design().name).toBe('First (3)');
    expect(names().sort()).toEqual(['First', 'First (2)', 'First (3)']);
  });

  it('are renamed: the open one as an edit that can be undone, another one where it is kept', () => {
    const { designs, sheet } = begin();
    designs.bringIn([named('Second')]);
    designs.rename('a', 'Renamed');
    expect(names()).toContain('Renamed');
    designs.rename(designs.openId(), 'Open one');
    expect(sheet.design().name).toBe('Open one');
    sheet.undo();
    expect(sheet.design().name).toBe('Second');
    designs.open('a');
    expect(sheet.design()).toMatchObject({ name: 'Renamed', amplifier: { pep: 21 } });
  });

  it('are deleted and brought back', () => {
    const { designs, sheet } = begin();
    designs.bringIn([named('Second')]);
    const gone = designs.remove('a', startDesign)!;
    expect(gone.name).toBe('First');
    expect(names()).toEqual(['Second']);
    designs.restore(gone);
    expect(names()).toEqual(expect.arrayContaining(['First', 'Second']));
    expect(sheet.design().name).toBe('Second');
  });

  it('the open one is deleted: the latest other takes its place; both undo and bringing back return it', () => {
    const { designs, sheet } = begin();
    designs.bringIn([named('Second')]);
    sheet.edit('amplifier.pep', 34);
    const id = designs.openId();
    const gone = designs.remove(id, startDesign)!;
    expect(sheet.design().name).toBe('First');
    expect(names()).toEqual(['First']);
    sheet.undo();
    designs.keepNow();
    expect(sheet.design()).toMatchObject({ name: 'Second', amplifier: { pep: 34 } });
    expect(names()).toEqual(expect.arrayContaining(['First', 'Second']));
    designs.remove(id, startDesign);
    designs.restore(gone);
    expect(sheet.design()).toMatchObject({ name: 'Second', amplifier: { pep: 34 } });
  });

  it('the last one is deleted: a beginning takes its place', () => {
    const { designs, sheet } = begin();
    const gone = designs.remove('a', examples[3]!.design)!;
    expect(sheet.design().name).toBe(examples[3]!.title);
    designs.restore(gone);
    expect(sheet.design()).toMatchObject({ name: 'First', amplifier: { pep: 21 } });
  });

  it('lists what cannot be read, too', () => {
    begin();
    tab.shelf.restore('b', '{"design":{"name":"x"}}');
    const row = tab.designs.list().find(({ id }) => id === 'b')!;
    expect(row.found.kind).toBe('damaged');
    tab.designs.open('b');
    expect(tab.designs.openId()).toBe('a');
    expect(tab.designs.remove('b', startDesign)?.text).toContain('"x"');
  });
});

describe('words', () => {
  it.each([
    ['Field', [], 'Field (2)'],
    ['Field', ['Field (2)'], 'Field (3)'],
    ['Field (2)', ['Field (2)'], 'Field (3)'],
  ])('a copy of %s beside %j is %s', (name, taken, copy) => {
    tab = openTab(undefined, 'a', startDesign);
    expect(nameOfCopy(name, taken)).toBe(copy);
  });

  it('say what is over and what is close', () => {
    tab = openTab(undefined, 'a', startDesign);
    const line = (name: string, state: Verdict['state']) =>
      ({ key: 'ssb', name, state, headline: '', sentence: '' }) as const;
    expect(verdictWords([line('SSB', 'fine'), line('CW', 'close'), line('12 V input', 'over')])).toBe(
      'over: 12 V input; close: CW',
    );
    expect(verdictWords([line('SSB', 'fine')])).toBe('every line fine');
  });
});
