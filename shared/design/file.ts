import * as z from 'zod/mini';
import { type Design, designFormat, designSchema } from './schema.ts';
import { migrate } from './versions.ts';

z.config(z.locales.en());

/** A design is a few kilobytes; a larger text is something else. */
const largestFile = 1_000_000;

/** One thing that is wrong with a design, with the path of the field. */
export interface Fault {
  /** Dotted path such as "sink.finCount"; empty for the file as a whole. */
  readonly path: string;
  readonly message: string;
}

export type ParsedDesign =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly faults: readonly Fault[] };

function refuse(message: string, path = ''): ParsedDesign {
  return { ok: false, faults: [{ path, message }] };
}

/** ", not -13.2": the number of the file that is out of its range or not whole, as it stands there. */
function foundWords(issue: z.core.$ZodIssue): string {
  const outside = issue.code === 'too_small' || issue.code === 'too_big' || issue.code === 'invalid_type';
  return outside && typeof issue.input === 'number' ? `, not ${issue.input}` : '';
}

function faultOf(issue: z.core.$ZodIssue): Fault[] {
  const path = issue.path.join('.');
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      path: path ? `${path}.${key}` : key,
      message: 'this field is not known; is it misspelt?',
    }));
  }
  const missing = issue.code === 'invalid_type' && issue.input === undefined;
  return [
    {
      path,
      message: missing ? `${issue.message} (it is missing)` : `${issue.message}${foundWords(issue)}`,
    },
  ];
}

/** Checks a plain value against the schema; every fault is listed, not only the first. */
export function checkDesign(raw: unknown): ParsedDesign {
  const result = designSchema.safeParse(raw, { reportInput: true });
  if (result.success) return { ok: true, design: result.data };
  return { ok: false, faults: result.error.issues.flatMap(faultOf) };
}

function parseJson(text: string): { ok: true; raw: unknown } | { ok: false; message: string } {
  try {
    return { ok: true, raw: JSON.parse(text) };
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'unknown fault';
    if (!text.trimStart().startsWith('{')) {
      return { ok: false, message: `this is no design file: it does not begin with { (${detail})` };
    }
    const cut = !text.trimEnd().endsWith('}');
    return {
      ok: false,
      message: cut
        ? `the file ends too early, as if it had been cut off (${detail})`
        : `the file is not valid JSON (${detail})`,
    };
  }
}

/** Reads the text of a design file: size, JSON, format, version, then every field. */
export function parseDesign(text: string): ParsedDesign {
  if (text.length > largestFile) return refuse('the file is larger than 1 MB and cannot be a design');
  if (text.trim() === '') return refuse('the file is empty');
  const parsed = parseJson(text);
  if (!parsed.ok) return refuse(parsed.message);
  const raw = parsed.raw;
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse('the file holds no design (a JSON object is expected)');
  }
  const record = raw as Record<string, unknown>;
  if (record.format !== designFormat) {
    return refuse(`this is no design of this sheet: format must be "${designFormat}"`, 'format');
  }
  const migrated = migrate(record);
  if (!migrated.ok) return refuse(migrated.message, 'version');
  return checkDesign(migrated.raw);
}

/** The text of a design file, indented for people, ending with a newline. */
export function writeDesign(design: Design): string {
  return `${JSON.stringify(design, null, 2)}\n`;
}
