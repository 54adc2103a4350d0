import type { Plugin } from 'vite';
import { sheetModule } from './firstLoad.mjs';

/** Packages too heavy to come with the first load. */
const heavyPackages = ['mathjs'];

interface BuiltChunk {
  readonly isEntry: boolean;
  readonly imports: readonly string[];
  readonly moduleIds: readonly string[];
}

/** Stops the build when a heavy package is reachable from the page's entry without a dynamic import. */
export function lightEntryPlugin(): Plugin {
  return {
    name: 'light-entry',
    apply: 'build',
    generateBundle(_options, bundle) {
      const chunks = new Map<string, BuiltChunk>();
      for (const item of Object.values(bundle)) if (item.type === 'chunk') chunks.set(item.fileName, item);
      const heavy = heavyModule(chunks);
      if (heavy) this.error(`${heavy} would come with the first load; import it on demand or in the worker.`);
    },
  };
}

/** The first module of a heavy package that an entry chunk brings along, if any. */
export function heavyModule(chunks: ReadonlyMap<string, BuiltChunk>): string | undefined {
  const reached = new Set<string>();
  const visit = (name: string): void => {
    const chunk = chunks.get(name);
    if (!chunk || reached.has(name)) return;
    reached.add(name);
    chunk.imports.forEach(visit);
  };
  for (const [name, chunk] of chunks) if (chunk.isEntry || holdsSheet(chunk)) visit(name);
  return [...reached].flatMap((name) => [...(chunks.get(name)?.moduleIds ?? [])]).find(isHeavy);
}

function holdsSheet(chunk: BuiltChunk): boolean {
  return chunk.moduleIds.some((id) => id.replaceAll('\\', '/').endsWith(`/${sheetModule}`));
}

function isHeavy(moduleId: string): boolean {
  const path = moduleId.replaceAll('\\', '/');
  return heavyPackages.some((name) => path.includes(`/node_modules/${name}/`));
}
