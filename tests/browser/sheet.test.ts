import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { parseDesign, writeDesign } from '../../shared/design/file.ts';
import { violations } from './accessibility.ts';
import { openDesigns, openSheet } from './support.ts';

const carrier = (page: Page) =>
  page
    .locator('main')
    .getByText(/of the time.*, or .* from cold/)
    .first();

describe('a wrong entry', () => {
  test('says what is wrong beside the field, keeps the last figures and the text, and survives a reload', async () => {
    const { page } = await openSheet();
    await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 20_000 });
    const before = await carrier(page).textContent();
    const width = page.locator('#field-sink-width');
    await width.fill('-150 mm');
    await width.blur();
    const message = page
      .locator('#sink')
      .getByText(/between/i)
      .first();
    await message.waitFor();
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    expect(await width.getAttribute('aria-describedby')).toContain(
      await message.evaluate((el) => el.id || el.closest('[id]')?.id),
    );
    expect(await carrier(page).textContent()).toBe(before);
    await page.waitForTimeout(500);
    await page.reload();
    await page.waitForSelector('[data-ready="true"]', { state: 'attached' });
    expect(await width.inputValue()).toBe('-150 mm');
    await width.fill('6 in');
    await page
      .locator('#sink')
      .getByText('6 in')
      .or(page.locator('#sink').getByText(/152\.4/))
      .first()
      .waitFor();
    expect(await width.getAttribute('aria-invalid')).not.toBe('true');
  });

  test('a wrong unit is named', async () => {
    const { page } = await openSheet();
    const width = page.locator('#field-sink-width');
    await width.fill('150 kg');
    await width.blur();
    await page.locator('#sink').getByText(/kg/).first().waitFor();
    expect(await width.getAttribute('aria-invalid')).toBe('true');
  });
});

test('products and brackets are worked out beside the page', async () => {
  const { page } = await openSheet();
  const width = page.locator('#field-sink-width');
  await width.fill('2 * (50 mm + 1 in)');
  await page
    .locator('#sink')
    .getByText(/150\.8\s*mm/)
    .first()
    .waitFor({ timeout: 20_000 });
  expect(await width.getAttribute('aria-invalid')).not.toBe('true');
});

describe('files', () => {
  const chooser = async (page: Page) => (await openDesigns(page)).getByLabel('Design files');
  const asFile = (name: string, text: string) => ({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });

  test('a saved design is a file the parser reads back', async () => {
    const { page } = await openSheet();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save', exact: true }).click(),
    ]);
    const parsed = parseDesign(readFileSync(await download.path(), 'utf8'));
    expect(parsed).toEqual({ ok: true, design: examples[0]!.design });
  });

  test('another design is opened; a damaged one is refused with every fault and changes nothing', async () => {
    const { page } = await openSheet();
    await (await chooser(page)).setInputFiles(asFile('other.json', writeDesign(examples[2]!.design)));
    await expect.poll(() => page.getByLabel('Design name').inputValue()).toBe(examples[2]!.design.name);
    const damaged = writeDesign(examples[1]!.design)
      .replace('"finCount": 6', '"finCount": -6')
      .replace('"pep": 10', '"pep": "ten"');
    await (await chooser(page)).setInputFiles(asFile('damaged.json', damaged));
    const notice = page.locator('[role=alert]');
    await notice
      .getByText(/Number of fins/)
      .first()
      .waitFor();
    await notice
      .getByText(/Output power/)
      .first()
      .waitFor();
    await (await chooser(page)).setInputFiles(asFile('cut.json', damaged.slice(0, 200)));
    await notice
      .getByText(/ends too early/)
      .first()
      .waitFor();
    expect(await page.getByLabel('Design name').inputValue()).toBe(examples[2]!.design.name);
  });
});

describe('for everyone', () => {
  test.each([
    [360, false],
    [390, true],
    [820, false],
    [1440, true],
  ])(
    '%i px wide, dark %s: nothing overflows and no automated violation of WCAG 2.2 AA',
    async (width, dark) => {
      const { page } = await openSheet({ width, dark });
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(overflow).toBeLessThanOrEqual(0);
      expect(await violations(page, 'html', 15)).toEqual([]);
    },
  );

  test('every field is reached by keyboard in the order of the sheet', async () => {
    const { page } = await openSheet();
    await page.getByLabel('Design name').focus();
    const seen: string[] = [];
    for (let i = 0; i < 500 && !seen.includes('field-sink-width'); i += 1) {
      await page.keyboard.press('Tab');
      seen.push(await page.evaluate(() => document.activeElement?.id ?? ''));
    }
    const fields = seen.filter((id) => id.startsWith('field-'));
    expect(fields.slice(0, 2)).toEqual(['field-source-kind', 'field-source-openVoltage']);
    expect(fields.indexOf('field-sink-width')).toBeGreaterThan(fields.indexOf('field-amplifier-pep'));
  });

  test('a figure shows its working on demand, the cautions without', async () => {
    const { page } = await openSheet();
    const figure = page.locator('#source details.found').first();
    await figure.locator('summary').click();
    await figure.locator('math').first().waitFor();
    expect(
      (await figure.getByText(/Source:/).count()) + (await figure.locator('.working').count()),
    ).toBeGreaterThan(0);
    const danger = page.locator('#cautions').getByText('A short across the supply');
    expect(await danger.isVisible()).toBe(true);
    expect(await danger.evaluate((element) => element.closest('details') === null)).toBe(true);
  });
});
