/** Writes public/design.schema.json from the zod schema, so that editors and other programs can check design files. */
import { writeFileSync } from 'node:fs';
import { designJsonSchema } from './designJsonSchema.ts';

writeFileSync(
  new URL('../../public/design.schema.json', import.meta.url),
  `${JSON.stringify(designJsonSchema(), null, 2)}\n`,
);
