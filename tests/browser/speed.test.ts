import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { solve } from '../../src/engine/index.ts';
import { writeQuantity } from '../../src/engine/quantity/write.ts';
import { openSheet } from './support.ts';

/** The browser's own measure: the share of the screen that moved, times how far. */
interface Shifts {
  shifted: number;
}

const shifts = (page: Page) => page.evaluate(() => (globalThis as unknown as Shifts).shifted);

/** Runs before the page's own scripts. Shifts right after a key count as well, unlike in the usual score. */
function countShifts(): void {
  const page = globalThis as unknown as Shifts;
  page.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      page.shifted += (entry as PerformanceEntry & { value: number }).value;
  }).observe({ type: 'layout-shift', buffered: true });
}

const counted = { prepare: (page: Page) => page.addInitScript(countShifts).then(() => {}) };
const bandStands = (page: Page) =>
  page.getByText('judged at the pessimistic edge').waitFor({ timeout: 30_000 });

test.each([390, 820, 1280])(
  '%i px wide: values stay where they are while the page and its band come',
  async (width) => {
    const { page } = await openSheet({ ...counted, width });
    await bandStands(page);
    expect(await shifts(page)).toBeLessThan(0.02);
  },
);

/** With a field, what tells in sight of it whether the band stands: the verdicts themselves follow out of sight later. */
test.each([
  ['#field-source-openVoltage', '.band-note'],
  ['#field-amplifier-pep', '#amplifier .found-row .found-band'],
])('typing in %s and the band after it move nothing', async (field, teller) => {
  const { page } = await openSheet(counted);
  await bandStands(page);
  const input = page.locator(field);
  await input.scrollIntoViewIfNeeded();
  await input.click();
  await input.press('End');
  const value = await input.inputValue();
  await page.waitForTimeout(300);
  const told = () => page.locator(teller).first().textContent();
  const withBand = await told();
  const before = await shifts(page);
  await input.press('Backspace');
  await expect.poll(told, { timeout: 10_000 }).not.toBe(withBand);
  await input.press(value.slice(-1));
  await page.waitForTimeout(300);
  await expect.poll(told, { timeout: 30_000 }).toBe(withBand);
  expect((await shifts(page)) - before).toBeLessThan(0.02);
});

/** Bands of two lines stand beside names of one line there: without their room the row would be lower. */
test('no row of figures changes its height at an edit', async () => {
  const { page } = await openSheet();
  await bandStands(page);
  const input = page.locator('#field-sink-finHeight');
  await input.click();
  const band = page.locator('#sink .found-row .found-band').first();
  await expect.poll(() => band.isVisible(), { timeout: 20_000 }).toBe(true);
  const heights = () =>
    page.locator('#sink .found, #devices .found').evaluateAll((rows) => rows.map((row) => row.clientHeight));
  const before = await heights();
  expect(before.length).toBeGreaterThan(10);
  await input.press('End');
  const value = await input.inputValue();
  await input.press('Backspace');
  await input.press(value.slice(-1));
  await expect.poll(() => band.isVisible(), { interval: 10 }).toBe(false);
  expect(await heights()).toEqual(before);
  await expect.poll(() => band.isVisible(), { timeout: 20_000 }).toBe(true);
  expect(await heights()).toEqual(before);
});

test('plots out of sight are not composed while somebody edits, and stand again afterwards', async () => {
  const { page } = await openSheet();
  await page.locator('#field-amplifier-pep').click();
  const near = page.locator('#amplifier .plot-canvas').first();
  const far = page.locator('#service .plot-canvas').first();
  const isSeen = (plot: typeof far) => plot.evaluate((host) => getComputedStyle(host).visibility);
  await expect.poll(() => isSeen(far), { timeout: 20_000 }).toBe('hidden');
  await near.scrollIntoViewIfNeeded();
  await expect.poll(() => isSeen(near)).toBe('visible');
  await far.scrollIntoViewIfNeeded();
  await expect.poll(() => isSeen(far)).toBe('visible');
  await page.locator('#field-amplifier-pep').press('End');
  await expect.poll(() => isSeen(far), { timeout: 10_000 }).toBe('hidden');
  await expect.poll(() => isSeen(far), { timeout: 10_000 }).toBe('visible');
});

test('what is out of sight follows an edit when the page rests, and folded entries are made', async () => {
  const { page } = await openSheet();
  const people = page.locator('#people');
  const power = page.locator('#field-amplifier-pep');
  await power.scrollIntoViewIfNeeded();
  const before = await people.textContent();
  await power.fill('30');
  await expect.poll(() => people.textContent(), { timeout: 20_000 }).not.toBe(before);
  expect(await page.locator('details.more:not([open]) #field-sink-mass').count()).toBe(1);
});

interface Asked {
  /** How often a worker has been asked for figures. */
  solves: number;
}

/** Runs before the page's own scripts. */
function countSolves(): void {
  const page = globalThis as unknown as Asked;
  page.solves = 0;
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (this: Worker, ...sent: unknown[]) {
    if ((sent[0] as { call?: string }).call === 'solve') page.solves += 1;
    Reflect.apply(post, this, sent);
  };
}

test('an edit is first answered by the worker, later within the page, with the figures of the engine', async () => {
  const { page } = await openSheet({ prepare: (fresh) => fresh.addInitScript(countSolves).then(() => {}) });
  const asked = () => page.evaluate(() => (globalThis as unknown as Asked).solves);
  expect(await asked()).toBeGreaterThan(0);
  const input = page.locator('#field-amplifier-pep');
  const fill = async (value: number) => {
    const before = await asked();
    await input.fill(String(value));
    await page.waitForTimeout(100);
    return (await asked()) - before;
  };
  let power = 40;
  await expect.poll(() => fill(power++), { timeout: 40_000, interval: 500 }).toBe(0);
  const { design } = examples[0]!;
  const pep = power - 1;
  const { values } = solve({ ...design, amplifier: { ...design.amplifier, pep } });
  const shown = page
    .locator('#amplifier summary', { hasText: 'DC power into the final at PEP' })
    .locator('.found-value');
  expect(await shown.textContent()).toBe(writeQuantity(values.dcPowerPep!, 'power'));
});
