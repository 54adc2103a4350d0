import { refuseOldNode } from './nodeVersion.mjs';

// `npm test`: everything that must hold, on a fresh clone too. The last line is "N passed, N failed".
// Everything else is imported after this line, since an old Node would stumble over it.
refuseOldNode();

const { mkdirSync, readFileSync, rmSync } = await import('node:fs');
const { join } = await import('node:path');
const { findBrowser, howToGetABrowser } = await import('./findBrowser.mjs');
const { ensureInstalled } = await import('./install.mjs');
const { buildPage, root, runTool } = await import('./run.mjs');
const { sumOf, tallyOfRun } = await import('./testReport.mjs');

/** @typedef {import('./testReport.mjs').Tally} Tally */

const pass = { passed: 1, failed: 0 };
const fail = { passed: 0, failed: 1 };

/** @type {{ name: string, tally: Tally }[]} */
const steps = [];

try {
  await runAll();
} catch (error) {
  console.error(error);
  steps.push({ name: 'the test run itself', tally: fail });
}
sayResult();

async function runAll() {
  const installed = await step('install', async () => ((await ensureInstalled()) ? null : fail));
  if (!installed) return;
  await step('types', async () => ((await runTool('typescript', ['--noEmit'])) === 0 ? pass : fail));
  await step('lint and format', async () =>
    (await runTool('biome', ['check', '--error-on-warnings', '.'])) === 0 ? pass : fail,
  );
  await step('engine and page tests', () => runTests(['engine', 'page']));
  const built = await step('build', async () => ((await buildPage()) === 0 ? pass : fail));
  if (!built) return;
  await step('build tests', () => runTests(['build']));
  await step('browser tests', browserTests);
}

/**
 * Runs a step and keeps its tally; null stands for nothing to count.
 * @param {string} name
 * @param {() => Promise<Tally | null>} work
 * @returns {Promise<boolean>} whether nothing failed
 */
async function step(name, work) {
  console.log(`\n== ${name}`);
  const tally = (await work()) ?? { passed: 0, failed: 0 };
  steps.push({ name, tally });
  if (tally.failed > 0) console.error(`${name}: FAILED`);
  return tally.failed === 0;
}

/**
 * @param {readonly string[]} projects
 * @returns {Promise<Tally>}
 */
async function runTests(projects) {
  const folder = join(root, 'node_modules', '.cache', 'test-reports');
  const file = join(folder, `${projects.join('-')}.json`);
  mkdirSync(folder, { recursive: true });
  rmSync(file, { force: true });
  const exitCode = await runTool('vitest', [
    'run',
    '--config',
    'src/build/vitest.config.ts',
    ...projects.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ]);
  return tallyOfRun(readReport(file), exitCode);
}

/** @param {string} file */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

async function browserTests() {
  let search;
  try {
    search = findBrowser();
  } catch (error) {
    console.error(/** @type {Error} */ (error).message);
    return fail;
  }
  if (search.browser) {
    console.log(`Browser: ${search.browser.name}`);
    return runTests(['browser']);
  }
  console.error(howToGetABrowser(search.tried));
  return process.env.ALLOW_NO_BROWSER === '1' ? null : fail;
}

function sayResult() {
  const { passed, failed } = sumOf(steps.map(({ tally }) => tally));
  const broken = steps.filter(({ tally }) => tally.failed > 0).map(({ name }) => name);
  if (broken.length > 0) console.log(`\nFailed: ${broken.join(', ')}`);
  process.exitCode = failed === 0 ? 0 : 1;
  console.log(`${broken.length > 0 ? '' : '\n'}${passed} passed, ${failed} failed`);
}
