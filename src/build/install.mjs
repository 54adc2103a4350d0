import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { root, run } from './run.mjs';

/**
 * @typedef {{ version?: string, integrity?: string, optional?: boolean, link?: boolean }} LockedPackage
 * @typedef {Record<string, LockedPackage>} LockedPackages
 */

/**
 * Whether what npm recorded as installed holds every package of the lock file in the locked version. Packages
 * meant for another machine are marked optional in the lock and may be absent.
 * @param {LockedPackages} locked
 * @param {LockedPackages} installed
 * @returns {boolean}
 */
export function installedMatches(locked, installed) {
  return Object.entries(locked).every(([path, wanted]) => {
    if (path === '') return true;
    const found = installed[path];
    if (!found) return wanted.optional === true;
    return found.version === wanted.version && found.integrity === wanted.integrity;
  });
}

/**
 * @param {string} path
 * @returns {LockedPackages | null}
 */
function readLock(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages;
  } catch {
    return null;
  }
}

function isInstalled() {
  const locked = readLock(join(root, 'package-lock.json'));
  // npm writes this record at the end of an install, so a broken-off install has none.
  const installed = readLock(join(root, 'node_modules', '.package-lock.json'));
  return locked !== null && installed !== null && installedMatches(locked, installed);
}

/**
 * Runs `npm ci` when node_modules is missing or does not agree with package-lock.json.
 * @returns {Promise<boolean>} whether the packages are there
 */
export async function ensureInstalled() {
  if (isInstalled()) return true;
  console.log('Installing packages (npm ci) ...');
  if ((await npm(['ci', '--include=dev', '--no-fund', '--no-audit'])) === 0) return true;
  console.error('npm ci failed; its own words stand above. The first install needs a network connection.');
  return false;
}

/** @param {readonly string[]} args */
function npm(args) {
  const runningNpm = process.env.npm_execpath ?? '';
  if (basename(runningNpm) === 'npm-cli.js') return run(process.execPath, [runningNpm, ...args]);
  return run('npm', args, { shell: process.platform === 'win32' });
}
