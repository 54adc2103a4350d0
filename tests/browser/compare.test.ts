import { expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { writeDesign } from '../../shared/design/file.ts';
import { violations } from './accessibility.ts';
import { openSheet } from './support.ts';

const slow = { timeout: 120_000 };

test.each([
  [390, false, true],
  [1280, true, false],
])('two designs side by side at %i px (dark: %s), by keyboard', slow, async (width, dark, touch) => {
  const { page } = await openSheet({ width, height: 850, dark, touch });
  if (width < 700) await page.getByRole('button', { name: 'Menu' }).press('Enter');
  const opener = page.getByRole('button', { name: 'Compare', exact: true });
  await opener.press('Enter');
  const chooser = page.getByLabel('This design beside');
  await chooser.waitFor();
  await chooser.selectOption({ label: examples[2]!.design.name });
  await page.getByText('What follows here').waitFor({ timeout: 30_000 });
  const follows = page.locator('.compare-follows');
  await expect.poll(() => follows.textContent()).toMatch(/the junction is cooler by \d+/);
  expect(await follows.textContent()).toMatch(/safe duty \d+.% instead of \d+.%/);
  await page.locator('.compare figure').waitFor({ timeout: 30_000 });
  expect(await violations(page, '.head')).toEqual([]);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);

  await page.getByRole('button', { name: /^take theirs: Number of fins/ }).press('Enter');
  await expect.poll(() => page.locator('#field-sink-finCount').inputValue()).toBe('16');
  await page.getByRole('button', { name: 'Swap the two' }).press('Enter');
  await expect.poll(() => page.getByLabel('Design name').inputValue()).toBe(examples[2]!.design.name);
  await page.keyboard.press('Escape');
  await expect.poll(() => opener.evaluate((each) => each === document.activeElement)).toBe(true);
});

test('a file can be held against the sheet; a damaged one is refused with its faults', slow, async () => {
  const { page } = await openSheet();
  await page.getByRole('button', { name: 'Compare', exact: true }).click();
  const file = (text: string) => ({
    name: 'other.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  const chooser = page.getByLabel('Design file to compare with');
  await chooser.setInputFiles(file('{"format": 3}'));
  await page.getByText(/was not opened/).waitFor();
  await chooser.setInputFiles(file(writeDesign({ ...examples[1]!.design, name: 'Borrowed beacon' })));
  await page.getByText('There: Borrowed beacon.').waitFor({ timeout: 30_000 });
  // Held against it only: the sheet keeps its own design.
  expect(await page.getByLabel('Design name').inputValue()).toBe(examples[0]!.design.name);
});
