import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../src/build/run.mjs';
import { securityPolicy } from '../../src/build/securityPolicy.ts';

const page = readFileSync(join(root, 'dist', 'index.html'), 'utf8');

test('the policy is the first thing in the head', () => {
  const head = /<head>\s*(<[^>]*>)/.exec(page)?.[1] ?? '';
  expect(head).toContain('http-equiv="Content-Security-Policy"');
  expect(head.replaceAll('&#39;', "'")).toContain(securityPolicy);
});

test('the policy allows no inline and no evaluated code and no other host', () => {
  for (const word of ['unsafe', 'http', '*', 'nonce']) expect(securityPolicy).not.toContain(word);
  expect(securityPolicy).toMatch(/^default-src 'none';/);
});

test('the page holds no inline script, style or handler', () => {
  const scripts = page.match(/<script\b[^>]*>[^<]*/g) ?? [];
  expect(scripts.length).toBeGreaterThan(0);
  for (const script of scripts) expect(script).toMatch(/\bsrc="[^"]+"[^>]*>\s*$/);
  expect(page).not.toMatch(/<style\b/);
  expect(page).not.toMatch(/<[^>]+\s(style|on\w+)=/);
});

test('addresses in the page are relative, so that it works from any path', () => {
  const addresses = [...page.matchAll(/\b(?:src|href)="([^"]*)"/g)].map((match) => match[1] ?? '');
  expect(addresses.length).toBeGreaterThan(4);
  for (const address of addresses) expect(address).toMatch(/^\.\//);
});
