import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

const first = (page: Page) => page.getByRole('button', { name: /^Device 1, / });

/** Place of the first device as said, mm from the left and from below. */
async function placeOf(page: Page): Promise<readonly [number, number]> {
  const said = (await first(page).getAttribute('aria-label')) ?? '';
  const found = /, ([\d.]+)\s*mm from the left, ([\d.]+)\s*mm from below/.exec(said);
  return [Number(found?.[1]), Number(found?.[2])];
}

/** Brings the map into view and waits until what stands above it has taken its place. */
async function showMap(page: Page): Promise<void> {
  const map = page.locator('.plate-map');
  // The band comes last and may move what stands below the verdicts.
  await page
    .getByText(/nine of ten/)
    .first()
    .waitFor({ timeout: 30_000 });
  await page.locator('.plate-map .warmth').first().waitFor({ state: 'attached' });
  let before = Number.NaN;
  await expect
    .poll(async () => {
      await map.scrollIntoViewIfNeeded();
      const top = (await map.boundingBox())?.y ?? Number.NaN;
      const moved = top - before;
      before = top;
      return moved;
    })
    .toBe(0);
}

test('a part follows the pointer to the place under it, and the figures follow the part', async () => {
  const { page } = await openSheet({ width: 1280, height: 1000 });
  await showMap(page);
  const before = await placeOf(page);
  const face = first(page).locator('.face');
  const middle = async () => {
    const box = await face.boundingBox();
    return box ? ([box.x + box.width / 2, box.y + box.height / 2] as const) : ([0, 0] as const);
  };
  const [fromX, fromY] = await middle();
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  await page.mouse.move(fromX + 20, fromY - 30, { steps: 4 });
  await page.mouse.move(fromX + 40, fromY - 50, { steps: 4 });
  await expect
    .poll(() => page.locator('.plate-said').textContent(), { timeout: 15_000 })
    .toMatch(/Device 1 .* plate under it/);
  await page.mouse.move(fromX + 40, fromY - 60);
  // A millimetre, to which places snap, is less than 3 pixels here.
  const [atX, atY] = await middle();
  expect(Math.abs(atX - fromX - 40)).toBeLessThan(3);
  expect(Math.abs(atY - fromY + 60)).toBeLessThan(3);
  await page.mouse.up();
  const after = await placeOf(page);
  expect(after[0]).toBeGreaterThan(before[0]);
  await page.locator('.plate-map .plate-hint').click();
  await page.keyboard.press('Control+z');
  expect(await placeOf(page)).toEqual(before);
});

test('a part is reached by Tab and moved by arrow keys, on a phone too, and nothing overflows', async () => {
  const { page } = await openSheet({ width: 360, height: 740 });
  await showMap(page);
  const [x, y] = await placeOf(page);
  await page.locator('.plate-map .picker input:checked').first().focus();
  await page.keyboard.press('Tab');
  expect(await first(page).evaluate((part) => part === document.activeElement)).toBe(true);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  const [nextX, nextY] = await placeOf(page);
  expect(nextX).toBeGreaterThan(x);
  expect(nextY).toBeLessThan(y);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});
