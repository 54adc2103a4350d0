import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

/** What of the page stands on paper just now. */
const onPaper = () => {
  const stands = (selector: string) =>
    [...document.querySelectorAll(selector)].some((each) => each.getClientRects().length > 0);
  return {
    labels: stands('.label'),
    verdicts: stands('.verdicts, .build-verdicts'),
    given: stands('.given, .build-given'),
    cautions: stands('.caution, .build-cautions li'),
    bands: stands('.exposure table'),
  };
};

test('labels are printed by keyboard, alone and 70 mm wide; the build sheet is printed without them', async () => {
  const { page } = await openSheet({ width: 1280 });
  await page.evaluate(() => {
    window.print = () => {
      window.dispatchEvent(new Event('beforeprint'));
      document.documentElement.setAttribute('data-asked', 'yes');
    };
  });
  const button = page.getByRole('button', { name: 'Print labels' });
  await button.scrollIntoViewIfNeeded();
  await page.locator('.exposure table').scrollIntoViewIfNeeded();
  await button.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('html').getAttribute('data-asked')).toBe('yes');
  await page.emulateMedia({ media: 'print' });
  const nothing = { labels: false, verdicts: false, given: false, cautions: false, bands: false };
  expect(await page.evaluate(onPaper)).toEqual({ ...nothing, labels: true });
  const width = await page
    .locator('.print-paper .label')
    .first()
    .evaluate((label) => label.getBoundingClientRect().width);
  expect((width * 25.4) / 96).toBeCloseTo(70, 0);
  await page.evaluate(() => {
    window.dispatchEvent(new Event('afterprint'));
    window.dispatchEvent(new Event('beforeprint'));
  });
  expect(await page.evaluate(onPaper)).toEqual({ ...nothing, verdicts: true, given: true, cautions: true });
});

test('on a phone the tables of people scroll inside themselves', async () => {
  const { page } = await openSheet({ width: 360, height: 740, touch: true });
  await page.locator('.exposure table').scrollIntoViewIfNeeded();
  await page.getByText('Burn thresholds and contact currents').click();
  await page.locator('.people-tables').waitFor();
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});
