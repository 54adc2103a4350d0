import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';
import { packagedBrowser } from './packagedBrowser.mjs';

/**
 * @typedef {{ name: string, executablePath: string, env: Record<string, string> }} Browser env: to be added for this browser alone
 * @typedef {{ browser: Browser | null, tried: string[] }} Search
 */

/** Long enough for a first start from a slow disk. */
const startLimit = 20_000;

/**
 * Finds a Chromium-like browser for the tests: the one CHROMIUM_PATH names, else one installed on this machine,
 * else the packaged one. Throws when CHROMIUM_PATH names one that does not run: whoever set it meant it.
 * @param {{ environment?: NodeJS.ProcessEnv, platform?: NodeJS.Platform, packaged?: () => Browser }} [options]
 * @returns {Search}
 */
export function findBrowser(options = {}) {
  const environment = options.environment ?? process.env;
  const platform = options.platform ?? process.platform;

  const named = environment.CHROMIUM_PATH ?? '';
  if (named !== '') {
    const trouble = troubleWith(named, platform);
    if (trouble) throw new Error(`CHROMIUM_PATH is ${named}, but ${trouble}. Correct it or unset it.`);
    return { browser: { name: named, executablePath: named, env: {} }, tried: [named] };
  }

  const tried = [];
  const missing = [];
  for (const path of installedPaths(platform, environment)) {
    if (!existsSync(path)) {
      missing.push(path);
      continue;
    }
    const trouble = troubleWith(path, platform);
    if (!trouble) return { browser: { name: path, executablePath: path, env: {} }, tried: [...tried, path] };
    tried.push(`${path}: ${trouble}`);
  }
  const names = new Set(missing.map((path) => path.split(/[\\/]/).at(-1)));
  tried.push(`not in PATH nor in the usual folders: ${[...names].join(', ')}`);

  try {
    const browser = (options.packaged ?? packagedBrowser)();
    return { browser, tried: [...tried, browser.name] };
  } catch (error) {
    tried.push(`packaged Chromium: ${/** @type {Error} */ (error).message}`);
    return { browser: null, tried };
  }
}

/**
 * Where browsers are usually installed.
 * @param {NodeJS.Platform} platform
 * @param {NodeJS.ProcessEnv} environment
 * @returns {string[]}
 */
export function installedPaths(platform, environment) {
  if (platform === 'darwin') return macPaths(environment);
  if (platform === 'win32') return windowsPaths(environment);
  return linuxPaths(environment);
}

/** @param {NodeJS.ProcessEnv} environment */
function linuxPaths(environment) {
  const names = [
    'chromium',
    'chromium-browser',
    'google-chrome',
    'google-chrome-stable',
    'microsoft-edge',
    'chrome',
  ];
  const folders = new Set(['/usr/bin', '/snap/bin', ...(environment.PATH ?? '').split(delimiter)]);
  const paths = [...folders].filter(isAbsolute).flatMap((folder) => names.map((name) => join(folder, name)));
  return [...paths, '/opt/google/chrome/chrome', '/opt/microsoft/msedge/msedge'];
}

/** @param {NodeJS.ProcessEnv} environment */
function macPaths(environment) {
  const programs = [
    'Google Chrome.app/Contents/MacOS/Google Chrome',
    'Chromium.app/Contents/MacOS/Chromium',
    'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ];
  const folders = ['/Applications', join(environment.HOME ?? '/', 'Applications')];
  return folders.flatMap((folder) => programs.map((program) => join(folder, program)));
}

/** @param {NodeJS.ProcessEnv} environment */
function windowsPaths(environment) {
  const programs = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'];
  const folders = [environment.PROGRAMFILES, environment['PROGRAMFILES(X86)'], environment.LOCALAPPDATA];
  return folders.flatMap((folder) => (folder ? programs.map((program) => `${folder}\\${program}`) : []));
}

/**
 * What is wrong with a browser, or an empty string. On Windows asking for the version would open a window.
 * @param {string} path
 * @param {NodeJS.Platform} platform
 */
function troubleWith(path, platform) {
  if (!existsSync(path)) return 'there is no such file';
  if (platform === 'win32') return '';
  const answer = spawnSync(path, ['--version'], { encoding: 'utf8', timeout: startLimit });
  if (answer.error) return `it does not start (${answer.error.message})`;
  return answer.status === 0 ? '' : `it ends with code ${answer.status} when asked for its version`;
}

/**
 * What to tell when there is no browser.
 * @param {readonly string[]} tried
 */
export function howToGetABrowser(tried) {
  return [
    'BROWSER TESTS NOT RUN: no Chromium, Chrome or Edge was found. The other tests did run.',
    'Tried:',
    ...tried.map((line) => `  ${line}`),
    'Install one (Debian and Ubuntu: apt-get install chromium; elsewhere: Chrome, Edge or Chromium from their makers),',
    'or set CHROMIUM_PATH to one you have. ALLOW_NO_BROWSER=1 lets the run pass without these tests.',
  ].join('\n');
}
