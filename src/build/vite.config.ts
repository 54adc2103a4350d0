import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import solid from 'vite-plugin-solid';
import { lightEntryPlugin } from './lightEntry.ts';
import { offlinePlugin } from './offline.ts';
import { securityPolicyPlugin } from './securityPolicy.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

export default defineConfig({
  root,
  // Relative addresses: the built folder works from any path of any static host.
  base: './',
  plugins: [solid(), securityPolicyPlugin(), lightEntryPlugin(), offlinePlugin()],
  build: {
    target: 'es2022',
    outDir: 'dist',
    sourcemap: false,
    manifest: true,
    modulePreload: { polyfill: false },
    // The security policy admits no data: address but for pictures.
    assetsInlineLimit: 0,
  },
  worker: { format: 'es' },
});
