import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';

export const finishes = {
  bare: 'bare, as extruded',
  weathered: 'bare, dull or weathered',
  anodised: 'anodised, any colour',
  painted: 'painted or lacquered',
  own: 'own emissivity',
} as const;

export const alloys = {
  extruded: 'extruded aluminium (6063 kind)',
  sheet: 'aluminium sheet (5000 or 6000 kind)',
  cast: 'cast aluminium',
  copper: 'copper',
} as const;

export const sinkSchema = z.strictObject({
  shape: choice({
    label: 'Shape',
    help: 'Fins on one side of a plate, or a plain flat panel.',
    options: {
      fins: 'plate with fins on one side',
      panel: 'flat panel, no fins',
    },
  }),
  width: number({
    label: 'Width across the fins',
    dimension: 'length',
    min: 0.01,
    max: 1,
    help: 'Caliper or ruler, across the fins; for a panel the horizontal side.',
  }),
  length: number({
    label: 'Length along the fins',
    dimension: 'length',
    min: 0.01,
    max: 1,
    help: 'Along the fins, the way the air rises; for a panel the vertical side.',
  }),
  baseThickness: number({
    label: 'Plate thickness',
    dimension: 'length',
    min: 0.0005,
    max: 0.05,
    help: 'Thickness of the plate without the fins; caliper at the edge.',
  }),
  finCount: number({
    label: 'Number of fins',
    dimension: 'count',
    min: 2,
    max: 200,
    help: 'Count them, both outer ones included.',
  }),
  finHeight: number({
    label: 'Fin height',
    dimension: 'length',
    min: 0.001,
    max: 0.2,
    help: 'From the plate to the tip, without the plate; depth rod of the caliper.',
  }),
  finThickness: number({
    label: 'Fin thickness',
    dimension: 'length',
    min: 0.0002,
    max: 0.03,
    help: 'Half way up the fin.',
  }),
  alloy: choice({
    label: 'Metal',
    help: 'Sets conductivity and heat capacity.',
    options: alloys,
  }),
  finish: choice({
    label: 'Finish',
    help: 'Sets the emissivity. The colour the eye sees does not matter; bare or coated does.',
    options: finishes,
  }),
  emissivity: number({
    label: 'Emissivity (own value)',
    dimension: 'share',
    min: 0.01,
    max: 1,
    help: 'Used with “own emissivity”: total hemispherical, at the working temperature.',
  }),
  backExposed: flag({
    label: 'Back of the plate in free air',
    help: 'Tick if the side with the devices also stands in free air, not against the case.',
  }),
  mass: maybeNumber({
    label: 'Weighed mass',
    dimension: 'mass',
    min: 0.005,
    max: 50,
    help: 'Kitchen scale, sink alone. Leave empty and the mass follows from the dimensions.',
  }),
  placement: choice({
    label: 'Stands',
    help: 'Whether the fins breathe room air or the air inside the case.',
    options: {
      outside: 'outside the case, in room air',
      inside: 'inside the closed case',
    },
  }),
});

export const surroundingsSchema = z.strictObject({
  ambient: number({
    label: 'Room temperature, warmest day',
    dimension: 'temperature',
    min: 233.15,
    max: 343.15,
    help: 'The warmest air in which you will transmit.',
  }),
  altitude: number({
    label: 'Altitude',
    dimension: 'length',
    min: -400,
    max: 9000,
    help: 'Thin air cools less: 5 % at 1000 m.',
  }),
  caseWidth: number({
    label: 'Case width',
    dimension: 'length',
    min: 0.03,
    max: 2,
    help: 'Outside, left to right.',
  }),
  caseHeight: number({
    label: 'Case height',
    dimension: 'length',
    min: 0.02,
    max: 2,
    help: 'Outside, bottom to top.',
  }),
  caseDepth: number({
    label: 'Case depth',
    dimension: 'length',
    min: 0.03,
    max: 2,
    help: 'Outside, front to back.',
  }),
  caseFinish: choice({
    label: 'Case finish',
    help: 'Painted cases lose heat by radiation, bare metal hardly.',
    options: { bare: 'bare metal', painted: 'painted or powder-coated' },
  }),
});
