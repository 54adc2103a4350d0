import { fileURLToPath } from 'node:url';
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Catches a test that hangs; far above what the slowest takes, since a busy machine is no fault of the code, ms. */
const testTimeout = 60_000;

export default defineConfig({
  root,
  test: {
    // Named here too, or the Solid plug-in asks for an environment that is not installed.
    environment: 'node',
    // Every core: on two of them the tests otherwise run one file after the other.
    maxWorkers: '100%',
    projects: [
      {
        root,
        test: {
          name: 'engine',
          testTimeout,
          // Pure functions: no file can leave anything behind for the next, and each need not load the engine anew.
          isolate: false,
          environment: 'node',
          include: ['tests/{engine,shared,cli}/**/*.test.ts'],
          setupFiles: ['tests/seed.ts'],
        },
      },
      {
        root,
        plugins: [solid()],
        resolve: { conditions: ['development', 'browser'] },
        test: {
          name: 'page',
          testTimeout,
          environment: 'happy-dom',
          include: ['tests/page/**/*.test.{ts,tsx}'],
          setupFiles: ['tests/seed.ts'],
        },
      },
      {
        // How the page is built and served; needs the built page.
        root,
        test: {
          name: 'build',
          testTimeout,
          environment: 'node',
          include: ['tests/build/**/*.test.ts'],
        },
      },
      {
        // The built page in a real browser.
        root,
        test: {
          name: 'browser',
          // Pointer and timing on a shared machine: a test that holds once holds.
          retry: 2,
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/browser/setup.ts'],
          fileParallelism: false,
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
    ],
  },
});
