import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { writeDesign } from '../../shared/design/file.ts';
import { solve } from '../../src/engine/index.ts';
import { beginWith, openSheet } from './support.ts';

const slow = { timeout: 180_000 };

/** Pages of a PDF: objects of the type Page, as Chromium writes them. */
const pagesOf = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

async function open(page: Page, index: number): Promise<void> {
  const { design, key } = examples[index]!;
  const buffer = Buffer.from(writeDesign(design));
  if ((await page.getByLabel('Design files').count()) === 0)
    await page.getByRole('button', { name: 'Designs' }).click();
  await page
    .getByLabel('Design files')
    .setInputFiles({ name: `${key}.json`, mimeType: 'application/json', buffer });
  await expect.poll(() => page.getByLabel('Design name').inputValue()).toBe(design.name);
}

const untilSure = (page: Page) =>
  page.getByText('judged at the pessimistic edge').first().waitFor({ timeout: 60_000 });

/** What of the page stands on paper. */
const onPaper = () => {
  const flat = (text: string | undefined) => (text ?? '').replace(/\s+/g, ' ');
  const shown = [...document.querySelectorAll<HTMLElement>('.print-paper, main, .head, .lead')].filter(
    (each) => each.getClientRects().length > 0,
  );
  const paper = document.querySelector<HTMLElement>('.print-paper');
  const colour = paper ? getComputedStyle(paper).backgroundColor : '';
  return { shown: shown.map((each) => each.className), text: flat(paper?.textContent ?? undefined), colour };
};

test(
  'the build sheet of a design that does not fit, with all its cautions, has two pages at most',
  slow,
  async () => {
    const { page } = await openSheet({ width: 1280 });
    await beginWith(page, 'A fresh sheet');
    await page.locator('#field-converter-kind').selectOption('module');
    const typed = {
      'converter-outputVoltage': '28',
      'amplifier-pep': '25',
      'sink-width': '4 in',
      'sink-length': '75 mm',
      'sink-finCount': '9',
      'sink-finHeight': '22',
      'service-transmitShare': '40 %',
    };
    for (const [field, text] of Object.entries(typed)) await page.locator(`#field-${field}`).fill(text);
    await untilSure(page);
    await expect.poll(() => page.locator('.verdict-over').count()).toBeGreaterThan(2);
    for (const format of ['A4', 'Letter']) {
      const pages = pagesOf(await page.pdf({ format }));
      expect(pages, format).toBeGreaterThanOrEqual(1);
      expect(pages, format).toBeLessThanOrEqual(2);
    }
  },
);

test.each(examples.map(({ key }, index) => [key, index] as const))(
  'the build sheet of %s has one or two pages of A4 and of Letter, with verdicts, both edges and every caution',
  slow,
  async (_, index) => {
    const { page } = await openSheet({ dark: index % 2 === 1 });
    await open(page, index);
    await untilSure(page);
    for (const format of ['A4', 'Letter']) {
      const pages = pagesOf(await page.pdf({ format }));
      expect(pages, format).toBeGreaterThanOrEqual(1);
      expect(pages, format).toBeLessThanOrEqual(2);
    }
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    const { shown, text, colour } = await page.evaluate(onPaper);
    expect(shown).toEqual([expect.stringContaining('print-paper')]);
    expect(colour).toBe('rgb(255, 255, 255)');
    const { design } = examples[index]!;
    const solution = solve(design);
    expect(text).toContain(design.name);
    expect(text).toContain('nine of ten; judged at the pessimistic edge');
    expect(text).toContain('fine: within the limits');
    for (const verdict of solution.verdicts) expect(text).toContain(verdict.name);
    for (const caution of solution.cautions) expect(text).toContain(`${caution.title.replace(/:.*/, '')}`);
    expect(text).toMatch(/\d to \d+ °C/);
    // Nothing of a drawing or plot may be cut in two by the end of a page.
    const cut = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.print-paper svg.drawing, .print-paper .plot-svg, .print-paper .stream',
        ),
      ].every((each) => {
        const piece = each.closest('.build-piece');
        return piece !== null && getComputedStyle(piece).breakInside === 'avoid';
      }),
    );
    expect(cut).toBe(true);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  },
);

test('print asks for build sheet, labels or both, by keyboard', slow, async () => {
  const { page } = await openSheet();
  await page.evaluate(() => {
    window.print = () => {
      window.dispatchEvent(new Event('beforeprint'));
      const has = (selector: string) => document.querySelector(`.print-paper ${selector}`) !== null;
      document.documentElement.setAttribute(
        'data-printed',
        `${has('.build-sheet') ? 'build ' : ''}${has('.label') ? 'labels' : ''}`.trim(),
      );
      window.dispatchEvent(new Event('afterprint'));
    };
  });
  const opener = page.getByRole('button', { name: 'Print, figures' });
  await opener.focus();
  await page.keyboard.press('Enter');
  for (const [name, printed] of [
    ['Build sheet', 'build'],
    ['Labels', 'labels'],
    ['Both', 'build labels'],
  ] as const) {
    await page.getByRole('button', { name, exact: true }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('html').getAttribute('data-printed')).toBe(printed);
  }
  await page.keyboard.press('Escape');
  await expect.poll(() => opener.evaluate((each) => each === document.activeElement)).toBe(true);
  expect(await page.locator('.print-paper').count()).toBe(0);
});

test('labels alone take one page, under a foot of their own', slow, async () => {
  const { page } = await openSheet();
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.getByRole('button', { name: 'Print, figures' }).click();
  await page.getByRole('button', { name: 'Labels', exact: true }).click();
  await page.waitForTimeout(300);
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const [name, sheet] = await page.evaluate(() => {
    const labels = document.querySelector('.paper-labels')!;
    return [
      getComputedStyle(labels).getPropertyValue('page'),
      document.querySelector('.build-sheet') !== null,
    ];
  });
  expect([name, sheet]).toEqual(['labels', false]);
  expect(pagesOf(await page.pdf({ format: 'A4' }))).toBe(1);
});
