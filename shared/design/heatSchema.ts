import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';

export const finishes = {
  bare: 'bare, as extruded',
  weathered: 'bare, dull or weathered',
  anodised: 'anodised, any colour',
  painted: 'painted or lacquered',
  own: 'own emissivity',
  unsure: 'unsure',
} as const;

export const alloys = {
  extruded: 'extruded aluminium (6063 kind)',
  sheet: 'aluminium sheet (5000 or 6000 kind)',
  cast: 'cast aluminium',
  copper: 'copper',
} as const;

/** Contact face of a part on the plate and its centre, from the lower left corner of the plate. */
const platePart = z.strictObject({
  width: number({
    label: 'Width of the face',
    dimension: 'length',
    min: 0.002,
    max: 0.5,
    help: 'Of the metal face that presses on the plate, across the fins.',
  }),
  length: number({
    label: 'Length of the face',
    dimension: 'length',
    min: 0.002,
    max: 0.5,
    help: 'Of the metal face that presses on the plate, along the fins.',
  }),
  x: maybeNumber({
    label: 'From the left edge',
    dimension: 'length',
    min: 0,
    max: 1,
    help: 'To the middle of the part, device side seen from the front. Empty: the sheet places it.',
  }),
  y: maybeNumber({
    label: 'From the lower edge',
    dimension: 'length',
    min: 0,
    max: 1,
    help: 'To the middle of the part, device side seen from the front. Empty: the sheet places it.',
  }),
});

export const sinkSchema = z.strictObject({
  shape: choice({
    label: 'Shape',
    help: 'What the sink looks like. A tunnel is an extrusion with fins inside and a wall all round.',
    options: {
      fins: 'plate with fins on one side',
      finsBothSides: 'plate with fins on both sides',
      pins: 'plate with pins',
      panel: 'flat panel, no fins',
      tunnel: 'closed tunnel with a fan',
    },
  }),
  position: choice({
    label: 'Stands or lies',
    help: 'Which way is up. Fins upright on an upright plate cool best.',
    options: {
      upright: 'plate upright, fins upright',
      crosswise: 'plate upright, fins level',
      finsUp: 'plate level, fins up',
      finsDown: 'plate level, fins down',
      tilted: 'fins leaning from upright',
    },
  }),
  tilt: number({
    label: 'Leaning from upright',
    dimension: 'angle',
    min: 0,
    max: Math.PI / 3,
    help: '0° is upright; the rule holds to 60°.',
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
    help: 'Caliper, half way up the fin.',
  }),
  tapered: flag({
    label: 'Fins are tapered',
    help: 'Tick if they are clearly thicker at the root than at the tip.',
  }),
  finRoot: number({
    label: 'Fin thickness at the root',
    dimension: 'length',
    min: 0.0002,
    max: 0.03,
    help: 'Where the fin meets the plate, the rounding left out.',
  }),
  finTip: number({
    label: 'Fin thickness at the tip',
    dimension: 'length',
    min: 0.0001,
    max: 0.03,
    help: 'Caliper at the free end.',
  }),
  pinSection: choice({
    label: 'Pins are',
    help: 'What the end of one pin looks like.',
    options: { round: 'round', square: 'square' },
  }),
  pinThickness: number({
    label: 'Pin thickness',
    dimension: 'length',
    min: 0.0005,
    max: 0.03,
    help: 'Diameter, or side of a square pin, half way up.',
  }),
  pinHeight: number({
    label: 'Pin height',
    dimension: 'length',
    min: 0.001,
    max: 0.2,
    help: 'From the plate to the tip, without the plate.',
  }),
  pinColumns: number({
    label: 'Pins side by side',
    dimension: 'count',
    min: 2,
    max: 100,
    help: 'Count them across the width.',
  }),
  pinRows: number({
    label: 'Pins one above the other',
    dimension: 'count',
    min: 2,
    max: 100,
    help: 'Count them along the length.',
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
  backShare: number({
    label: 'Free part of the back',
    dimension: 'share',
    min: 0,
    max: 1,
    help: 'What boards, brackets or the case do not cover.',
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
      inside: 'inside the case',
    },
  }),
  fan: choice({
    label: 'Fan',
    help: 'A fan that blows along the fins. What the sink does with the fan stopped is always shown too.',
    options: { none: 'none', along: 'blows along the fins' },
  }),
  fanFlow: number({
    label: 'Free flow of the fan',
    dimension: 'volumeFlow',
    min: 1e-5,
    max: 0.5,
    help: 'Data sheet, at its rated voltage with nothing in the way.',
  }),
  fanPressure: number({
    label: 'Greatest pressure of the fan',
    dimension: 'pressure',
    min: 0.5,
    max: 2000,
    help: 'Data sheet, at its rated voltage with the air blocked; 20 to 50 Pa for flat fans of 60 to 80 mm.',
  }),
  fanMiddleFlow: maybeNumber({
    label: 'A point between: flow',
    dimension: 'volumeFlow',
    min: 1e-5,
    max: 0.5,
    help: 'A third point of the fan’s curve, if you have the curve. Empty: a straight line, which is cautious.',
  }),
  fanMiddlePressure: maybeNumber({
    label: 'A point between: pressure',
    dimension: 'pressure',
    min: 0.5,
    max: 2000,
    help: 'Pressure of the fan at that flow.',
  }),
  fanVoltageShare: number({
    label: 'Fan voltage over rated',
    dimension: 'share',
    min: 0.2,
    max: 1.3,
    help: 'Flow goes with the voltage, pressure with its square. A fan for 12 V at 7 V: 58 %.',
  }),
  fanPath: choice({
    label: 'Air is led',
    help: 'Air takes the easy way: past the fins, unless a duct holds it.',
    options: {
      duct: 'by a duct, all through the fins',
      bypass: 'by a duct with room beside the fins',
      open: 'not at all: fan before the fins',
    },
  }),
  bypassSection: number({
    label: 'Open section beside the fins',
    dimension: 'area',
    min: 0,
    max: 0.1,
    help: 'Of the duct, where air gets past without touching the fins.',
  }),
  converterPart: platePart,
  switchPart: platePart,
  rectifierPart: platePart,
});

export const surroundingsSchema = z.strictObject({
  ambient: number({
    label: 'Room temperature, warmest day',
    dimension: 'temperature',
    min: 233.15,
    max: 343.15,
    help: 'Room thermometer: the warmest air in which you will transmit.',
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
    help: 'Ruler, outside, left to right.',
  }),
  caseHeight: number({
    label: 'Case height',
    dimension: 'length',
    min: 0.02,
    max: 2,
    help: 'Ruler, outside, bottom to top.',
  }),
  caseDepth: number({
    label: 'Case depth',
    dimension: 'length',
    min: 0.03,
    max: 2,
    help: 'Ruler, outside, front to back.',
  }),
  caseFinish: choice({
    label: 'Case finish',
    help: 'Painted cases lose heat by radiation, bare metal hardly.',
    options: { bare: 'bare metal', painted: 'painted or powder-coated' },
  }),
  caseVents: choice({
    label: 'Case openings',
    help: 'Vents are a guess: two equal openings, low and high, with the case empty between them.',
    options: { closed: 'closed', vented: 'vents low and high (a guess)' },
  }),
  ventArea: number({
    label: 'Open area of the lower vents',
    dimension: 'area',
    min: 0,
    max: 1,
    help: 'Holes alone, not the sheet between them; the upper vents as much again.',
  }),
});
