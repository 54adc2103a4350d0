import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

/** What of the page stands on paper just now. */
const onPaper = () => {
  const stands = (selector: string) => {
    const found = document.querySelector(selector);
    return found !== null && found.getClientRects().length > 0;
  };
  return {
    labels: stands('.label'),
    verdicts: stands('.verdicts'),
    given: stands('.given'),
    cautions: stands('.caution'),
    bands: stands('.exposure table'),
  };
};

test('labels are printed by keyboard, alone and 70 mm wide; the sheet is printed without them', async () => {
  const { page } = await openSheet({ width: 1280 });
  await page.evaluate(() => {
    window.print = () => document.documentElement.setAttribute('data-asked', 'yes');
  });
  const button = page.getByRole('button', { name: 'Print labels' });
  await button.scrollIntoViewIfNeeded();
  await page.locator('.exposure table').scrollIntoViewIfNeeded();
  await button.focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('html').getAttribute('data-asked')).toBe('yes');
  await page.emulateMedia({ media: 'print' });
  expect(await page.evaluate(onPaper)).toEqual({
    labels: true,
    verdicts: false,
    given: false,
    cautions: false,
    bands: false,
  });
  const width = await page
    .locator('.label')
    .first()
    .evaluate((label) => label.getBoundingClientRect().width);
  expect((width * 25.4) / 96).toBeCloseTo(70, 0);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  expect(await page.evaluate(onPaper)).toEqual({
    labels: false,
    verdicts: true,
    given: true,
    cautions: true,
    bands: true,
  });
});

test('on a phone the tables of people scroll inside themselves', async () => {
  const { page } = await openSheet({ width: 360, height: 740, touch: true });
  await page.locator('.exposure table').scrollIntoViewIfNeeded();
  await page.getByText('Burn thresholds and contact currents').click();
  await page.locator('.people-tables').waitFor();
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});
