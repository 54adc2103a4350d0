import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The repository's top folder. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Command lines of the tools, run by this Node itself so that no shell and no PATH is needed. */
export const tools = {
  vite: 'node_modules/vite/bin/vite.js',
  vitest: 'node_modules/vitest/vitest.mjs',
  typescript: 'node_modules/typescript/bin/tsc',
  biome: 'node_modules/@biomejs/biome/bin/biome',
};

/**
 * Runs a program in the top folder with our own input and output; gives its exit code.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ shell?: boolean }} [options]
 * @returns {Promise<number>}
 */
export function run(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: 'inherit',
      shell: options.shell ?? false,
    });
    child.once('error', (error) => {
      console.error(`${command} could not be started: ${error.message}`);
      resolve(1);
    });
    child.once('close', (code) => resolve(code ?? 1));
  });
}

/**
 * Runs one of the tools.
 * @param {keyof typeof tools} tool
 * @param {readonly string[]} args
 * @returns {Promise<number>}
 */
export function runTool(tool, args) {
  return run(process.execPath, [tools[tool], ...args]);
}

/** Builds the page into dist/, saying nothing unless something is wrong. */
export function buildPage() {
  return runTool('vite', ['build', '--config', 'src/build/vite.config.ts', '--logLevel', 'warn']);
}
