import { describe, expect, it } from 'vitest';
import { type FieldSpec, fieldRegistry } from '../../shared/design/fields.ts';
import { designSchema } from '../../shared/design/schema.ts';

interface Node {
  readonly def?: {
    readonly shape?: Record<string, Node>;
    readonly element?: Node;
    readonly innerType?: Node;
  };
}

/** Every field the design can have, rows of lists included, with its path. */
function fields(node: Node, path: string): readonly (readonly [string, FieldSpec | undefined])[] {
  const { shape, element, innerType } = node.def ?? {};
  const spec = fieldRegistry.get(node as never);
  if (spec) return [[path, spec]];
  if (innerType) return fields(innerType, path);
  if (element) return fields(element, `${path}.0`);
  if (!shape) return [[path, undefined]];
  return Object.entries(shape).flatMap(([key, child]) => fields(child, path === '' ? key : `${path}.${key}`));
}

/** What is no entry of the builder's: the marks of the file, and doubts, which are entered beside their fields. */
const noEntries = new Set(['format', 'version', 'doubts']);
const all = fields(designSchema as unknown as Node, '').filter(([path]) => !noEntries.has(path));

/** Shorter is a word, longer is not read, characters. */
const shortest = 20;
const longest = 260;

describe('every entry of the design', () => {
  it('is a field', () => {
    expect(all.length).toBeGreaterThan(150);
    expect(all.filter(([, spec]) => spec === undefined).map(([path]) => path)).toEqual([]);
  });

  it.each(all)('%s says where it is found', (_path, spec) => {
    const { help, label } = spec!;
    expect(label.trim()).not.toBe('');
    expect(help.length).toBeGreaterThanOrEqual(shortest);
    expect(help.length).toBeLessThanOrEqual(longest);
    expect(help).toMatch(/^[\p{Lu}\d].*[.?)]$/u);
    expect(help.toLowerCase()).not.toBe(`${label.toLowerCase()}.`);
    expect(help).not.toMatch(/!|undefined|TODO/);
  });
});
