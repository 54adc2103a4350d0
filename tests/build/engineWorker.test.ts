import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { expect, it } from 'vitest';

const start = resolve('src/worker/engine.worker.ts');

/** What a file imports, types left out. */
function imported(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  const statements = text.matchAll(/^(?:import|export)\s+(?!type\b)[^;]*?from '([^']+)'/gm);
  return [...statements].map((found) => found[1]!);
}

/** Every module the worker loads, and the packages among them. */
function reachable(first: string): {
  readonly files: readonly string[];
  readonly packages: readonly string[];
} {
  const files = new Set<string>();
  const packages = new Set<string>();
  const open = [first];
  for (let file = open.pop(); file; file = open.pop()) {
    if (files.has(file)) continue;
    files.add(file);
    if (!file.endsWith('.ts')) continue;
    for (const name of imported(file)) {
      if (name.startsWith('.')) open.push(resolve(dirname(file), name));
      else packages.add(name);
    }
  }
  return { files: [...files], packages: [...packages] };
}

// The schema and its checker weigh a tenth of the worker and are built at its start; the page has them already.
it('the worker of the engine carries no package and no schema', () => {
  const { files, packages } = reachable(start);
  expect(files.length).toBeGreaterThan(100);
  expect(packages).toEqual([]);
  expect(files.filter((file) => /Schema\.ts$|schema\.ts$/.test(file))).toEqual([]);
});
