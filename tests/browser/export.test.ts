import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { solve } from '../../src/engine/index.ts';
import { readCsv } from '../readCsv.ts';
import { openSheet } from './support.ts';

const slow = { timeout: 120_000 };
const stem = 'field-station-60-w-push-pull-on-36-v';

async function downloadBy(page: Page, press: () => Promise<void>): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return download;
}

async function openPanel(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Print, figures' }).click();
  await page.getByRole('heading', { name: 'Save figures', exact: true }).waitFor();
}

test('figures are saved as CSV and JSON with every quantity, named after the design', slow, async () => {
  const { page } = await openSheet();
  await openPanel(page);
  const save = (name: string) =>
    downloadBy(page, () => page.getByRole('button', { name, exact: true }).press('Enter'));
  const csv = await save('CSV');
  expect(csv.suggestedFilename()).toBe(`${stem}.figures.csv`);
  const keys = new Set(readCsv(readFileSync(await csv.path(), 'utf8')).map((row) => row[0]));
  const solution = solve(examples[0]!.design);
  for (const key of Object.keys(solution.values)) expect(keys.has(key), key).toBe(true);
  const json = await save('JSON');
  expect(json.suggestedFilename()).toBe(`${stem}.figures.json`);
  const { name, quantities } = JSON.parse(readFileSync(await json.path(), 'utf8'));
  expect(name).toBe(examples[0]!.design.name);
  expect(Object.keys(quantities)).toEqual(Object.keys(solution.values));
});

/** What a browser makes of a text as SVG: whether it is well-formed, what it points to, and its size as a picture. */
async function readSvg(page: Page, text: string) {
  return page.evaluate(async (svg) => {
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    await image.decode();
    const loose = [...parsed.querySelectorAll('*')].flatMap((element) =>
      [...element.attributes].filter(({ name }) => ['class', 'style', 'href', 'src'].includes(name)),
    );
    return {
      wellFormed: parsed.querySelector('parsererror') === null,
      title: parsed.querySelector('title')?.textContent,
      words: parsed.documentElement.textContent ?? '',
      paths: parsed.querySelectorAll('path').length,
      loose: loose.map(({ name, value }) => `${name}=${value}`),
      width: image.naturalWidth,
    };
  }, text);
}

test.each([
  ['Junction temperature against duty', false],
  ['Junction temperature against duty', true],
  ['Plate map', true],
])('“%s” is saved as SVG and PNG that need nothing else (dark: %s)', slow, async (title, dark) => {
  const { page } = await openSheet({ dark });
  const figure = page.locator('figure', { hasText: title }).first();
  await figure.scrollIntoViewIfNeeded();
  if (title === 'Plate map') await figure.locator('.warmth').first().waitFor({ state: 'attached' });
  const save = (kind: string) =>
    downloadBy(page, () =>
      page.getByRole('button', { name: `${kind}: save the picture of ${title}` }).press('Enter'),
    );
  const svg = await save('SVG');
  expect(svg.suggestedFilename()).toBe(`${stem}.${title.toLowerCase().replaceAll(' ', '-')}.svg`);
  const text = readFileSync(await svg.path(), 'utf8');
  const read = await readSvg(page, text);
  expect(read.wellFormed).toBe(true);
  expect(read.title).toBe(`${title}: ${examples[0]!.design.name}`);
  expect(read.words).toContain(examples[0]!.design.name);
  expect(read.paths).toBeGreaterThan(4);
  expect(read.loose).toEqual([]);
  expect(text).not.toMatch(/var\(|url\((?!#)|(href|src)=|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
  // White paper and black ink, whatever the scheme of the screen.
  expect(text).toMatch(/<rect[^>]* fill="#fff"/);
  expect(text).not.toContain('rgb(31, 39, 46)');
  const png = readFileSync(await (await save('PNG')).path());
  expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect(png.readUInt32BE(16)).toBe(2 * read.width);
  // Nothing of it is left on the page.
  expect(await page.locator('.picture-host').count()).toBe(0);
});
