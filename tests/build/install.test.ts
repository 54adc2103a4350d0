import { expect, test } from 'vitest';
import { installedMatches } from '../../src/build/install.mjs';

const locked = {
  '': { version: '0.1.0' },
  'node_modules/one': { version: '1.0.0', integrity: 'sha512-a' },
  'node_modules/otherMachine': { version: '2.0.0', integrity: 'sha512-b', optional: true },
};

test('what npm ci leaves behind agrees, with or without the packages of other machines', () => {
  expect(installedMatches(locked, { 'node_modules/one': { version: '1.0.0', integrity: 'sha512-a' } })).toBe(
    true,
  );
  expect(installedMatches(locked, locked)).toBe(true);
});

test('a package that is missing, of another version or of other content asks for an install', () => {
  expect(installedMatches(locked, {})).toBe(false);
  expect(installedMatches(locked, { 'node_modules/one': { version: '1.0.1', integrity: 'sha512-a' } })).toBe(
    false,
  );
  expect(installedMatches(locked, { 'node_modules/one': { version: '1.0.0', integrity: 'sha512-c' } })).toBe(
    false,
  );
});
