import { join } from 'node:path';
import { expect, test } from 'vitest';
import { firstLoad, firstLoadFiles, firstLoadLimit } from '../../src/build/firstLoad.mjs';
import { heavyModule } from '../../src/build/lightEntry.ts';
import { root } from '../../src/build/run.mjs';

test('first load is at most 90 kB gzip', () => {
  const { total, parts } = firstLoad(join(root, 'dist'));
  const list = parts.map((part) => `${part.name} ${part.bytes}`).join(', ');
  expect(
    parts.some((part) => part.name.endsWith('.js')),
    list,
  ).toBe(true);
  expect(total, list).toBeLessThanOrEqual(firstLoadLimit);
  expect(firstLoadLimit).toBe(90_000);
});

test('the first load follows static imports and styles and the sheet itself, not imports on demand', () => {
  const manifest = {
    'src/page/main.tsx': { file: 'sheet.js', imports: ['_b.js'] },
    'index.html': { file: 'a.js', css: ['a.css'], imports: ['_b.js'], dynamicImports: ['lazy'] },
    '_b.js': { file: 'b.js', css: ['b.css'], imports: ['index.html'] },
    lazy: { file: 'lazy.js', css: ['lazy.css'] },
  };
  expect(firstLoadFiles(manifest)).toEqual(['index.html', 'a.js', 'a.css', 'b.js', 'b.css', 'sheet.js']);
});

test('mathjs is refused in the first load and allowed on demand', () => {
  const chunk = (imports: string[], moduleIds: string[], isEntry = false) => ({
    isEntry,
    imports,
    moduleIds,
  });
  const heavy = chunk([], ['/x/node_modules/mathjs/lib/esm/index.js']);
  const reached = new Map([
    ['main.js', chunk(['part.js'], ['/x/src/main.tsx'], true)],
    ['part.js', chunk(['math.js'], [])],
    ['math.js', heavy],
  ]);
  expect(heavyModule(reached)).toContain('mathjs');
  const inTheSheet = new Map([
    ['begin.js', chunk([], ['/x/src/page/begin.ts'], true)],
    ['main.js', chunk(['math.js'], ['/x/src/page/main.tsx'])],
    ['math.js', heavy],
  ]);
  expect(heavyModule(inTheSheet)).toContain('mathjs');
  const onDemand = new Map([
    ['main.js', chunk([], ['/x/src/main.tsx'], true)],
    ['math.js', heavy],
  ]);
  expect(heavyModule(onDemand)).toBeUndefined();
});
