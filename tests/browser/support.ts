import { existsSync } from 'node:fs';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Locator, type Page } from 'playwright-core';
import { findBrowser } from '../../src/build/findBrowser.mjs';
import { root } from '../../src/build/run.mjs';
import { createSheetServer, listen } from '../../src/build/serve.mjs';

/** The built page is served under a path of its own, since static hosts do so too. */
const prefix = '/a/sheet/';

/** How long the page may take to say that it is ready, ms; generous, since test machines are shared. */
const readyLimit = 30_000;

export interface SheetOptions {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly reducedMotion?: boolean;
  /** A language tag; the machine's own can be one that the browser itself refuses. */
  readonly locale?: string;
  readonly javascript?: boolean;
  /** A touch screen instead of a mouse. */
  readonly touch?: boolean;
  /** Device pixels per CSS pixel. */
  readonly scale?: number;
  /** What follows the page's address, such as "#d1...". */
  readonly after?: string;
  /** The sheet may keep itself for times without a network. Elsewhere that would only be work beside the test. */
  readonly keepsOffline?: boolean;
  /** Runs before the page is asked for: throttling, routes, scripts. */
  readonly prepare?: (page: Page, context: BrowserContext) => Promise<void>;
}

export interface OpenSheet {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  /**
   * What went wrong in the page so far: errors, complaints on its console, requests that failed or went to
   * another host. A test that is left with any fails; one that provokes them empties the list.
   */
  readonly troubles: string[];
}

let server: Server | undefined;
let browser: Browser | undefined;
const open: OpenSheet[] = [];

/** Opens the built page in a context of its own and waits until it is ready (without JavaScript: loaded). */
export async function openSheet(options: SheetOptions = {}): Promise<OpenSheet> {
  const address = await servedAt();
  browser ??= await launchBrowser();
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 900 },
    colorScheme: options.dark ? 'dark' : 'light',
    reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
    locale: options.locale ?? 'en-US',
    javaScriptEnabled: options.javascript ?? true,
    hasTouch: options.touch ?? false,
    deviceScaleFactor: options.scale ?? 1,
    serviceWorkers: options.keepsOffline ? 'allow' : 'block',
  });
  const page = await context.newPage();
  const sheet = { page, context, address, troubles: watch(page, address, options.javascript ?? true) };
  open.push(sheet);
  await options.prepare?.(page, context);
  await page.goto(address + (options.after ?? ''));
  if (options.javascript !== false) await untilReady(sheet);
  return sheet;
}

/** Waits until the page says that its figures stand. */
export async function untilReady(sheet: OpenSheet): Promise<void> {
  try {
    await sheet.page.waitForSelector('[data-ready="true"]', { state: 'attached', timeout: readyLimit });
  } catch {
    throw new Error(['The page did not become ready.', ...sheet.troubles].join('\n'));
  }
}

/** Opens the list of designs. On a phone it stands in the menu. */
export async function openDesigns(page: Page): Promise<Locator> {
  const menu = page.getByRole('button', { name: 'Menu', exact: true });
  if (await menu.isVisible()) await menu.click();
  const panel = page.getByRole('region', { name: 'Designs' });
  if (!(await panel.isVisible())) await page.getByRole('button', { name: 'Designs', exact: true }).click();
  await panel.waitFor();
  return panel;
}

/** Begins a new design: an example by its title, or "A fresh sheet". */
export async function beginWith(page: Page, title: string): Promise<void> {
  const panel = await openDesigns(page);
  await panel.locator('.beginnings').getByRole('button', { name: title }).click();
  await panel.getByRole('button', { name: 'Close', exact: true }).click();
}

/** Closes every open sheet; gives what went wrong in them. */
export async function closeSheets(): Promise<string[]> {
  const closing = open.splice(0);
  const troubles = closing.flatMap((sheet) => sheet.troubles.slice());
  await Promise.all(closing.map((sheet) => sheet.context.close()));
  return troubles;
}

/** Ends browser and server. */
export async function closeBrowser(): Promise<void> {
  await closeSheets();
  await browser?.close();
  server?.close();
  browser = undefined;
  server = undefined;
}

async function servedAt(): Promise<string> {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error('The page is not built yet: run `npm run build` first.');
  }
  if (!server) {
    server = createSheetServer(folder, { prefix });
    await listen(server, { port: 0 });
  }
  const where = server.address();
  if (where === null || typeof where === 'string') throw new Error('The server has no port.');
  return `http://127.0.0.1:${where.port}${prefix}`;
}

async function launchBrowser(): Promise<Browser> {
  const found = findBrowser().browser;
  if (!found) throw new Error('No browser was found; `npm test` says what was tried.');
  const environment = Object.entries({ ...process.env, ...found.env });
  return chromium.launch({
    executablePath: found.executablePath,
    env: Object.fromEntries(
      environment.flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])),
    ),
  });
}

function watch(page: Page, address: string, scripts: boolean): string[] {
  const troubles: string[] = [];
  const home = new URL(address).origin;
  page.on('pageerror', (error) => troubles.push(`error: ${error.message}`));
  page.on('console', (message) => {
    // That the tool blocks what a test did not ask for is no trouble of the page.
    const blocked = message.text().startsWith('Service Worker registration blocked');
    if (!blocked && (message.type() === 'error' || message.type() === 'warning')) {
      troubles.push(`console: ${message.text()}`);
    }
  });
  page.on('request', (request) => {
    const { origin, protocol } = new URL(request.url());
    const own = origin === home || protocol === 'data:' || protocol === 'blob:';
    if (!own) troubles.push(`request to another host: ${request.url()}`);
  });
  page.on('requestfailed', (request) => {
    // What the browser itself gives up is no fault of the sheet: a page that is left, scripts where none may run.
    const reason = request.failure()?.errorText ?? '';
    const wanted = scripts || !request.url().endsWith('.js');
    if (wanted && reason !== 'net::ERR_ABORTED') troubles.push(`request failed: ${request.url()} ${reason}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) troubles.push(`answer ${response.status()}: ${response.url()}`);
  });
  return troubles;
}
