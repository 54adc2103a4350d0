import type { FieldSpec } from '../../../shared/design/fields.ts';
import { fieldRegistry } from '../../../shared/design/fields.ts';
import { type Design, designSchema } from '../../../shared/design/schema.ts';

export type NumberField = Extract<FieldSpec, { kind: 'number' }>;

/** A leaf of the design: what a field can hold. */
export type Leaf = number | string | boolean | null;

interface SchemaNode {
  readonly def?: { readonly shape?: Readonly<Record<string, SchemaNode>>; readonly element?: SchemaNode };
}

function childOf(node: SchemaNode | undefined, step: string): SchemaNode | undefined {
  const def = node?.def;
  if (def?.shape) return def.shape[step];
  return /^\d+$/.test(step) ? def?.element : undefined;
}

/** What the design schema says of the field at a dotted path such as "sink.finCount"; undefined for no field. */
export function fieldAt(path: string): FieldSpec | undefined {
  const node = path.split('.').reduce<SchemaNode | undefined>(childOf, designSchema as unknown as SchemaNode);
  return node === undefined ? undefined : fieldRegistry.get(node as never);
}

/** The same where the code names a path itself and a missing field is a mistake of ours. */
export function knownField(path: string): FieldSpec {
  const spec = fieldAt(path);
  if (spec === undefined) throw new Error(`There is no field ${path} in the design.`);
  return spec;
}

/** Whatever stands at a dotted path; undefined where the design has no such place. */
export function valueAt(design: Design, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((node, step) => (node as Record<string, unknown> | undefined)?.[step], design);
}

/** The value of a field; null where the design has no such place (a point taken away). */
export function leafAt(design: Design, path: string): Leaf {
  return (valueAt(design, path) ?? null) as Leaf;
}

/** A design with one place changed; everything not on the path is shared with the old one. */
export function withValue(design: Design, path: string, value: unknown): Design {
  return replaceIn(design as unknown as Tree, path.split('.'), value) as unknown as Design;
}

export function withLeaf(design: Design, path: string, value: Leaf): Design {
  return withValue(design, path, value);
}

/** What to call the place of a path: the field's label, or the readings of a bench run, which are a list. */
export function labelAt(path: string): string {
  const [section, index, list] = path.split('.');
  const isLog = section === 'bench' && list === 'readings';
  return fieldAt(path)?.label ?? (isLog ? `Readings of run ${Number(index) + 1}` : path);
}

type Tree = Readonly<Record<string, unknown>> | readonly unknown[];

function replaceIn(node: Tree, steps: readonly string[], value: unknown): Tree {
  const [step, ...rest] = steps as [string, ...string[]];
  const child = (node as Record<string, unknown>)[step];
  const next = rest.length === 0 ? value : replaceIn(child as Tree, rest, value);
  if (Array.isArray(node)) return node.map((each, index) => (String(index) === step ? next : each));
  return { ...node, [step]: next };
}
