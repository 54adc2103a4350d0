import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

const named = ['Parts of the path', 'Wire sizes', 'Distance from the antenna by band'];

/** Opens everything that is folded and every table of a plot; some of it comes when the page has time for it. */
async function unfold(page: Page): Promise<void> {
  const tables = () =>
    page.evaluate((names) => {
      for (const group of document.querySelectorAll<HTMLDetailsElement>('details.more')) group.open = true;
      for (const button of document.querySelectorAll<HTMLButtonElement>('.plot button'))
        if (button.textContent === 'values as table') button.click();
      const filled = names.filter((name) => document.querySelector(`[aria-label="${name}"] td`) !== null);
      return [filled.length, document.querySelectorAll('main .plot .table-scroll').length > 3];
    }, named);
  await expect.poll(tables, { timeout: 20_000 }).toEqual([named.length, true]);
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
