import type { ParsedDesign } from '../../../shared/design/file.ts';
import { fieldAt } from './fields.ts';

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
