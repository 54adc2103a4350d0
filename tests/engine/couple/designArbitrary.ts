import fc from 'fast-check';
import { doubtfulPaths } from '../../../shared/design/doubtSchema.ts';
import { examples } from '../../../shared/design/examples.ts';
import { type FieldSpec, fieldRegistry } from '../../../shared/design/fields.ts';
import { checkDesign } from '../../../shared/design/file.ts';
import { instruments } from '../../../shared/design/instruments.ts';
import { type Design, designFormat, designSchema, designVersion } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';

interface SchemaNode {
  readonly def: {
    readonly type: string;
    readonly shape?: Readonly<Record<string, SchemaNode>>;
    readonly element?: SchemaNode;
    readonly innerType?: SchemaNode;
    readonly checks?: readonly { readonly _zod: { readonly def: { readonly check: string } } }[];
  };
}

function fromSpec(spec: FieldSpec): fc.Arbitrary<unknown> {
  if (spec.kind === 'flag') return fc.boolean();
  // Now and then a text that can be keyed.
  if (spec.kind === 'text')
    return fc.oneof(fc.string({ maxLength: 20 }), fc.constantFrom('PARIS', 'cq de test 73'));
  if (spec.kind === 'choice') return fc.constantFrom(...Object.keys(spec.options));
  const whole = spec.dimension === 'count';
  const value = whole
    ? fc.integer({ min: spec.min, max: Math.min(spec.max, 40) })
    : fc.double({ min: spec.min, max: spec.max, noNaN: true });
  // The ends of the range are where models break; ask for them often.
  const withEnds = fc.oneof({ weight: 6, arbitrary: value }, fc.constantFrom(spec.min, spec.max));
  return spec.optional ? fc.option(withEnds, { nil: null, freq: 3 }) : withEnds;
}

/** The only record of the design: how far entries may be off. */
const anyDoubts = fc.dictionary(
  fc.constantFrom(...doubtfulPaths),
  fc.oneof(
    fc.constantFrom(...Object.keys(instruments)),
    fc.double({ min: 0, max: 1000, noNaN: true }),
    fc.double({ min: 0, max: 0.01, noNaN: true }),
  ),
  { maxKeys: 4 },
);

function fromNode(node: SchemaNode): fc.Arbitrary<unknown> {
  const spec = fieldRegistry.get(node as unknown as Parameters<typeof fieldRegistry.get>[0]);
  if (spec) return fromSpec(spec);
  const { shape, element, innerType, checks } = node.def;
  if (innerType) return fc.option(fromNode(innerType), { nil: null, freq: 3 });
  if (element) {
    const filled = checks?.some((each) => each._zod.def.check === 'min_length') ?? false;
    return fc.array(fromNode(element), { minLength: filled ? 1 : 0, maxLength: 3 });
  }
  if (node.def.type === 'record') return anyDoubts;
  if (!shape) throw new Error(`no arbitrary for a schema of type ${node.def.type}`);
  return fc.record(
    Object.fromEntries(
      Object.entries(shape)
        .filter(([key]) => key !== 'format' && key !== 'version')
        .map(([key, child]) => [key, fromNode(child)]),
    ),
  );
}

/** Any design the schema accepts, however absurd. */
export const anyDesign: fc.Arbitrary<Design> = fromNode(designSchema as unknown as SchemaNode).map(
  (raw) => ({ ...(raw as object), format: designFormat, version: designVersion }) as Design,
);

type Sections = Record<string, Record<string, unknown>>;

/** Every field of the design as section and key; of the plain leaves none. */
const fieldPlaces = Object.entries(startDesign as unknown as Sections).flatMap(([section, fields]) =>
  typeof fields === 'object' && fields !== null && !Array.isArray(fields)
    ? Object.keys(fields).map((key) => [section, key] as const)
    : [],
);

/** An example with a few of its fields replaced by anything the schema accepts: most of these have an answer. */
export const nearDesign: fc.Arbitrary<Design> = fc
  .tuple(
    fc.constantFrom(startDesign, ...examples.map((one) => one.design)),
    anyDesign,
    fc.subarray(fieldPlaces, { minLength: 1, maxLength: 5 }),
  )
  .map(([base, wild, places]) => {
    const near = structuredClone(base) as unknown as Sections;
    for (const [section, key] of places) near[section]![key] = (wild as unknown as Sections)[section]?.[key];
    return near as unknown as Design;
  })
  .filter((design) => checkDesign(design).ok);
