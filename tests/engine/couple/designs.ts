import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';

type Edits = { readonly [Part in keyof Design]?: Partial<Design[Part]> };

/** A copy of a design with some values replaced. */
export function change(design: Design, edits: Edits): Design {
  const copy = structuredClone(design);
  for (const [part, values] of Object.entries(edits)) Object.assign(copy[part as keyof Design], values);
  return copy;
}

/** One of the shipped examples. */
export function exampleOf(key: string): Design {
  const found = examples.find((one) => one.key === key);
  if (!found) throw new Error(`no example ${key}`);
  return found.design;
}
