import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './run.mjs';

/** @typedef {import('./findBrowser.mjs').Browser} Browser */

const packageFolder = join(root, 'node_modules', '@sparticuz', 'chromium');

/**
 * Chromium from the npm package, unpacked under node_modules/.cache: Linux on x64 only, and for tests of our
 * own files only, since its version stands still. Throws with a reason when it cannot be had.
 *
 * The package unpacks to the system's temporary folder under fixed names without regard to its version, so it
 * is given a folder of its own. It brings the network security libraries along but unpacks them only in a
 * cloud function's environment, which is therefore pretended. All this happens in a child process, since
 * importing the package changes the environment of the process that does it.
 * @returns {Browser}
 */
export function packagedBrowser() {
  if (process.platform !== 'linux' || process.arch !== 'x64') throw new Error('it runs on Linux x64 only');
  if (!existsSync(packageFolder)) throw new Error('the package is not installed');

  const { version } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8'));
  const home = join(root, 'node_modules', '.cache', `chromium-${version}`);
  if (!existsSync(home)) unpackInto(home);

  return {
    name: `packaged Chromium ${version}`,
    executablePath: join(home, 'chromium'),
    env: { LD_LIBRARY_PATH: join(home, 'al2023', 'lib'), FONTCONFIG_FILE: join(home, 'fonts.conf') },
  };
}

/** @param {string} home */
function unpackInto(home) {
  // Unpacked beside its place and moved there when whole, so that a broken-off attempt leaves nothing behind.
  const workshop = `${home}.${process.pid}`;
  mkdirSync(workshop, { recursive: true });
  const script =
    "const { default: chromium } = await import('@sparticuz/chromium'); await chromium.executablePath();";
  const child = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
    cwd: root,
    env: { ...process.env, TMPDIR: workshop, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    encoding: 'utf8',
  });
  if (child.status !== 0) {
    rmSync(workshop, { recursive: true, force: true });
    throw new Error(`it could not be unpacked: ${child.stderr.trim() || child.error?.message}`);
  }
  writeFileSync(join(workshop, 'fonts.conf'), fontsConfiguration(home));
  try {
    renameSync(workshop, home);
  } catch (error) {
    rmSync(workshop, { recursive: true, force: true });
    // Another process was quicker; what it unpacked is the same.
    if (!existsSync(home)) throw error;
  }
}

/**
 * The package's own font list names folders that do not exist here; without a single font, text on a canvas
 * is blank and pages with form fields crash.
 * @param {string} home
 */
function fontsConfiguration(home) {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <dir>${home}/fonts</dir>
  <cachedir>${home}/fonts-cache</cachedir>
</fontconfig>
`;
}
