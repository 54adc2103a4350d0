import { describe, expect, it } from 'vitest';
import { writeDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { createNotices } from '../../../src/page/state/notices.ts';
import { openFiles } from '../../../src/page/state/openSave.ts';
import { fileNameOf } from '../../../src/page/state/saveFile.ts';

/** Opens texts as files; gives what was brought in and what was said. */
async function open(...texts: readonly (readonly [string, string])[]) {
  const notices = createNotices();
  const brought: Design[] = [];
  const designs = { bringIn: (all: readonly Design[]) => void brought.push(...all) };
  await openFiles(
    texts.map(([name, text]) => new File([text], name)),
    designs,
    notices,
  );
  return { brought, notices: notices.list(), again: { designs, notices } };
}

const other = { ...startDesign, name: 'Other' };

describe('opening design files', () => {
  it('brings a good one in without a word', async () => {
    const { brought, notices } = await open(['other.json', writeDesign(other)]);
    expect(brought).toEqual([other]);
    expect(notices).toEqual([]);
  });

  it('lists every fault with the label of its field and brings nothing in', async () => {
    const broken = {
      ...startDesign,
      sink: { ...startDesign.sink, width: -1, finCount: 2.5 },
      amplifier: { ...startDesign.amplifier, colour: 'red' },
    };
    const { brought, notices } = await open(['broken.json', JSON.stringify(broken)]);
    expect(brought).toEqual([]);
    expect(notices[0]!.title).toContain('broken.json');
    const lines = notices[0]!.lines.join('\n');
    expect(lines).toContain('Width across the fins (sink.width)');
    expect(lines).toContain('sink.finCount');
    expect(lines).toContain('amplifier.colour');
  });

  it.each([
    ['empty', ''],
    ['cut off', writeDesign(startDesign).slice(0, 200)],
    ['something else', '[1, 2, 3]'],
  ])('refuses a file that is %s, with a reason', async (_what, text) => {
    const { brought, notices } = await open(['x.json', text]);
    expect(brought).toEqual([]);
    expect(notices[0]!.lines.length).toBeGreaterThan(0);
  });

  it('takes several at once: the good ones come in, each bad one is told of', async () => {
    const { brought, notices } = await open(
      ['a.json', writeDesign(other)],
      ['bad.json', '{'],
      ['b.json', writeDesign({ ...startDesign, name: 'Third' })],
      ['worse.json', ''],
    );
    expect(brought.map((design) => design.name)).toEqual(['Other', 'Third']);
    expect(notices.map((notice) => [notice.news ?? false, notice.title])).toEqual([
      [true, expect.stringContaining('2 designs were added')],
      [false, expect.stringContaining('bad.json')],
      [false, expect.stringContaining('worse.json')],
    ]);
  });

  it('takes the notice away once a good file was opened', async () => {
    const { notices, again } = await open(['x.json', '']);
    expect(notices).toHaveLength(1);
    await openFiles([new File([writeDesign(other)], 'y.json')], again.designs, again.notices);
    expect(again.notices.list()).toEqual([]);
  });

  it('does not read a file that is far too large', async () => {
    const { notices } = await open(['large.json', 'x'.repeat(1_000_001)]);
    expect(notices[0]!.lines[0]).toContain('larger than 1 MB');
  });
});

it.each([
  ['Field station: 60 W push-pull', 'field-station-60-w-push-pull.design.json'],
  ['Übung 3/4', 'übung-3-4.design.json'],
  ['***', 'design.design.json'],
  ['../../etc', 'etc.design.json'],
])('a saved file is named after its design: %s -> %s', (name, file) => {
  expect(fileNameOf({ ...startDesign, name })).toBe(file);
});
