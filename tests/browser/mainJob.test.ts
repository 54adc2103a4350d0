import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { startDesign } from '../../shared/design/start.ts';
import { band } from '../../src/engine/index.ts';
import { findUnit, fromSI, metricUnits } from '../../src/engine/quantity/units.ts';
import { fieldId } from '../../src/page/parts/fieldId.ts';
import { applies } from '../../src/page/state/applies.ts';
import { knownField, leafAt } from '../../src/page/state/fields.ts';
import { beginWith, openSheet } from './support.ts';

/** The first example: a 60 W final on a raised rail, typed in by hand from an empty sheet. */
const wanted = examples[0]!.design;

/** Paths of all values in which two designs differ, in the order of the sheet. */
function differences(from: unknown, to: unknown, path = ''): string[] {
  if (typeof to !== 'object' || to === null) return from === to ? [] : [path];
  return Object.entries(to).flatMap(([key, value]) =>
    differences((from as Record<string, unknown> | null)?.[key], value, path ? `${path}.${key}` : key),
  );
}

/** What a builder would type: the number with its usual unit. */
function typedText(path: string): string {
  const value = leafAt(wanted, path);
  const spec = knownField(path);
  if (spec.kind !== 'number' || typeof value !== 'number') return String(value ?? '');
  const unit = findUnit(spec.dimension, metricUnits[spec.dimension]);
  const number = Number(fromSI(value, unit).toPrecision(9));
  return `${number} ${unit.symbol}`.trim();
}

/** Opens whatever is folded around a field. */
async function unfold(page: Page, path: string): Promise<void> {
  await page.locator(`#${fieldId(path)}`).evaluate((element) => {
    for (let at = element.parentElement; at; at = at.parentElement) {
      if (at instanceof HTMLDetailsElement) at.open = true;
    }
  });
}

async function enter(page: Page, path: string): Promise<void> {
  const field = page.locator(`#${fieldId(path)}`);
  if ((await field.count()) === 0 && /\.points\.\d+\./.test(path)) {
    await page.getByRole('button', { name: 'add a point' }).click();
  }
  await unfold(page, path);
  const spec = knownField(path);
  if (spec.kind === 'choice') await field.selectOption(String(leafAt(wanted, path)));
  else if (spec.kind === 'flag') await field.setChecked(leafAt(wanted, path) === true);
  else await field.fill(typedText(path));
}

/** Words without the sheet's narrow spaces. */
const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();

/** Some hundred entries typed on a busy machine, ms. */
const patience = 150_000;

test('the main job: from an empty sheet, by typing, to the verdicts of the engine', {
  timeout: patience,
}, async () => {
  const { page } = await openSheet();
  page.setDefaultTimeout(10_000);
  await beginWith(page, 'A fresh sheet');
  await page.getByLabel('Design name').waitFor();
  expect(await page.getByLabel('Design name').inputValue()).toBe(startDesign.name);

  // Choices first: they decide which other fields there are.
  const paths = differences(startDesign, wanted).filter((path) => applies(wanted, path));
  const choices = paths.filter((path) => knownField(path).kind === 'choice');
  const others = paths.filter((path) => knownField(path).kind !== 'choice');
  expect(others.length).toBeGreaterThan(20);
  for (const path of [...choices, ...others]) await enter(page, path);

  // The verdicts that stand once the page knows how sure its figures are.
  const found = band(wanted);
  if (!found.ok) throw new Error(found.reason.sentence);
  const { verdicts } = found.value;
  await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 20_000 });
  for (const verdict of verdicts) {
    const words = plain(verdict.headline);
    await page.getByText(words, { exact: false }).first().waitFor({ timeout: 5000 });
  }
  expect(plain(await page.locator('main').textContent())).toContain(plain(verdicts[2]!.sentence));

  // Kept across a reload, with every figure.
  await page.waitForTimeout(400);
  await page.reload();
  await page.waitForSelector('[data-ready="true"]', { state: 'attached' });
  expect(await page.getByLabel('Design name').inputValue()).toBe(wanted.name);
  await page.getByText(plain(verdicts[2]!.headline)).first().waitFor({ timeout: 20_000 });
});
