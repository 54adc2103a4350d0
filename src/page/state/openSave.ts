import { parseDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { Designs } from './designs.ts';
import { faultLines } from './faultLines.ts';
import type { Notices } from './notices.ts';

/** A file larger than this is not read at all; a design has a few kilobytes. */
const largestFile = 1_000_000;

export type Read =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly title: string; readonly lines: readonly string[] };

/** What a text is: a design, or what is wrong with it. */
function readDesign(text: string, fileName: string): Read {
  const parsed = parseDesign(text);
  if (parsed.ok) return parsed;
  return { ok: false, title: `“${fileName}” was not opened.`, lines: faultLines(parsed) };
}

/** Reads one file as a design, or says what is wrong with it. */
export async function readFile(file: File): Promise<Read> {
  if (file.size > largestFile) {
    return {
      ok: false,
      title: `“${file.name}” was not opened.`,
      lines: ['It is larger than 1 MB and cannot be a design.'],
    };
  }
  try {
    return readDesign(await file.text(), file.name);
  } catch {
    return { ok: false, title: `“${file.name}” cannot be read.`, lines: [] };
  }
}

/**
 * Brings files in as designs beside those that are kept; the first comes onto the sheet. What cannot be read is told
 * file by file and changes nothing.
 */
export async function openFiles(
  files: Iterable<File>,
  designs: Pick<Designs, 'bringIn'>,
  notices: Notices,
): Promise<void> {
  const chosen = [...files];
  for (const { key } of notices.list()) if (key.startsWith('open')) notices.dismiss(key);
  const reads = await Promise.all(chosen.map(readFile));
  const good = reads.flatMap((read) => (read.ok ? [read.design] : []));
  if (good.length > 0) designs.bringIn(good);
  if (good.length > 1) notices.show(broughtIn(good));
  reads.forEach((read, index) => {
    if (!read.ok) notices.show({ key: `open ${index}`, title: read.title, lines: read.lines });
  });
}

function broughtIn(designs: readonly Design[]) {
  return {
    key: 'opened',
    title: `${designs.length} designs were added; the first stands on the sheet.`,
    lines: designs.map((design) => design.name),
    news: true,
  };
}
