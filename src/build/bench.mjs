import { join } from 'node:path';
import { build } from 'vite';
import { root, run } from './run.mjs';

// `npm run bench`: the engine is bundled as for the page before it is timed. A loader that turns each file on the fly
// keeps the names of functions and live bindings of imports, which makes it half as slow again as what people run.

/** As deep in the tree as the benchmark's own folder: relative addresses of what is not bundled still hold. */
const outDir = 'node_modules/.bench';

await build({
  configFile: false,
  root,
  logLevel: 'warn',
  publicDir: false,
  build: {
    ssr: 'tests/bench/run.ts',
    outDir,
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: { external: /\/src\/build\/.*\.mjs$/, output: { entryFileNames: 'run.mjs' } },
  },
});
process.exitCode = await run(process.execPath, [join(root, outDir, 'run.mjs'), ...process.argv.slice(2)]);
