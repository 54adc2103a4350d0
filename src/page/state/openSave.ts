import { type ParsedDesign, parseDesign, writeDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { fieldAt } from './fields.ts';
import type { Notices } from './notices.ts';
import type { SheetStore } from './store.ts';

/** A file larger than this is not read at all; a design has a few kilobytes. */
const largestFile = 1_000_000;

/** Faults listed; a file of another kind may have hundreds. */
const mostFaults = 12;

/** The faults of a design as lines for people, with the label of the field where there is one. */
export function faultLines(parsed: Extract<ParsedDesign, { ok: false }>): readonly string[] {
  const lines = parsed.faults.map(({ path, message }) => {
    const label = fieldAt(path)?.label;
    if (label !== undefined) return `${label} (${path}): ${message}`;
    return path === '' ? message : `${path}: ${message}`;
  });
  const rest = lines.length - mostFaults;
  return rest > 0 ? [...lines.slice(0, mostFaults), `and ${rest} more`] : lines;
}

/** Takes the text of a file onto the sheet, or says what is wrong with it and leaves the sheet as it is. */
export function openText(text: string, fileName: string, store: SheetStore, notices: Notices): boolean {
  const parsed = parseDesign(text);
  if (!parsed.ok) {
    notices.show({ key: 'open', title: `“${fileName}” was not opened.`, lines: faultLines(parsed) });
    return false;
  }
  notices.dismiss('open');
  store.replace(parsed.design);
  return true;
}

export async function openFile(file: File, store: SheetStore, notices: Notices): Promise<boolean> {
  if (file.size > largestFile) {
    notices.show({
      key: 'open',
      title: `“${file.name}” was not opened.`,
      lines: ['It is larger than 1 MB and cannot be a design.'],
    });
    return false;
  }
  try {
    return openText(await file.text(), file.name, store, notices);
  } catch {
    notices.show({ key: 'open', title: `“${file.name}” cannot be read.`, lines: [] });
    return false;
  }
}

/** "Field station: 60 W" -> "field-station-60-w.design.json" */
export function fileNameOf(design: Design): string {
  const stem = design.name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'design' : stem}.design.json`;
}

/** Hands the design to the browser as a download. */
export function saveFile(design: Design): void {
  const url = URL.createObjectURL(new Blob([writeDesign(design)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileNameOf(design);
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
