import * as z from 'zod/mini';
import { amplifierSchema, deviceSchema } from './amplifierSchema.ts';
import { benchSchema } from './benchSchema.ts';
import { converterSchema } from './converterSchema.ts';
import { doubtsSchema } from './doubtSchema.ts';
import { text } from './fields.ts';
import { sinkSchema, surroundingsSchema } from './heatSchema.ts';
import { antennaSchema, hazardsSchema, limitsSchema, serviceSchema } from './peopleSchema.ts';
import { boardsSchema, sourceSchema, wiringSchema } from './supplySchema.ts';

/** Marks a file as a design of this sheet. */
export const designFormat = 'heat-and-rail design';

/** The version this build writes. Older versions are raised step by step in `versions.ts`. */
export const designVersion = 1;

/**
 * Everything the builder enters, in the order in which energy flows. All numbers are SI: metres, watts, volts,
 * amperes, ohms, seconds, kelvin (also for ambient and limits), shares from 0 to 1. `null` stands for "not known".
 */
export const designSchema = z.strictObject({
  format: z.literal(designFormat, {
    error: `format must be "${designFormat}"`,
  }),
  version: z.literal(designVersion, {
    error: `version must be ${designVersion}`,
  }),
  name: text({
    label: 'Design name',
    help: 'Your own name for this design.',
    maxLength: 120,
  }),
  source: sourceSchema,
  wiring: wiringSchema,
  converter: converterSchema,
  boards: boardsSchema,
  amplifier: amplifierSchema,
  device: deviceSchema,
  sink: sinkSchema,
  surroundings: surroundingsSchema,
  service: serviceSchema,
  antenna: antennaSchema,
  limits: limitsSchema,
  hazards: hazardsSchema,
  doubts: doubtsSchema,
  bench: benchSchema,
});

export type Design = z.infer<typeof designSchema>;
export type SourceInput = Design['source'];
export type WiringInput = Design['wiring'];
export type ConverterInput = Design['converter'];
export type AmplifierInput = Design['amplifier'];
export type DeviceInput = Design['device'];
export type SinkInput = Design['sink'];
export type SurroundingsInput = Design['surroundings'];
export type ServiceInput = Design['service'];
export type AntennaInput = Design['antenna'];
export type LimitsInput = Design['limits'];
export type HazardsInput = Design['hazards'];
export type DoubtsInput = Design['doubts'];
export type BenchRunInput = Design['bench'][number];
/** The sink a run was logged on. */
export type LoggedSink = NonNullable<BenchRunInput['sink']>;
