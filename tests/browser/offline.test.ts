import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { root } from '../../src/build/run.mjs';
import { createSheetServer, listen } from '../../src/build/serve.mjs';
import { openDesigns, openSheet } from './support.ts';

/** Fetching every file and the figures of many stations on a busy machine, ms. */
const patience = 150_000;

const clean: (() => void)[] = [];

afterEach(() => {
  for (const each of clean.splice(0)) each();
});

const headline = (page: Page) =>
  page
    .locator('.verdict-headline')
    .allTextContents()
    .then((all) => all.join(' | '));
const untilReady = (page: Page) =>
  page.waitForSelector('[data-ready="true"]', { state: 'attached', timeout: 60_000 });
const untilKept = (page: Page) =>
  page.getByText('opens without a network').waitFor({ state: 'attached', timeout: 60_000 });

/** Every lazy part of the page that a click or a scroll brings, one after the other. */
async function visitAll(page: Page): Promise<void> {
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  for (let y = 0; y < height; y += 800) {
    await page.evaluate((to) => scrollTo(0, to), y);
    await page.waitForTimeout(50);
  }
  await page.evaluate(() => scrollTo(0, 0));
}

test('after the first visit it opens, computes and shows every part without a network, and asks no other host', {
  timeout: patience,
}, async () => {
  const sheet = await openSheet({ keepsOffline: true });
  const { page, context, address } = sheet;
  page.setDefaultTimeout(30_000);
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  await untilKept(page);

  await context.setOffline(true);
  await page.reload();
  await untilReady(page);
  const before = await headline(page);
  await page.locator('#field-amplifier-pep').fill('20');
  await expect.poll(() => headline(page), { timeout: 30_000 }).not.toBe(before);

  await visitAll(page);
  await page.locator('#sink .sketch svg').first().waitFor();
  await page.locator('#service .plot').first().waitFor();
  await page.locator('#source .found summary').first().click();
  await page.locator('#source .working math').first().waitFor();
  await page.locator('#field-sink-width').fill('2 * (50 mm + 1 in)');
  await page
    .locator('#sink')
    .getByText(/150\.8\s*mm/)
    .first()
    .waitFor();
  await page.locator('#answers').getByRole('heading', { name: 'What to change' }).waitFor();
  await page.locator('#answers').getByRole('button', { name: 'Find what to change' }).click();
  await page.locator('#answers .remedy, #answers .answer-none, #answers p').first().waitFor();
  const panel = await openDesigns(page);
  await expect.poll(() => panel.getByLabel('Link to this design').inputValue()).toMatch(/#d1\./);

  const home = new URL(address).origin;
  expect(asked.filter((url) => /^https?:/.test(url) && new URL(url).origin !== home)).toEqual([]);
});

/** Two copies of the built page that a test may change, under two paths of one host. */
async function serveCopies(): Promise<{ folder: string; address: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  for (const name of ['one', 'two']) cpSync(join(root, 'dist'), join(folder, name), { recursive: true });
  const server: Server = createSheetServer(folder);
  const port = await listen(server, { port: 0 });
  clean.push(() => {
    server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return { folder, address: `http://127.0.0.1:${port}/` };
}

/** Makes a later edition of a built page: another heading, and the offline script that belongs to it. */
function publishLater(folder: string): void {
  const edit = (name: string, from: RegExp, to: string) => {
    const file = join(folder, name);
    const before = readFileSync(file, 'utf8');
    const after = before.replace(from, to);
    expect(after).not.toBe(before);
    writeFileSync(file, after);
  };
  edit('index.html', /<h1>[^<]*<\/h1>/, '<h1>Heat and Rail, later</h1>');
  edit('offline.js', /offlineEdition="[^"]+"/, 'offlineEdition="later"');
}

test('a newer edition waits until it is asked for, and what was typed a moment ago is still there', {
  timeout: patience,
}, async () => {
  const { context } = await openSheet({ keepsOffline: true });
  const { folder, address } = await serveCopies();
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  for (const name of ['two', 'one']) {
    await page.goto(`${address}${name}/`);
    await untilReady(page);
    await untilKept(page);
  }
  expect(await page.getByText('newer version').count()).toBe(0);

  publishLater(join(folder, 'one'));
  await page.reload();
  await untilReady(page);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Heat and Rail');
  await page.getByText('A newer version of this sheet is ready.').waitFor();
  await page.locator('#field-amplifier-pep').fill('23');
  await page.getByRole('button', { name: 'Reload now' }).click();
  await page.getByRole('heading', { level: 1, name: 'Heat and Rail, later' }).waitFor();
  await untilReady(page);
  expect(await page.locator('#field-amplifier-pep').inputValue()).toBe('23');
  expect(await page.getByText('newer version').count()).toBe(0);

  const caches = await page.evaluate(() => globalThis.caches.keys());
  expect(caches.filter((name) => name.startsWith('heat-and-rail /one/ '))).toHaveLength(2);
  expect(caches).toContain('heat-and-rail /one/ later');
  expect(caches.filter((name) => name.startsWith('heat-and-rail /two/ '))).toHaveLength(1);
  await page.close();
});

test('it can be installed: the browser finds nothing wrong with its manifest', {
  timeout: patience,
}, async () => {
  const { page, context } = await openSheet({ keepsOffline: true });
  await untilKept(page);
  const session = await context.newCDPSession(page);
  const manifest = await session.send('Page.getAppManifest');
  expect(manifest.errors).toEqual([]);
  expect(JSON.parse(manifest.data ?? '{}').name).toBe('Heat and Rail');
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  // A private window, as every test has one, cannot install anything.
  const other = installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito');
  expect(other).toEqual([]);
});
