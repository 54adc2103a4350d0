import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { parseDesign, writeDesign } from '../../shared/design/file.ts';
import { readLink, writeLink } from '../../shared/design/link.ts';
import { violations } from './accessibility.ts';
import { openDesigns, openSheet, untilReady } from './support.ts';

const nameOn = (page: Page) => page.getByLabel('Design name').inputValue();
const power = (page: Page) => page.locator('#field-amplifier-pep');
/** Longer than typing rests before it is kept, ms. */
const rest = 600;

describe('several designs', () => {
  test('are begun, changed, renamed, duplicated, deleted and brought back, by the keyboard alone', async () => {
    const { page } = await openSheet();
    const press = async (name: string | RegExp, row?: string) => {
      const panel = page.getByRole('region', { name: 'Designs' });
      const within = row === undefined ? panel : panel.getByRole('listitem').filter({ hasText: row }).first();
      await within.getByRole('button', { name }).first().focus();
      await page.keyboard.press('Enter');
    };
    await page.getByRole('button', { name: 'Designs', exact: true }).focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('region', { name: 'Designs' });
    const kept = panel.locator('.kept-row');
    await panel.waitFor();

    await press(/^Pocket beacon/);
    await expect.poll(() => nameOn(page)).toBe(examples[1]!.title);
    await page.getByLabel('Design name').fill('Roof beacon');
    await page.waitForTimeout(rest);
    await press('A fresh sheet');
    await expect.poll(() => nameOn(page)).toBe('New design');
    await expect.poll(() => kept.count()).toBe(2);
    await kept
      .filter({ hasText: 'Roof beacon' })
      .getByText(/over:|close:|every line fine/)
      .waitFor();

    await press('Open', 'Roof beacon');
    await expect.poll(() => nameOn(page)).toBe('Roof beacon');
    await press('Duplicate', 'Roof beacon');
    await expect.poll(() => nameOn(page)).toBe('Roof beacon (2)');
    await press('Rename', 'Roof beacon (2)');
    await page.keyboard.type('Cellar beacon');
    await page.keyboard.press('Enter');
    await expect.poll(() => nameOn(page)).toBe('Cellar beacon');

    await press('Delete', 'Cellar beacon');
    await panel.getByText('“Cellar beacon” is deleted.').waitFor();
    await expect.poll(() => nameOn(page)).not.toBe('Cellar beacon');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Bring it back');
    await page.keyboard.press('Enter');
    await expect.poll(() => nameOn(page)).toBe('Cellar beacon');

    await panel.getByRole('button', { name: 'Close', exact: true }).focus();
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Designs');
    await page.waitForTimeout(rest);
    await page.reload();
    await page.waitForSelector('[data-ready="true"]', { state: 'attached' });
    expect(await nameOn(page)).toBe('Cellar beacon');
  });

  test.each([
    [360, false],
    [390, true],
    [820, false],
    [1440, true],
  ])('their list fits %i px and has no automated violation (dark: %s)', async (width, dark) => {
    const { page } = await openSheet({ width, dark });
    const panel = await openDesigns(page);
    await panel.getByRole('button', { name: /^Data-mode/ }).click();
    await panel.getByRole('button', { name: 'Duplicate' }).first().click();
    await panel.getByRole('button', { name: 'Delete' }).last().click();
    await panel.getByRole('button', { name: 'Rename' }).first().click();
    expect(await violations(page, '.head')).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });

  test('several files come in at once, and each goes out as a file again', async () => {
    const { page } = await openSheet();
    const panel = await openDesigns(page);
    const files = examples.slice(1, 3).map((each) => ({
      name: `${each.key}.json`,
      mimeType: 'application/json',
      buffer: Buffer.from(writeDesign({ ...each.design, name: `My ${each.key}` })),
    }));
    const cut = { name: 'cut.json', mimeType: 'application/json', buffer: Buffer.from('{"format"') };
    await panel.getByLabel('Design files').setInputFiles([...files, cut]);
    await page.getByText('2 designs were added').waitFor();
    await page.getByText('“cut.json” was not opened.').waitFor();
    const row = panel.locator('.kept-row').filter({ hasText: `My ${examples[2]!.key}` });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      row.getByRole('button', { name: 'To a file' }).click(),
    ]);
    const back = parseDesign(readFileSync(await download.path(), 'utf8'));
    expect(back).toEqual({ ok: true, design: { ...examples[2]!.design, name: `My ${examples[2]!.key}` } });
  });
});

