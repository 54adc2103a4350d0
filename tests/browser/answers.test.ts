import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();

test('from a verdict of no to a design that fits, by the keyboard, and back', async () => {
  const { page } = await openSheet();
  page.setDefaultTimeout(60_000);
  await page.getByLabel('Begin with').selectOption('data-final-100w');
  const answers = page.locator('#answers');
  await answers.getByRole('heading', { name: 'What to change' }).waitFor();
  await answers.getByText('the nominal figure').click();
  expect(await answers.getByLabel('So that it becomes fine').inputValue()).toBe('keyDown');

  await answers.getByRole('button', { name: 'Find what to change' }).focus();
  await page.keyboard.press('Enter');
  const first = answers.locator('.remedy').first();
  await first.waitFor();
  expect(plain(await first.textContent())).toMatch(/Transmit \d+ % of the time/);
  await first.getByRole('button').focus();
  await page.keyboard.press('Enter');
  const keyDown = page.locator('.verdict-table .verdict').nth(2);
  await page.waitForFunction(
    () => !document.querySelectorAll('.verdict-table .verdict')[2]?.classList.contains('verdict-over'),
  );
  await answers.getByRole('button', { name: 'take it back' }).click();
  await page.waitForFunction(() =>
    document.querySelectorAll('.verdict-table .verdict')[2]?.classList.contains('verdict-over'),
  );
  expect(plain(await keyDown.textContent())).toContain('over');

  await answers.getByRole('button', { name: 'Draw the map' }).click();
  await answers.locator('.plot-title').first().waitFor();
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
});
