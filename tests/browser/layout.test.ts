import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSheet } from './support.ts';

/** Where a heading stands below the strip of verdicts that covers the top of the screen, px. */
const belowStrip = (page: Page, id: string) =>
  page.evaluate((station) => {
    const strip = document.querySelector('.verdict-bar')!.getBoundingClientRect();
    return document.querySelector(`#${station} h2`)!.getBoundingClientRect().top - strip.bottom;
  }, id);

describe('a link to a station', () => {
  test.each([390, 1440])('%i px wide: leads there though drawings above it come later', async (width) => {
    const { page } = await openSheet({ width, after: '#sink' });
    await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 20_000 });
    const at = async (id: string) => {
      const distance = await belowStrip(page, id);
      return distance >= 0 && distance < 120;
    };
    await expect.poll(() => at('sink')).toBe(true);
    await page.evaluate(() => {
      location.hash = '#people';
    });
    await expect.poll(() => at('people')).toBe(true);
  });

  test('leaves a reader alone who has moved on', async () => {
    const { page } = await openSheet({ after: '#sink' });
    await page.mouse.wheel(0, 1500);
    // A busy browser glides there in its own time.
    await expect.poll(() => belowStrip(page, 'sink'), { timeout: 10_000 }).toBeLessThan(-500);
    await page.evaluate(() => document.body.append(document.createElement('p')));
    await page.waitForTimeout(300);
    expect(await belowStrip(page, 'sink')).toBeLessThan(-500);
  });
});

test('what the reader looks at stays where it is when something arrives above it', async () => {
  const { page } = await openSheet();
  const service = () =>
    page.evaluate(() => document.querySelector('#service h2')!.getBoundingClientRect().top);
  await page.evaluate(() => document.querySelector('#service')!.scrollIntoView());
  await page.waitForTimeout(300);
  const before = await service();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.evaluate(() => {
    const arrived = document
      .querySelector('#source .found-column')!
      .appendChild(document.createElement('div'));
    arrived.style.height = '3000px';
  });
  await expect
    .poll(() => page.evaluate(() => document.documentElement.scrollHeight))
    .toBeGreaterThan(height + 2000);
  await page.waitForTimeout(300);
  expect(Math.abs((await service()) - before)).toBeLessThan(1);
});

test.each([390, 1280])(
  '%i px wide: the field that is typed in stays where it is while plots above it go and come back',
  async (width) => {
    const { page } = await openSheet({ width });
    await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 30_000 });
    const field = page.locator('#field-sink-finCount');
    const at = async () => (await field.boundingBox())!.y;
    await field.focus();
    await page.evaluate((by) => scrollBy(0, by), (await at()) - 450);
    await page.waitForTimeout(800);
    const [before, plots] = [await at(), await page.locator('.plot').count()];
    await field.press('Control+A');
    // Eighty fins find no room on the sheet's first sink: there is no result.
    for (const digit of '80') await page.keyboard.press(digit);
    await expect.poll(() => page.locator('.plot').count(), { timeout: 20_000 }).toBeLessThan(plots);
    await page.waitForTimeout(300);
    expect(Math.abs((await at()) - before)).toBeLessThan(3);
    await page.keyboard.press('Backspace');
    await expect.poll(() => page.locator('.plot').count(), { timeout: 20_000 }).toBe(plots);
    await page.waitForTimeout(300);
    expect(Math.abs((await at()) - before)).toBeLessThan(3);
  },
);

test('who leaves the field that was typed in behind, by whatever way, stays where they go', async () => {
  const { page } = await openSheet();
  await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 30_000 });
  const field = page.locator('#field-sink-finCount');
  await field.click();
  await field.press('Control+A');
  for (const digit of '80') await page.keyboard.press(digit);
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  await page.waitForTimeout(2500);
  expect(await page.evaluate(() => scrollY)).toBe(0);
});

/** Things that reach out of their station by more than an outline, where a station cuts them off. */
const cutOff = (page: Page) =>
  page.evaluate(() => {
    for (const group of document.querySelectorAll('details')) group.open = true;
    return [...document.querySelectorAll('.station')].flatMap((station) => {
      const room = station.getBoundingClientRect();
      return [...station.querySelectorAll('*')].flatMap((thing) => {
        // What scrolls, or is only read, has its own bounds.
        if (thing.closest('.table-scroll, .only-read, .working, .uplot')) return [];
        const box = thing.getBoundingClientRect();
        const out = Math.max(
          room.left - box.left,
          box.right - room.right,
          room.top - box.top,
          box.bottom - room.bottom,
        );
        return box.width > 0 && out > 2 ? [`${station.id}: ${thing.tagName} ${thing.className}`] : [];
      });
    });
  });

