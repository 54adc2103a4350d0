import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { beginWith, openSheet } from './support.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeGlobal {
  readonly axe: {
    run(where: string, options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
  };
}

/** Accessibility faults of the station with all its answers in it. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const found = await (globalThis as unknown as AxeGlobal).axe.run('#answers', {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
  });
}

const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();

test('from a verdict of no to a design that fits, by the keyboard, and back', async () => {
  const { page } = await openSheet();
  page.setDefaultTimeout(60_000);
  await beginWith(page, 'Data-mode final');
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
  await answers.getByRole('button', { name: 'Show what matters' }).click();
  await answers.getByLabel('What matters most, ranked').waitFor();
  await answers.getByRole('button', { name: 'Find the value' }).click();
  await answers.getByText('No value of').waitFor();

  expect(await violations(page)).toEqual([]);
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
});
