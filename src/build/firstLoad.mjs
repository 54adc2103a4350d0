import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** What the page, its style and the script it starts with may weigh, gzip, in bytes. */
export const firstLoadLimit = 90_000;

/**
 * @typedef {{ file: string, css?: string[], imports?: string[] }} Chunk
 * @typedef {{ name: string, bytes: number }} Part
 */

/** The entry starts the engine and asks for this at once: it belongs to the first load like the entry itself. */
export const sheetModule = 'src/page/main.tsx';

/**
 * The files that a browser must have before the sheet can stand: the page itself, what its entry imports
 * statically and the sheet that it asks for at once, with their styles. What is imported later is not among them.
 * @param {Record<string, Chunk>} manifest as the bundler writes it
 * @returns {string[]}
 */
export function firstLoadFiles(manifest) {
  /** @type {Set<string>} */
  const files = new Set(['index.html']);
  /** @type {Set<string>} */
  const seen = new Set();
  /** @param {string} key */
  const visit = (key) => {
    const chunk = manifest[key];
    if (!chunk || seen.has(key)) return;
    seen.add(key);
    for (const file of [chunk.file, ...(chunk.css ?? [])]) files.add(file);
    for (const next of chunk.imports ?? []) visit(next);
  };
  visit('index.html');
  visit(sheetModule);
  return [...files];
}

/**
 * The gzip bytes of the first load, part by part.
 * @param {string} folder the built page
 * @returns {{ total: number, parts: Part[] }}
 */
export function firstLoad(folder) {
  const manifest = JSON.parse(readFileSync(join(folder, '.vite', 'manifest.json'), 'utf8'));
  const parts = firstLoadFiles(manifest).map((name) => ({
    name,
    bytes: gzipSync(readFileSync(join(folder, name)), { level: 9 }).length,
  }));
  return { total: parts.reduce((sum, part) => sum + part.bytes, 0), parts };
}
