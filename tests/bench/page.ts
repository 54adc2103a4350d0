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

/** Ready while the reader still takes in the heading. */
const readyTarget = 1500;

/** An answer within a tenth of a second is felt as immediate. */
const editTarget = 100;

declare global {
  interface Window {
    benchReady?: number;
    benchRepaint?: number;
  }
}

async function slowed(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowDown });
}

/** Runs in the page before its own scripts: notes when it says that its figures stand. */
function noteReady(): void {
  const watcher = new MutationObserver(() => {
    if (!document.querySelector('[data-ready="true"]')) return;
    window.benchReady = performance.now();
    watcher.disconnect();
  });
  watcher.observe(document, { subtree: true, childList: true, attributeFilter: ['data-ready'] });
}

/** Time from asking for the page, with nothing in the cache, until its figures stand; ms. */
async function readyTime(): Promise<number> {
  const { page } = await openSheet({
    prepare: async (fresh) => {
      await slowed(fresh);
      await fresh.addInitScript(noteReady);
    },
  });
  const time = await page.evaluate(() => window.benchReady ?? Number.NaN);
  await closeSheets();
  return time;
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

/** How long the built page takes on a slow machine. */
export async function pageFigures(): Promise<Figure[]> {
  try {
    const ready: number[] = [];
    for (let run = 0; run < runs; run += 1) ready.push(await readyTime());
    return timesOf(ready, await editTimes());
  } finally {
    await closeBrowser();
  }
}

function timesOf(ready: readonly number[], edit: readonly number[]): Figure[] {
  return [
    { name: `page ready, CPU ${slowDown}x slower`, unit: 'ms', runs: ready, target: readyTarget },
    { name: `key stroke to repaint, CPU ${slowDown}x slower`, unit: 'ms', runs: edit, target: editTarget },
  ];
}
