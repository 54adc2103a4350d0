import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { firstLoad, firstLoadLimit } from '../../src/build/firstLoad.mjs';
import { root } from '../../src/build/run.mjs';
import { closeSheets, openSheet } from '../browser/support.ts';
import type { Figure } from './figures.ts';

/** Stands for an old laptop or a plain phone. */
const slowDown = 4;

const runs = 5;

/** The 95th percentile of ten strokes would be the slowest of them, which is the machine's more often than the page's. */
const strokes = 24;

/** ms */
const restBetweenStrokes = 1000;

/** The verdicts stand and the sheet takes entries while the reader still takes in the heading. */
const answersTarget = 1200;

/** Then the stations below, curves and drawings, ms. */
const readyTarget = 3000;

/** An answer within a tenth of a second is felt as immediate. */
const editTarget = 100;

/** Nobody notices less: a line of text that moves by its height scores about this. */
const shiftTarget = 0.02;

/** A browser just begun, and a window just opened, are busy with themselves for a while, ms. */
const settling = 2000;

declare global {
  interface Window {
    benchVerdicts?: number;
    benchAnswers?: number;
    benchReady?: number;
    benchRepaint?: number;
    benchShift: number;
  }
}

interface Opening {
  /** From asking for the page, with nothing in the cache, until the verdicts stand, ms. */
  readonly verdicts: number;
  /** Until they have been painted, the fields of the first station stand and the page is free to take a key. */
  readonly answers: number;
  /** Until the page says that all of it stands, ms. */
  readonly ready: number;
  /** Fetched until the verdicts stood, kB as sent. */
  readonly fetched: number;
  /** Layout shift until then, in the browser's own score. */
  readonly shift: number;
}

async function slowed(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await page.waitForTimeout(settling);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowDown });
}

/** Runs in the page before its own scripts: notes when the verdicts stand, when the sheet answers and when all is there. */
function noteArrivals(): void {
  window.benchShift = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      window.benchShift += (entry as PerformanceEntry & { value: number }).value;
  }).observe({ type: 'layout-shift', buffered: true });
  let asked = false;
  const watcher = new MutationObserver(() => {
    const stands = document.querySelector('.verdict:not(.verdict-waiting)') !== null;
    if (stands) window.benchVerdicts ??= performance.now();
    if (stands && !asked && document.querySelector('.station input')) {
      asked = true;
      // Painted, and free for the next thing, when a message posted before the frame comes back after it.
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => {
          window.benchAnswers = performance.now();
        };
        channel.port2.postMessage(null);
      });
    }
    if (!document.querySelector('[data-ready="true"]')) return;
    window.benchReady = performance.now();
    watcher.disconnect();
  });
  watcher.observe(document, { subtree: true, childList: true, attributeFilter: ['data-ready', 'class'] });
}

async function opening(): Promise<Opening> {
  let bytes = 0;
  let fetched = Promise.resolve(Number.NaN);
  const { page } = await openSheet({
    prepare: async (fresh) => {
      await slowed(fresh);
      await fresh.addInitScript(noteArrivals);
      fresh.on('response', (response) => {
        bytes += Number(response.headers()['content-length'] ?? 0);
      });
      fetched = fresh.waitForSelector('.verdict:not(.verdict-waiting)').then(() => bytes / 1000);
    },
  });
  const found = await page.evaluate(() => ({
    verdicts: window.benchVerdicts ?? Number.NaN,
    answers: window.benchAnswers ?? Number.NaN,
    ready: window.benchReady ?? Number.NaN,
    shift: window.benchShift,
  }));
  const result = { ...found, fetched: await fetched };
  await closeSheets();
  return result;
}

/**
 * Runs in the page: from the next key stroke or choice until the frame after the first figure in sight has changed is
 * on its way to the screen. Verdicts and the figures in sight change together.
 */
function noteRepaint(): void {
  delete window.benchRepaint;
  let began = 0;
  const watcher = new MutationObserver(() => {
    if (began === 0) return;
    watcher.disconnect();
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        window.benchRepaint = performance.now() - began;
      };
      channel.port2.postMessage(null);
    });
  });
  for (const place of document.querySelectorAll('.verdict-table, .found-column'))
    watcher.observe(place, { subtree: true, childList: true, characterData: true });
  // No function has a name here: what runs in the page knows nothing of the helper that keeps names.
  for (const kind of ['keydown', 'change'])
    addEventListener(
      kind,
      (event) => {
        began ||= event.timeStamp;
      },
      { once: true, capture: true },
    );
}

