import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { readLink, writeLink } from '../../shared/design/link.ts';
import { startDesign } from '../../shared/design/start.ts';
import { anyDesign } from '../engine/couple/designArbitrary.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** What a link of some chat programs may be at most, characters. */
const shortEnough = 2000;

describe('a design as a link', () => {
  it.each(examples.map((each) => [each.key, each.design] as const))(
    '%s comes back as it was, from a link that no program cuts',
    async (_key, design) => {
      const link = await writeLink(design);
      expect(link).toMatch(/^#d1\.[0-9a-z]+\.[\w-]+$/);
      expect(link.length).toBeLessThan(shortEnough);
      expect(await readLink(link)).toEqual({ ok: true, design });
      expect(await readLink(link.slice(1))).toEqual({ ok: true, design });
    },
  );

  it('comes back whatever the design is', async () => {
    await fc.assert(
      fc.asyncProperty(anyDesign, async (design) => {
        const plain = JSON.parse(JSON.stringify(design));
        expect(await readLink(await writeLink(design))).toEqual({ ok: true, design: plain });
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it('works where the browser cannot deflate, and reads such a link everywhere', async () => {
    vi.stubGlobal('CompressionStream', undefined);
    const link = await writeLink(examples[1]!.design);
    vi.unstubAllGlobals();
    expect(link).toMatch(/^#j1\./);
    expect(await readLink(link)).toEqual({ ok: true, design: examples[1]!.design });
  });

  it('survives the full stop or bracket that a chat program takes for a part of it', async () => {
    const link = await writeLink(examples[2]!.design);
    for (const end of ['.', ').', '>', ',']) expect((await readLink(link + end)).ok).toBe(true);
  });
});

describe('a link that is not whole', () => {
  const words = async (link: string) => {
    const read = await readLink(link);
    return read.ok ? 'opened' : read.faults.map((fault) => fault.message).join();
  };

  it('is refused wherever it is cut', async () => {
    const link = await writeLink(examples[1]!.design);
    for (let length = 1; length < link.length; length += 37) {
      expect(await words(link.slice(0, length)), String(length)).toMatch(/damaged/);
    }
  });

  it('is refused whichever letter is changed', async () => {
    const link = await writeLink(examples[1]!.design);
    for (let at = 4; at < link.length; at += 41) {
      if (link[at] === '.') continue;
      const other = link[at] === 'A' ? 'B' : 'A';
      expect(await words(link.slice(0, at) + other + link.slice(at + 1)), String(at)).toMatch(/damaged/);
    }
  });

  it('of a newer sheet says so; anything else is no link', async () => {
    expect(await words('#d99.abc.AAAA')).toMatch(/newer sheet \(version 99\)/);
    for (const hash of ['', '#source', '#field-sink-width', '#d1', '#d1.x', '#x1.a.b', '#d1.é.a']) {
      expect(await words(hash)).toMatch(/damaged or not complete/);
    }
  });

  it('that would unpack to something enormous is refused', async () => {
    const packed = new Blob(['0'.repeat(5_000_000)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const data = Buffer.from(await new Response(packed).arrayBuffer()).toString('base64url');
    expect(await words(`#d1.abc.${data}`)).toMatch(/damaged/);
  });
});

it('what links leave out is frozen: a link made today must say the same for ever', () => {
  const base = readFileSync(new URL('../../shared/design/linkBase1.json', import.meta.url), 'utf8');
  const print = createHash('sha256')
    .update(JSON.stringify(JSON.parse(base)))
    .digest('hex')
    .slice(0, 16);
  expect(print, 'never edit this file; a new version of the design gets a base of its own').toBe(
    '193b8fd0dd16b6e5',
  );
});

it('a design that lacks what the base has is written out whole', async () => {
  const { bench: _gone, ...rest } = startDesign;
  const read = await readLink(await writeLink(rest as typeof startDesign));
  expect(read.ok ? [] : read.faults.map((fault) => fault.path)).toEqual(['bench']);
});
