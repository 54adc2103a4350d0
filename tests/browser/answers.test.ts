import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './accessibility.ts';
import { beginWith, openSheet } from './support.ts';

const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();

const slow = { timeout: 150_000 };

/** The example that does not fit, with its answers judged by the nominal figures. */
async function openFailing() {
  const { page } = await openSheet();
  page.setDefaultTimeout(40_000);
  await beginWith(page, 'Data-mode final');
  const answers = page.locator('#answers');
  await answers.getByRole('heading', { name: 'What to change' }).waitFor();
  await answers.getByText('the nominal figures').click();
  const keyDown = page.locator('.verdict-table .verdict').nth(2);
  return { page, answers, keyDown };
}

async function faultless(page: Page): Promise<void> {
  expect(await violations(page, '#answers')).toEqual([]);
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
}

test('from a verdict of no to a design that fits, by the keyboard, and back', slow, async () => {
  const { page, answers, keyDown } = await openFailing();
  expect(await answers.getByLabel('So that it becomes fine').inputValue()).toBe('keyDown');
  await answers.getByRole('button', { name: 'Find what to change' }).focus();
  await page.keyboard.press('Enter');
  const first = answers.locator('.remedy').first();
  await first.waitFor();
  expect(plain(await first.textContent())).toMatch(/Transmit \d+ % of the time/);
  // On paper stands a short list, and on the screen none of it.
  expect(await answers.locator('.fit-list').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(plain(await page.locator('.fit-list').first().textContent())).toMatch(
    /What would make it fit: Key-down/,
  );
  await page.emulateMedia({ media: 'screen' });

  await first.getByRole('button').focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    () => !document.querySelectorAll('.verdict-table .verdict')[2]?.classList.contains('verdict-over'),
  );
  await answers.getByRole('button', { name: 'take it back' }).click();
  await page.waitForFunction(() =>
    document.querySelectorAll('.verdict-table .verdict')[2]?.classList.contains('verdict-over'),
  );
  expect(plain(await keyDown.textContent())).toContain('over');
  await faultless(page);
});

test('a value turned into the unknown is found and put in; why there is none is said', slow, async () => {
  const { page, answers, keyDown } = await openFailing();
  await answers.getByRole('button', { name: 'Find the value' }).click();
  await answers.getByText('No value of').waitFor();
  await answers.locator('#unknown-target').fill('15 %');
  await answers.locator('#unknown-target').press('Enter');
  await answers.getByText('There are 2 values').waitFor();
  await answers
    .getByRole('button', { name: /^put it in/ })
    .first()
    .press('Enter');
  // The nominal duty, which stays in the line when the band has come.
  await expect
    .poll(async () => plain(await keyDown.textContent()), { timeout: 40_000 })
    .toMatch(/Nominal 1[0-9] %/);
  await answers.getByRole('button', { name: 'take it back' }).click();
  await faultless(page);
});

test('a map over typed ranges is stopped, drawn and read by keys; doubts are ranked', slow, async () => {
  const { page, answers } = await openFailing();
  await answers.locator('#map-x-to').fill('55 °C');
  await answers.locator('#map-y-from').fill('20');
  await page.evaluate(() => {
    const section = document.querySelector('[aria-labelledby="map-title"]')!;
    section.querySelector<HTMLButtonElement>('.ask-button')!.click();
    section.querySelector<HTMLButtonElement>('.asking .plain-button')!.click();
  });
  const draw = answers.getByRole('button', { name: 'Draw the map' });
  expect(await draw.isEnabled()).toBe(true);
  expect(await answers.locator('.plot-title').count()).toBe(0);
  await answers.locator('#map-y-from').press('Enter');
  await answers.locator('.plot-title').waitFor();
  const reading = answers.getByLabel(/to read the limits at/);
  await reading.focus();
  await page.keyboard.press('Home');
  expect(plain(await reading.getAttribute('aria-valuetext'))).toMatch(/^at \d+ °C: .* W/);
  await answers.getByRole('button', { name: 'values as table' }).click();
  expect(plain(await answers.locator('.plot-table tbody tr').last().textContent())).toMatch(/^55 °C/);
  await answers.getByRole('button', { name: 'Show what matters' }).click();
  await answers.getByLabel('What matters most, ranked').waitFor();
  await answers.getByLabel('Ranked by').selectOption('doubt');
  await answers.getByRole('button', { name: 'Show what matters' }).click();
  await answers.getByLabel('What is not known, ranked').waitFor();
  await faultless(page);
});
