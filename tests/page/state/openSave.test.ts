import { createRoot } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { writeDesign } from '../../../shared/design/file.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { createNotices, type Notices } from '../../../src/page/state/notices.ts';
import { fileNameOf, openFile, openText } from '../../../src/page/state/openSave.ts';
import { createSheetStore, type SheetStore } from '../../../src/page/state/store.ts';

function fresh(): { store: SheetStore; notices: Notices } {
  return createRoot(() => ({
    store: createSheetStore({ design: startDesign, typed: {} }),
    notices: createNotices(),
  }));
}

describe('opening a design file', () => {
  it('puts a good one on the sheet, one step back to the old one', () => {
    const { store, notices } = fresh();
    const other = { ...startDesign, name: 'Other' };
    expect(openText(writeDesign(other), 'other.json', store, notices)).toBe(true);
    expect(store.design()).toEqual(other);
    store.undo();
    expect(store.design()).toEqual(startDesign);
    expect(notices.list()).toEqual([]);
  });

  it('lists every fault with the label of its field and leaves the sheet as it is', () => {
    const { store, notices } = fresh();
    const broken = {
      ...startDesign,
      sink: { ...startDesign.sink, width: -1, finCount: 2.5 },
      amplifier: { ...startDesign.amplifier, colour: 'red' },
    };
    expect(openText(JSON.stringify(broken), 'broken.json', store, notices)).toBe(false);
    expect(store.design()).toEqual(startDesign);
    const notice = notices.list()[0]!;
    expect(notice.title).toContain('broken.json');
    const lines = notice.lines.join('\n');
    expect(lines).toContain('Width across the fins (sink.width)');
    expect(lines).toContain('Number of fins (sink.finCount)');
    expect(lines).toContain('amplifier.colour');
  });

  it.each([
    ['empty', ''],
    ['cut off', writeDesign(startDesign).slice(0, 200)],
    ['something else', '[1, 2, 3]'],
  ])('refuses a file that is %s, with a reason', (_what, text) => {
    const { store, notices } = fresh();
    expect(openText(text, 'x.json', store, notices)).toBe(false);
    expect(notices.list()[0]!.lines.length).toBeGreaterThan(0);
  });

  it('takes the notice away once a good file was opened', () => {
    const { store, notices } = fresh();
    openText('', 'x.json', store, notices);
    openText(writeDesign(startDesign), 'y.json', store, notices);
    expect(notices.list()).toEqual([]);
  });

  it('does not read a file that is far too large', async () => {
    const { store, notices } = fresh();
    const large = new File(['x'.repeat(1_000_001)], 'large.json');
    expect(await openFile(large, store, notices)).toBe(false);
    expect(notices.list()[0]!.lines[0]).toContain('larger than 1 MB');
  });
});

describe('the name of a saved file', () => {
  it.each([
    ['Field station: 60 W push-pull', 'field-station-60-w-push-pull.design.json'],
    ['Übung 3/4', 'übung-3-4.design.json'],
    ['***', 'design.design.json'],
    ['../../etc', 'etc.design.json'],
  ])('%s -> %s', (name, file) => {
    expect(fileNameOf({ ...startDesign, name })).toBe(file);
  });
});
