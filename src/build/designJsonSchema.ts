import * as z from 'zod/mini';
import { type FieldSpec, fieldRegistry, fileUnits } from '../../shared/design/fields.ts';
import { designSchema } from '../../shared/design/schema.ts';

function describe(spec: FieldSpec): string {
  if (spec.kind !== 'number') return `${spec.label}. ${spec.help}`;
  const unit =
    spec.dimension === 'share' || spec.dimension === 'number' ? '' : ` [${fileUnits[spec.dimension]}]`;
  return `${spec.label}${unit}. ${spec.help}${spec.optional ? ' null: not known.' : ''}`;
}

/** The JSON Schema (draft 2020-12) of a design file, with label, unit and help as descriptions. */
export function designJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(designSchema, {
    override: ({ zodSchema, jsonSchema }) => {
      const spec = fieldRegistry.get(zodSchema);
      if (spec) jsonSchema.description = describe(spec);
    },
  });
  return {
    $id: 'design.schema.json',
    title: 'Heat and Rail design',
    ...schema,
  };
}