describe('two tabs', () => {
  async function twoTabs() {
    const sheet = await openSheet();
    await power(sheet.page).fill('21');
    await sheet.page.waitForTimeout(rest);
    const other = await sheet.context.newPage();
    await other.goto(sheet.address);
    await untilReady({ ...sheet, page: other });
    expect(await power(other).inputValue()).toBe('21');
    await power(other).fill('30');
    const asked = sheet.page.getByText('was changed in another tab or window');
    await asked.waitFor();
    return { page: sheet.page, other, asked };
  }

  test('the one that did not change it is asked; taking theirs shows it, and undo brings mine back', async () => {
    const { page, other, asked } = await twoTabs();
    expect(await power(page).inputValue()).toBe('21');
    await page.getByRole('button', { name: 'Take theirs' }).click();
    await expect.poll(() => power(page).inputValue()).toBe('30');
    await page.waitForTimeout(rest);
    expect(await asked.count()).toBe(0);
    expect(await other.getByText('was changed in another tab').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => power(page).inputValue()).toBe('21');
    await other.close();
  });

  test('what is typed before the choice is kept beside theirs; keeping both goes on with it', async () => {
    const { page, other } = await twoTabs();
    await power(page).fill('44');
    await page.waitForTimeout(rest);
    await page.getByRole('button', { name: 'Keep both' }).click();
    const name = examples[0]!.title;
    await expect.poll(() => nameOn(page)).toBe(`${name} (2)`);
    const panel = await openDesigns(page);
    await panel.locator('.kept-row').filter({ hasText: '30 W' }).waitFor();
    await panel.locator('.kept-row').filter({ hasText: '44 W' }).waitFor();
    expect(await power(other).inputValue()).toBe('30');
    await other.close();
  });

  test('keeping mine asks the other one', async () => {
    const { page, other } = await twoTabs();
    await page.getByRole('button', { name: 'Keep mine' }).click();
    await other.getByText('was changed in another tab').waitFor();
    await other.reload();
    await other.waitForSelector('[data-ready="true"]', { state: 'attached' });
    expect(await power(other).inputValue()).toBe('21');
    await other.close();
  });
});

describe('a link', () => {
  const design = { ...examples[1]!.design, name: 'From a friend' };

  test('opens its design beside what is there, and leaves the address', async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await page.getByLabel('Design name').fill('My own');
    await page.waitForTimeout(rest);
    await page.goto(sheet.address + (await writeLink(design)));
    await expect.poll(() => nameOn(page), { timeout: 20_000 }).toBe('From a friend');
    expect(await page.evaluate(() => location.hash)).toBe('');
    const panel = await openDesigns(page);
    await panel.locator('.kept-row').filter({ hasText: 'My own' }).waitFor();
    await page.waitForTimeout(rest);
    await page.reload();
    await untilReady(sheet);
    expect(await nameOn(page)).toBe('From a friend');
    expect(await panel.count()).toBe(0);
  });

  test('that is cut or damaged is refused in words; places on the sheet are no links to designs', async () => {
    const link = await writeLink(design);
    const { page } = await openSheet({ after: link.slice(0, -30) });
    const told = page.getByText('The link was not opened.');
    await told.waitFor();
    await page
      .getByText(/damaged/)
      .first()
      .waitFor();
    expect(await nameOn(page)).toBe(examples[0]!.title);
    await page.getByRole('button', { name: 'close', exact: true }).click();
    await page.evaluate(() => {
      location.hash = '#source';
    });
    await page.waitForTimeout(300);
    expect(await told.count()).toBe(0);
    expect(await page.evaluate(() => location.hash)).toBe('#source');
  });

  test('is copied; where copying is refused it is selected to be copied by hand', async () => {
    const sheet = await openSheet();
    const { page, context } = sheet;
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.getByRole('button', { name: 'Share', exact: true }).click();
    const line = page.getByLabel('Link to this design');
    await expect.poll(() => line.inputValue()).toMatch(/#d1\./);
    await power(page).fill('33');
    const copy = page.getByRole('button', { name: 'Copy the link' });
    await expect.poll(async () => (await readLink(new URL(await line.inputValue()).hash)).ok).toBe(true);
    await copy.click();
    await page.getByText('Copied.').waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    const read = await readLink(new URL(copied).hash);
    expect(read.ok && read.design.amplifier.pep).toBe(33);

    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error('refused'));
    });
    await copy.click();
    await page.getByText(/The link is selected/).waitFor();
    const selected = await line.evaluate((el) => {
      const input = el as HTMLInputElement;
      return input.value.slice(input.selectionStart ?? 0, input.selectionEnd ?? 0);
    });
    expect(selected).toBe(copied);
  });
});

describe('a browser that does not keep', () => {
  test('is named, work goes on, and a file is offered', async () => {
    const { page } = await openSheet({
      prepare: async (page) => {
        await page.addInitScript(() => {
          Storage.prototype.setItem = () => {
            throw new DOMException('full', 'QuotaExceededError');
          };
        });
      },
    });
    await power(page).fill('22');
    await page.getByText('The storage of this browser is full').waitFor();
    const panel = await openDesigns(page);
    await panel.getByRole('button', { name: /^Pocket beacon/ }).click();
    await panel.getByText('only until this page is closed').first().waitFor();
    await panel
      .locator('.kept-row')
      .filter({ hasText: '22 W' })
      .getByRole('button', { name: 'Open' })
      .click();
    await expect.poll(() => power(page).inputValue()).toBe('22');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('alert').getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const saved = parseDesign(readFileSync(await download.path(), 'utf8'));
    expect(saved.ok && saved.design.amplifier.pep).toBe(22);
  });
});

test('control-Z takes typing back in the field first, then steps through the design', async () => {
  const { page } = await openSheet();
  const first = await power(page).inputValue();
  await page.locator('#field-sink-width').fill('120');
  await power(page).click();
  await page.keyboard.press('End');
  await page.keyboard.type('5');
  expect(await power(page).inputValue()).toBe(`${first}5`);
  await page.keyboard.press('Control+z');
  expect(await power(page).inputValue()).toBe(first);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Tab');
  const width = () => page.locator('#field-sink-width').inputValue();
  for (let step = 0; step < 3 && (await width()) === '120'; step += 1) await page.keyboard.press('Control+z');
  expect(await width()).not.toBe('120');
  await page.keyboard.press('Control+y');
  expect(await width()).toBe('120');
});
