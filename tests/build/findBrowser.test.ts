import { describe, expect, test } from 'vitest';
import { findBrowser, howToGetABrowser, installedPaths } from '../../src/build/findBrowser.mjs';

const packaged = () => ({ name: 'packaged', executablePath: '/packaged/chromium', env: { A: '1' } });
const noPackage = () => {
  throw new Error('it runs on Linux x64 only');
};

// Stands for a browser: it answers when asked for its version.
const runs = process.execPath;

describe('the order of the search', () => {
  test('CHROMIUM_PATH comes first', () => {
    const { browser } = findBrowser({ environment: { CHROMIUM_PATH: runs }, packaged });
    expect(browser?.executablePath).toBe(runs);
  });

  test('a CHROMIUM_PATH that does not run stops the search', () => {
    expect(() => findBrowser({ environment: { CHROMIUM_PATH: '/no/such/browser' }, packaged })).toThrow(
      'CHROMIUM_PATH is /no/such/browser, but there is no such file',
    );
  });

  test('then what is installed, then the package', () => {
    const nothingInstalled = { environment: {}, platform: 'darwin' as const };
    expect(findBrowser({ ...nothingInstalled, packaged }).browser?.name).toBe('packaged');
    const none = findBrowser({ ...nothingInstalled, packaged: noPackage });
    expect(none.browser).toBeNull();
    expect(none.tried.join('\n')).toContain('Google Chrome');
    expect(none.tried.join('\n')).toContain('Linux x64 only');
  });
});

test('without a browser the message says so, what was tried, and what to do', () => {
  const words = howToGetABrowser(['packaged Chromium: no']);
  for (const part of [
    'BROWSER TESTS NOT RUN',
    'packaged Chromium: no',
    'apt-get install chromium',
    'CHROMIUM_PATH',
  ]) {
    expect(words).toContain(part);
  }
});

test.each([
  ['linux', { PATH: '/opt/own:relative' }, '/opt/own/chromium'],
  ['darwin', { HOME: '/Users/b' }, '/Users/b/Applications/Chromium.app/Contents/MacOS/Chromium'],
  ['win32', { LOCALAPPDATA: 'C:\\L' }, 'C:\\L\\Google\\Chrome\\Application\\chrome.exe'],
] as const)('on %s the usual places are looked at', (platform, environment, path) => {
  const paths = installedPaths(platform, environment);
  expect(paths).toContain(path);
  expect(paths.filter((other) => other.startsWith('relative'))).toEqual([]);
});
