import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeGlobal {
  readonly axe: {
    run(
      where: string,
      options: object,
    ): Promise<{
      readonly violations: { readonly id: string; readonly nodes: { readonly html: string }[] }[];
    }>;
  };
}

/** Violations of WCAG 2.2 AA that a machine sees within a part of the page, each with where it stands. */
export async function violations(page: Page, where: string): Promise<string[]> {
  // The sheet's policy forbids inline scripts, so the checker comes through the debugger, not the page.
  await page.evaluate(axeSource);
  return page.evaluate(async (part) => {
    const found = await (globalThis as unknown as AxeGlobal).axe.run(part, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
  }, where);
}
