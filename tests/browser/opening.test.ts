import { expect, test } from 'vitest';
import { openSheet } from './support.ts';

test('the page opens under a path of its own, with its name, and is ready', async () => {
  const { page } = await openSheet();
  expect(await page.title()).toMatch(/Heat and Rail$/);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Heat and Rail');
});

test('without JavaScript the page says what it is and what it needs', async () => {
  const { page } = await openSheet({ javascript: false });
  expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
  const words = page.locator('noscript');
  expect(await words.isVisible()).toBe(true);
  expect(await words.textContent()).toContain('needs JavaScript');
});

test('the security policy is in force: an inline script does not run', async () => {
  const sheet = await openSheet();
  const ran = await sheet.page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.documentElement.dataset.ran = "yes"';
    document.head.append(script);
    return document.documentElement.dataset.ran ?? 'no';
  });
  expect(ran).toBe('no');
  expect(sheet.troubles.join()).toContain('Content Security Policy');
  sheet.troubles.length = 0;
});

test('its pictures and its manifest are there', async () => {
  const { page, address } = await openSheet();
  const manifestAddress = new URL(
    (await page.locator('link[rel=manifest]').getAttribute('href')) ?? '',
    address,
  );
  const manifest = await (await page.request.get(manifestAddress.href)).json();
  const names: string[] = manifest.icons.map((icon: { src: string }) => icon.src);
  const links = await page
    .locator('link[rel*=icon]')
    .evaluateAll((all) => all.map((link) => link.getAttribute('href')));
  for (const name of [...names, ...links]) {
    const answer = await page.request.get(new URL(name ?? '', address).href);
    expect([name, answer.status(), answer.headers()['content-type']?.split('/')[0]]).toEqual([
      name,
      200,
      'image',
    ]);
  }
  expect(names.length).toBeGreaterThanOrEqual(3);
});