/** Values that a builder turns: in the final, the sink, the air, the wire, and a choice that changes what is asked. */
const edits = [
  { words: 'output power', field: 'amplifier-pep' },
  { words: 'number of fins', field: 'sink-finCount' },
  { words: 'ambient', field: 'surroundings-ambient' },
  { words: 'source resistance', field: 'source-internalResistance' },
  { words: 'how the sink stands', field: 'sink-position' },
] as const;

/** Two edits in turn: a digit taken away and put back, or another choice and the first one again. */
async function turns(page: Page, field: Locator): Promise<readonly (() => Promise<unknown>)[]> {
  const value = await field.inputValue();
  if ((await field.evaluate((element) => element.tagName)) === 'SELECT') {
    const options = await field
      .locator('option')
      .evaluateAll((all) => all.map((one) => one.getAttribute('value')));
    const other = options.find((option) => option !== null && option !== value) ?? value;
    return [() => field.selectOption(other), () => field.selectOption(value)];
  }
  await field.click();
  await field.press('End');
  return [() => page.keyboard.press('Backspace'), () => page.keyboard.press(value.slice(-1))];
}

/** Times between an edit and the repaint of the figures, ms. */
async function editTimes(page: Page, name: string): Promise<number[]> {
  const field = page.locator(`#field-${name}`);
  await field.scrollIntoViewIfNeeded();
  const both = await turns(page, field);
  await page.waitForTimeout(restBetweenStrokes);
  const times: number[] = [];
  for (let stroke = 0; stroke < strokes; stroke += 1) {
    await page.evaluate(noteRepaint);
    await both[stroke % 2]?.();
    // Asked now and then: asked at every frame, as is usual, the page would make frames that no reader asks for.
    await page.waitForFunction(() => window.benchRepaint !== undefined, undefined, { polling: 200 });
    times.push(await page.evaluate(() => window.benchRepaint ?? Number.NaN));
    // The curves follow the figures; the next key waits for them, as a person would.
    await page.waitForTimeout(restBetweenStrokes);
  }
  return times;
}

/** How long the figures in sight take to follow an edit, on the same slow machine. */
export async function editFigures(): Promise<Figure[]> {
  const { page } = await openSheet({ prepare: slowed });
  await page.waitForTimeout(settling);
  const found: Figure[] = [];
  for (const { words, field } of edits) {
    found.push({
      name: `${words}: edit to repaint, page ${slowDown}x slower`,
      unit: 'ms',
      runs: await editTimes(page, field),
      judged: 'p95',
      target: editTarget,
    });
  }
  await closeSheets();
  return found;
}

/** What a browser must fetch before the page's script can run. */
export function weightFigures(): Figure[] {
  const { total } = firstLoad(join(root, 'dist'));
  return [{ name: 'first load, gzip', unit: 'kB', runs: [total / 1000], target: firstLoadLimit / 1000 }];
}

/** How long the page takes to come on a slow machine. The browser slows the page's own thread alone, not the worker. */
export async function openingFigures(): Promise<Figure[]> {
  const openings: Opening[] = [];
  for (let run = 0; run < runs; run += 1) openings.push(await opening());
  const figure = (name: string, unit: Figure['unit'], target: number, key: keyof Opening) => ({
    name,
    unit,
    target,
    runs: openings.map((one) => one[key]),
  });
  return [
    figure('fetched until the verdicts stand, gzip', 'kB', firstLoadLimit / 1000, 'fetched'),
    figure(`verdicts stand, page ${slowDown}x slower`, 'ms', answersTarget, 'verdicts'),
    figure(
      `verdicts stand and the sheet takes entries, page ${slowDown}x slower`,
      'ms',
      answersTarget,
      'answers',
    ),
    figure(`all of the page ready, page ${slowDown}x slower`, 'ms', readyTarget, 'ready'),
    figure('layout shift while the page comes', 'of the screen', shiftTarget, 'shift'),
  ];
}
