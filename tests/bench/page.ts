import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { firstLoad, firstLoadLimit } from '../../src/build/firstLoad.mjs';
import { root } from '../../src/build/run.mjs';
import { closeBrowser, closeSheets, openSheet } from '../browser/support.ts';
import type { Figure } from './figures.ts';

/** Stands for an old laptop or a plain phone. */
const slowDown = 4;

const runs = 5;

/** ms */
const restBetweenStrokes = 1000;

/** The verdicts stand while the reader still takes in the heading. */
const verdictsTarget = 1500;

/** Then curves and drawings, ms. */
const readyTarget = 3000;

/** An answer within a tenth of a second is felt as immediate. */
const editTarget = 100;

declare global {
  interface Window {
    benchVerdicts?: number;
    benchReady?: number;
    benchRepaint?: number;
  }
}

interface Opening {
  /** From asking for the page, with nothing in the cache, until the verdicts stand, ms. */
  readonly verdicts: number;
  /** Until the page says that all of it stands, ms. */
  readonly ready: number;
  /** Fetched until the verdicts stood, kB as sent. */
  readonly fetched: number;
}

async function slowed(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowDown });
}

/** Runs in the page before its own scripts: notes when the verdicts stand and when everything does. */
function noteArrivals(): void {
  const watcher = new MutationObserver(() => {
    if (document.querySelector('.verdict')) window.benchVerdicts ??= performance.now();
    if (!document.querySelector('[data-ready="true"]')) return;
    window.benchReady = performance.now();
    watcher.disconnect();
  });
  watcher.observe(document, { subtree: true, childList: true, attributeFilter: ['data-ready'] });
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
      fetched = fresh.waitForSelector('.verdict').then(() => bytes / 1000);
    },
  });
  const [verdicts, ready] = await page.evaluate(() => [window.benchVerdicts, window.benchReady]);
  const result = { verdicts: verdicts ?? Number.NaN, ready: ready ?? Number.NaN, fetched: await fetched };
  await closeSheets();
  return result;
}

/**
 * Runs in the page: from the next key stroke until the frame after the verdicts have changed is on its way to
 * the screen.
 */
function noteRepaint(): void {
  delete window.benchRepaint;
  const verdicts = document.querySelector('.verdict-table');
  if (!verdicts) return;
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
  watcher.observe(verdicts, { subtree: true, childList: true, characterData: true });
  addEventListener(
    'keydown',
    (event) => {
      began = event.timeStamp;
    },
    { once: true, capture: true },
  );
}

/** Times between a key stroke in the output power and the repaint of the verdicts; ms. */
async function editTimes(): Promise<number[]> {
  const { page } = await openSheet({ prepare: slowed });
  const field = page.locator('#field-amplifier-pep');
  await field.click();
  await field.press('End');
  const times: number[] = [];
  // Each key changes the value: a digit is taken away and put back.
  for (let stroke = 0; stroke < 2 * runs; stroke += 1) {
    await page.evaluate(noteRepaint);
    await page.keyboard.press(stroke % 2 === 0 ? 'Backspace' : '5');
    await page.waitForFunction(() => window.benchRepaint !== undefined);
    times.push(await page.evaluate(() => window.benchRepaint ?? Number.NaN));
    // The curves follow the figures; the next key waits for them, as a person would.
    await page.waitForTimeout(restBetweenStrokes);
  }
  await closeSheets();
  return times;
}

/** What a browser must fetch before the page's script can run. */
export function weightFigures(): Figure[] {
  const { total } = firstLoad(join(root, 'dist'));
  return [{ name: 'first load, gzip', unit: 'kB', runs: [total / 1000], target: firstLoadLimit / 1000 }];
}

/**
 * How long the built page takes on a slow machine. The browser slows the page's own thread alone; the worker that
 * computes runs at full speed.
 */
export async function pageFigures(): Promise<Figure[]> {
  try {
    const openings: Opening[] = [];
    for (let run = 0; run < runs; run += 1) openings.push(await opening());
    return [...openingFigures(openings), editFigure(await editTimes())];
  } finally {
    await closeBrowser();
  }
}

function openingFigures(openings: readonly Opening[]): Figure[] {
  const figure = (name: string, unit: Figure['unit'], target: number, key: keyof Opening) => ({
    name,
    unit,
    target,
    runs: openings.map((one) => one[key]),
  });
  return [
    figure('fetched until the verdicts stand, gzip', 'kB', firstLoadLimit / 1000, 'fetched'),
    figure(`verdicts stand, page ${slowDown}x slower`, 'ms', verdictsTarget, 'verdicts'),
    figure(`all of the page ready, page ${slowDown}x slower`, 'ms', readyTarget, 'ready'),
  ];
}

function editFigure(times: readonly number[]): Figure {
  return {
    name: `key stroke to repaint, page ${slowDown}x slower`,
    unit: 'ms',
    runs: times,
    target: editTarget,
  };
}
