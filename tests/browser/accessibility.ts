import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Rule {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

interface AxeGlobal {
  readonly axe: {
    run(
      where: string,
      options: object,
    ): Promise<{ readonly violations: readonly Rule[]; readonly passes: readonly Rule[] }>;
  };
}

/** Long enough to find the place. */
const shownLength = 120;

/**
 * Violations of WCAG 2.2 AA that a machine sees within a part of the page, each with where it stands.
 *
 * @param leastPasses rules that must have found something to be right with: a check of nothing is a fault too
 */
export async function violations(page: Page, where = 'html', leastPasses = 3): Promise<string[]> {
  // The sheet's policy forbids inline scripts, so the checker comes through the debugger, not the page.
  await page.evaluate(axeSource);
  const found = await page.evaluate(
    (part) =>
      (globalThis as unknown as AxeGlobal).axe.run(part, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
      }),
    where,
  );
  const idle =
    found.passes.length < leastPasses ? [`only ${found.passes.length} rules had anything to check`] : [];
  const places = (rule: Rule) => rule.nodes.map(({ html }) => html.slice(0, shownLength)).join(' ');
  return [...idle, ...found.violations.map((rule) => `${rule.id}: ${places(rule)}`)];
}
