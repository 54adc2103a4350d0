import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** The script that keeps the page for times without a network; it stands beside index.html. */
export const offlineScript = 'offline.js';

/** Files that a builder's browser never asks for. */
const notKept = /^\.|design\.schema\.json$/;

/** A file of the built page with what it holds. */
export interface BuiltFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** The lines in front of the offline script: which files there are, and a name for all they hold. */
export function offlineHead(files: readonly BuiltFile[]): string {
  const kept = files
    .filter(({ name }) => name !== offlineScript && !notKept.test(name))
    .sort((one, other) => (one.name < other.name ? -1 : 1));
  const hash = createHash('sha256');
  for (const { name, content } of kept) hash.update(`${name}\0`).update(content).update('\0');
  const names = JSON.stringify(kept.map(({ name }) => name));
  const edition = JSON.stringify(hash.digest('base64url').slice(0, 12));
  return `const offlineFiles=${names};const offlineEdition=${edition};\n`;
}

/** Builds the offline script and tells it the files of the page, those of the public folder included. */
export function offlinePlugin(): Plugin {
  let publicFolder = '';
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    configResolved(config) {
      publicFolder = config.publicDir;
    },
    buildStart() {
      this.emitFile({ type: 'chunk', id: 'src/worker/offline.worker.ts', fileName: offlineScript });
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const script = bundle[offlineScript];
        if (script?.type !== 'chunk') return this.error('the offline script was not built');
        if (script.imports.length > 0) return this.error('the offline script must stand alone');
        const built = Object.values(bundle).map((item) => ({
          name: item.fileName,
          content: item.type === 'chunk' ? item.code : item.source,
        }));
        script.code = offlineHead([...built, ...filesIn(publicFolder)]) + script.code;
      },
    },
  };
}

function filesIn(folder: string): readonly BuiltFile[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => ({ name, content: readFileSync(join(folder, name)) }));
}
