import * as z from 'zod/mini';
import { choice, maybeNumber, number } from './fields.ts';
import { sinkSchema } from './heatSchema.ts';

export const benchKinds = {
  warmUp: 'warm-up at a known power',
  coolDown: 'cool-down without power',
  steady: 'steady readings at a known power',
} as const;

const readingSchema = z.strictObject({
  time: number({
    label: 'Time',
    dimension: 'time',
    min: 0,
    max: 1e6,
    help: 'Since the power was switched on or off.',
  }),
  temperature: number({
    label: 'Plate temperature',
    dimension: 'temperature',
    min: 223.15,
    max: 573.15,
    help: 'As the thermometer on the plate shows it.',
  }),
  room: maybeNumber({
    label: 'Room air at this reading',
    dimension: 'temperature',
    min: 233.15,
    max: 343.15,
    help: 'The second thermometer, where it was read too; empty where not.',
  }),
});

/** One reading a second for an hour is more than any fit needs; a log of this length still makes a small file. */
export const mostReadings = 400;
export const mostRuns = 6;

/** The sink a run was logged on: what the fit needs, all but where it stands and what else sits on its plate. */
const loggedSinkSchema = z.omit(sinkSchema, {
  placement: true,
  converterPart: true,
  switchPart: true,
  rectifierPart: true,
});

export const benchRunSchema = z.strictObject({
  kind: choice({
    label: 'Kind of run',
    help: 'What was logged: warming up, cooling down, or readings that had come to rest.',
    options: benchKinds,
  }),
  power: maybeNumber({
    label: 'Power in the resistor',
    dimension: 'power',
    min: 0.05,
    max: 2000,
    help: 'Volts times amperes, both measured at the resistor while it is hot.',
  }),
  powerDoubt: number({
    label: 'Power known to',
    dimension: 'share',
    min: 0,
    max: 0.3,
    help: 'Plus-minus of the power: 2 % with two ordinary meters.',
  }),
  air: maybeNumber({
    label: 'Room air during the run',
    dimension: 'temperature',
    min: 233.15,
    max: 343.15,
    help: 'Second thermometer, 0.3 m below the sink and shaded from it. A column “room [°C]” in the log goes before it.',
  }),
  sensorDoubt: number({
    label: 'Thermometers known to',
    dimension: 'temperatureDifference',
    min: 0.05,
    max: 10,
    help: 'Plus-minus of plate minus air. Hold both in the same water to see how they differ.',
  }),
  sensorPlace: choice({
    label: 'Thermometer sits',
    help: 'The plate is warmest at the resistor and coolest in the corners; the sheet corrects for the place.',
    options: {
      beside: 'beside the resistor, in the middle of the plate',
      corner: 'near a corner of the plate',
    },
  }),
  resistorWidth: number({
    label: 'Resistor foot, across the fins',
    dimension: 'length',
    min: 0.003,
    max: 0.2,
    help: 'The face that touches the plate; the resistor sits in the middle.',
  }),
  resistorLength: number({
    label: 'Resistor foot, along the fins',
    dimension: 'length',
    min: 0.003,
    max: 0.2,
    help: 'The face that touches the plate.',
  }),
  sink: z.nullable(loggedSinkSchema).register(z.globalRegistry, {
    description: 'The sink as it was when the run was logged. null: the sink of the design, as given.',
  }),
  readings: z
    .array(readingSchema, { error: 'Readings must be a list' })
    .check(z.maxLength(mostReadings, { error: `Give at most ${mostReadings} readings a run` })),
});

/** Bench runs with the real sink: they correct film coefficient and heat capacity. */
export const benchSchema = z
  .array(benchRunSchema, { error: 'Bench runs must be a list' })
  .check(z.maxLength(mostRuns, { error: `Give at most ${mostRuns} bench runs` }));
