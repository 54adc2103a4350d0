import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type BuiltFile, offlineHead, offlineScript } from '../../src/build/offline.ts';
import { root } from '../../src/build/run.mjs';

const folder = join(root, 'dist');
const script = readFileSync(join(folder, offlineScript), 'utf8');

function listed(): readonly string[] {
  const names = /^const offlineFiles=(\[.*?\]);/.exec(script)?.[1];
  return JSON.parse(names ?? '[]') as string[];
}

test('every file a browser may ask for is listed, and every listed file is there', () => {
  const assets = readdirSync(join(folder, 'assets')).map((name) => `assets/${name}`);
  const others = readdirSync(folder).filter((name) => /\.(html|svg|png|webmanifest)$/.test(name));
  expect(assets.length).toBeGreaterThan(20);
  expect(others).toContain('index.html');
  expect([...listed()].sort()).toEqual([...assets, ...others].sort());
  for (const name of listed()) expect(existsSync(join(folder, name)), name).toBe(true);
});

test('addresses are relative, so that it works from any path', () => {
  expect(listed().length).toBeGreaterThan(0);
  for (const name of listed()) expect(name).toMatch(/^[^/.:][^:]*$/);
});

test('the script stands alone: it imports and exports nothing', () => {
  expect(script).not.toMatch(/\b(import|export)\b[\s{*"'(]/);
});

test('the manifest names relative addresses and icons that are there, one of them to be masked, in both sizes', () => {
  const manifest = JSON.parse(readFileSync(join(folder, 'manifest.webmanifest'), 'utf8'));
  expect(manifest.start_url).toBe('./');
  expect(manifest.scope).toBe('./');
  const icons = manifest.icons as { src: string; sizes: string; purpose?: string }[];
  for (const { src } of icons) expect(existsSync(join(folder, src)), src).toBe(true);
  const sizes = (purpose: string | undefined) =>
    icons.filter((icon) => icon.purpose === purpose).map((icon) => icon.sizes);
  expect(sizes(undefined)).toEqual(expect.arrayContaining(['192x192', '512x512']));
  expect(sizes('maskable')).toEqual(expect.arrayContaining(['192x192', '512x512']));
});

describe('the edition', () => {
  const page: BuiltFile = { name: 'index.html', content: '<p>' };
  const icon: BuiltFile = { name: 'icon.svg', content: '<svg>' };
  const editionOf = (files: readonly BuiltFile[]) => /offlineEdition="([^"]+)"/.exec(offlineHead(files))?.[1];

  test('changes with the content of any file, not with their order', () => {
    const one = editionOf([page, icon]);
    expect(one).toMatch(/^[\w-]{12}$/);
    expect(editionOf([icon, page])).toBe(one);
    expect(editionOf([page, { ...icon, content: '<svg/>' }])).not.toBe(one);
    expect(editionOf([page])).not.toBe(one);
  });

  test('neither lists itself nor what no browser asks for', () => {
    const more = ['offline.js', '.vite/manifest.json', 'design.schema.json'];
    const files = [page, ...more.map((name) => ({ name, content: 'x' }))];
    expect(offlineHead(files)).toContain('offlineFiles=["index.html"]');
    expect(editionOf(files)).toBe(editionOf([page]));
  });
});