test('no station cuts off what stands in it', async () => {
  const { page } = await openSheet({ width: 1440 });
  for (const width of [1440, 820, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await page.waitForTimeout(500);
    expect(await cutOff(page), `${width} px wide`).toEqual([]);
  }
});

test('the strip of verdicts shows its words whole, and less high than a jump leaves room for', async () => {
  const { page } = await openSheet({ width: 1440, after: '#people' });
  await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 20_000 });
  const strip = page.locator('.verdict-bar');
  await strip.waitFor();
  const cut = await strip.evaluate((bar) =>
    [...bar.querySelectorAll('.bar-headline')]
      .filter((line) => line.scrollWidth > line.clientWidth + 1)
      .map((line) => line.textContent),
  );
  expect(cut).toEqual([]);
  const [high, room] = await strip.evaluate((bar) => [
    bar.getBoundingClientRect().height,
    Number.parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop),
  ]);
  expect(high).toBeLessThan(room!);
});

/** Choices whose words are wider than the room they have. */
const cutChoices = (page: Page) =>
  page.evaluate(() => {
    for (const group of document.querySelectorAll<HTMLDetailsElement>('details.more')) group.open = true;
    const pen = document.createElement('canvas').getContext('2d')!;
    return [...document.querySelectorAll<HTMLSelectElement>('main .field-choice select')].flatMap(
      (choice) => {
        const words = choice.selectedOptions[0]?.textContent ?? '';
        pen.font = getComputedStyle(choice).font;
        // Beside the words stands the arrow.
        const needed = pen.measureText(words).width + 16;
        return choice.clientWidth > 0 && needed > choice.clientWidth + 1 ? [`${choice.id}: ${words}`] : [];
      },
    );
  });

test('the strip of verdicts says that its words are nominal until their band has come', async () => {
  const { page } = await openSheet();
  await page.getByText('judged at the pessimistic edge').waitFor({ timeout: 30_000 });
  const power = page.locator('#field-amplifier-pep');
  await power.click();
  const keyDown = page.locator('.verdict-bar a').nth(2);
  const told = () => keyDown.locator('.bar-headline').textContent();
  const asked = () =>
    keyDown.locator('.state').evaluate((state) => getComputedStyle(state, '::after').content.includes('?'));
  await expect.poll(told, { timeout: 20_000 }).not.toContain('nominally');
  expect(await asked()).toBe(false);
  await power.fill('40');
  await expect.poll(told, { interval: 10 }).toContain('nominally');
  expect(await asked()).toBe(true);
  await expect.poll(told, { timeout: 20_000 }).not.toContain('nominally');
  expect(await asked()).toBe(false);
});

test.each([820, 1200, 1440])('%i px wide: choices show their words whole', async (width) => {
  const { page } = await openSheet({ width });
  await page.locator('#field-amplifier-biasTracking').waitFor({ state: 'attached' });
  expect(await page.locator('main .field-choice select').count()).toBeGreaterThan(20);
  expect(await cutChoices(page)).toEqual([]);
});

test('state words stand on the line of the words beside them', async () => {
  const { page } = await openSheet({ width: 1440 });
  const off = await page.evaluate(() => {
    const bottom = (element: Element) => {
      const range = document.createRange();
      range.selectNodeContents(element.lastChild!);
      return range.getBoundingClientRect().bottom;
    };
    return [...document.querySelectorAll('.verdict')].map(
      (row) => bottom(row.querySelector('.state')!) - bottom(row.querySelector('.verdict-name')!),
    );
  });
  expect(off).toHaveLength(5);
  for (const distance of off) expect(Math.abs(distance)).toBeLessThan(1);
});

test('the menu of a phone has even gaps, and a panel closes under the button that opened the menu', async () => {
  const { page } = await openSheet({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Menu', exact: true }).click();
  await page.getByRole('button', { name: 'Print, figures' }).click();
  const ends = (name: string) =>
    page.getByRole('button', { name, exact: true }).evaluate((button) => {
      const range = document.createRange();
      range.selectNodeContents(button);
      const { left, right, top } = range.getBoundingClientRect();
      return { left, right, top };
    });
  const row: { left: number; right: number; top: number }[] = [];
  for (const name of ['Undo', 'Redo', 'Designs', 'Save', 'Share']) row.push(await ends(name));
  const gaps = row.slice(1).map((each, index) => each.left - row[index]!.right);
  expect(new Set(row.map(({ top }) => top)).size).toBe(1);
  expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThan(1.5);
  expect(Math.abs((await ends('Close')).right - (await ends('Close menu')).right)).toBeLessThan(1);
});
