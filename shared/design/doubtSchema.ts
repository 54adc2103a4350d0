import * as z from 'zod/mini';
import { amplifierSchema, deviceSchema } from './amplifierSchema.ts';
import { type FieldSpec, fieldRegistry } from './fields.ts';
import { sinkSchema } from './heatSchema.ts';

/** What an entry was measured with: key in the file -> words on the page. */
export const instruments = {
  caliper: 'caliper, ±0.1 mm',
  ruler: 'ruler, ±0.5 mm',
  guess: 'a guess, ±20 %',
} as const;

export type Instrument = keyof typeof instruments;

/** 90 % half-widths of the instruments: metres, metres, share of the value. Own choice. */
export const caliperDoubt = 0.1e-3;
export const rulerDoubt = 0.5e-3;
export const guessDoubt = 0.2;

interface SchemaNode {
  readonly def: { readonly shape?: Readonly<Record<string, SchemaNode>> };
}

/** Number fields below a section, with their dotted paths. */
function numberFields(path: string, node: SchemaNode): readonly (readonly [string, FieldSpec])[] {
  const spec = fieldRegistry.get(node as unknown as Parameters<typeof fieldRegistry.get>[0]);
  if (spec?.kind === 'number') return [[path, spec]];
  return Object.entries(node.def.shape ?? {}).flatMap(([key, child]) =>
    numberFields(`${path}.${key}`, child),
  );
}

const sections = { sink: sinkSchema, device: deviceSchema, amplifier: amplifierSchema } as const;

/** Outside the sink only these are uncertain enough to matter and not covered by a range of their own. */
const others = ['device.junctionToCase', 'device.padResistance', 'amplifier.efficiency'];

const specs: Readonly<Record<string, FieldSpec>> = Object.fromEntries(
  Object.entries(sections)
    .flatMap(([key, schema]) => numberFields(key, schema as unknown as SchemaNode))
    .filter(
      ([path, spec]) =>
        others.includes(path) ||
        (path.startsWith('sink.') &&
          spec.kind === 'number' &&
          (spec.dimension === 'length' || spec.dimension === 'mass')),
    ),
);

/** Paths of the fields that can carry a doubt: every length and the mass of the sink, and a few figures of the final. */
export const doubtfulPaths: readonly string[] = Object.keys(specs);

/** What the schema says of a field that can carry a doubt. */
export function doubtfulField(path: string): FieldSpec | undefined {
  return specs[path];
}

const greatestDoubt = 1000;

/**
 * How far entries may be off, by field path: an instrument, or a 90 % half-width in the SI unit of the field. A field
 * that is not named has the usual doubt of its kind.
 */
export const doubtsSchema = z.partialRecord(
  z.enum(doubtfulPaths as [string, ...string[]], {
    error: `a doubt belongs to one of: ${doubtfulPaths.join(', ')}`,
  }),
  z.union(
    [
      z.enum(Object.keys(instruments) as [Instrument, ...Instrument[]]),
      z
        .number()
        .check(
          z.gte(0, { error: 'a doubt cannot be negative' }),
          z.lte(greatestDoubt, { error: 'a doubt of more than 1000 says nothing' }),
        ),
    ],
    {
      error: `a doubt is one of ${Object.keys(instruments).join(', ')} or a plus-minus in the unit of the field`,
    },
  ),
);

export type Doubt = Instrument | number;
