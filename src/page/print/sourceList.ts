import { quantities } from '../../engine/catalogue/index.ts';
import { sources } from '../../engine/catalogue/sources.ts';
import { serviceFigures, supplyFigures } from './figures.ts';

const marks: Readonly<Record<string, string>> = {
  primary: '',
  secondary: ', as quoted elsewhere',
  'from memory': ', from memory',
  'common practice': ', common practice',
  'own choice': ', a choice of this sheet',
  'own computation': ', computed for this sheet',
};

/** The sources behind cautions and figures, each once, cautions first; a caution names its own by number. */
export function sourceKeys(cautions: readonly { readonly source: string }[]): readonly string[] {
  const ofFigures = [...serviceFigures, ...supplyFigures].map((name) => quantities[name]?.source);
  const all = [...cautions.map((each) => each.source), ...ofFigures];
  return [...new Set(all)].filter((key): key is string => key !== undefined && sources[key] !== undefined);
}

/** Title and year, with how well it is known; part and equation stand in the working on the page. */
export function writeSource(key: string): string {
  const source = sources[key];
  if (!source) return key;
  const words = [source.title, source.year].filter(Boolean).join(', ');
  return `${words}${marks[source.status] ?? ''}`;
}
