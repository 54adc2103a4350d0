import { fileURLToPath } from 'node:url';
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../../', import.meta.url));

export default defineConfig({
  root,
  test: {
    environment: 'node',
    projects: [
      {
        root,
        test: {
          name: 'engine',
          environment: 'node',
          include: ['tests/{engine,shared,cli}/**/*.test.ts'],
        },
      },
      {
        root,
        plugins: [solid()],
        resolve: { conditions: ['development', 'browser'] },
        test: {
          name: 'page',
          environment: 'happy-dom',
          include: ['tests/page/**/*.test.{ts,tsx}'],
        },
      },
    ],
  },
});
