import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { disclaimer, standingLines } from '../../shared/standing.ts';
import { quantities } from '../../src/engine/catalogue/index.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** "Safe duty" is said of the amplifier; of people none of these words is used. */
const forbidden = /\b(safe(?! duty)|safely|safety|compliant|compliance|approved|harmless)\b/i;

function textFilesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));
}

/** What of a source file a reader of the page can meet: text without comments and without code of one word. */
function words(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const quoted = code.match(/'[^'\n]*'|"[^"\n]*"|`[^`]*`/g) ?? [];
  const between = code.match(/>[^<>{}=;]+</g) ?? [];
  return [...quoted, ...between].filter((piece) => !/^['"`][\w./-]*['"`]$/.test(piece));
}

test('no static text of page, design fields, engine or command line says such a word of people', () => {
  const files = ['src/page', 'shared', 'src/engine', 'src/cli'].flatMap(textFilesUnder);
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((file) =>
    words(readFileSync(join(root, file), 'utf8'))
      .filter((piece) => forbidden.test(piece))
      .map((piece) => `${file}: ${piece}`),
  );
  expect(found).toEqual([]);
});

test('the reader of texts sees what it should', () => {
  expect(words("const a = 'this is safe';").some((piece) => forbidden.test(piece))).toBe(true);
  expect(words('<p>It is approved</p>').some((piece) => forbidden.test(piece))).toBe(true);
  expect(
    words("// it's safe\nconst key = 'safeDuty'; const label = 'Safe duty';").some((p) => forbidden.test(p)),
  ).toBe(false);
});

test('no figure of the catalogue is named so', () => {
  for (const { label, method } of Object.values(quantities)) {
    expect(`${label} ${method ?? ''}`.replace(/safe duty/gi, '')).not.toMatch(forbidden);
  }
});

test('the standing paragraph defers to local rules, codes and licensed practice', () => {
  for (const word of ['laws', 'electrical codes', 'licence', 'competent or licensed person', 'estimates']) {
    expect(disclaimer).toContain(word);
  }
  expect(standingLines.join(' ')).toMatch(/Fuse within.*rings and watches.*do not touch the antenna/);
});
