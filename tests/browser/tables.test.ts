import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

/** Opens everything that is folded and every table of a plot. */
async function unfold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const group of document.querySelectorAll<HTMLDetailsElement>('details.more')) group.open = true;
  });
  for (const name of ['Parts of the path', 'Wire sizes', 'Distance from the antenna by band']) {
    await page.getByLabel(name).locator('td').first().waitFor({ state: 'attached' });
  }
  // Plots come when the page has time for them.
  const openTables = () =>
    page.evaluate(() => {
      for (const button of document.querySelectorAll<HTMLButtonElement>('.plot button'))
        if (button.textContent === 'values as table') button.click();
      return document.querySelectorAll('main .plot .table-scroll').length;
    });
  await expect.poll(openTables, { timeout: 10_000 }).toBeGreaterThan(3);
}

/** Tables whose scroller is wider than its column or does not come to the last column, by name. */
const badlyScrolled = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main .table-scroll')].flatMap((scroller) => {
      const table = scroller.querySelector('table');
      const column = scroller.closest('.wide, .found-column, .given, .answer')?.getBoundingClientRect();
      if (!table || !column) return [`${scroller.ariaLabel} stands nowhere`];
      scroller.scrollLeft = 1e6;
      const { right } = scroller.getBoundingClientRect();
      const end = table.getBoundingClientRect().right;
      const fits =
        right <= column.right + 1 && right <= document.documentElement.clientWidth && end <= right + 1;
      return fits ? [] : [`${scroller.ariaLabel}: ends at ${end}, its scroller at ${right}`];
    }),
  );

/** Plots, captions and all else of a station that reach over the right edge of the sheet. */
const pushedOut = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('.plot, .plot *, figcaption, figure, .table-title')]
      .filter((part) => !part.closest('.table-scroll'))
      .filter((part) => part.getBoundingClientRect().right > document.documentElement.clientWidth)
      .map((part) => `${part.tagName} ${part.getAttribute('class')}`),
  );

test.each([360, 390, 600])('%i px wide: every table scrolls inside its column', async (width) => {
  const { page } = await openSheet({ width, height: 844 });
  await unfold(page);
  expect(await badlyScrolled(page)).toEqual([]);
  expect(await pushedOut(page)).toEqual([]);
});
