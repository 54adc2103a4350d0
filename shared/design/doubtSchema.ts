import * as z from 'zod/mini';
import { type FieldSpec, fieldRegistry } from './fields.ts';
import { sinkSchema } from './heatSchema.ts';
import { type Instrument, instruments } from './instruments.ts';

/** Outside the sink only these are uncertain enough to matter and not covered by a range of their own. */
const others = [
  'device.junctionToCase',
  'device.padResistance',
  'amplifier.efficiency',
  'surroundings.ventArea',
];

function isMeasured(spec: FieldSpec | undefined): boolean {
  return spec?.kind === 'number' && (spec.dimension === 'length' || spec.dimension === 'mass');
}

/** Every length and the mass of the sink itself; parts that stand on it are not measured but placed. */
const ofSink = Object.entries(sinkSchema.shape as Readonly<Record<string, z.core.$ZodType>>)
  .filter(([, schema]) => isMeasured(fieldRegistry.get(schema)))
  .map(([key]) => `sink.${key}`);

/** Paths of the fields that can carry a doubt: every length and the mass of the sink, and a few figures of final and case. */
export const doubtfulPaths: readonly string[] = [...ofSink, ...others];

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
