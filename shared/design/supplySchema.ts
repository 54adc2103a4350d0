import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';
import { connectorKinds, fuseKinds, pathKinds, wireMaterials, wireSizes } from './supplyChoices.ts';

export const sourceSchema = z.strictObject({
  kind: choice({
    label: 'Source',
    help: 'What stands behind the 12 V terminals.',
    options: {
      leadAcid: 'lead-acid battery',
      lithiumIronPhosphate: 'LiFePO4 battery',
      mainsSupply: 'mains power supply',
      vehicle: 'vehicle system',
      other: 'other source',
    },
  }),
  openVoltage: number({
    label: 'Open-circuit voltage',
    dimension: 'voltage',
    min: 3,
    max: 60,
    help: 'A voltmeter on the terminals with nothing drawn, in the state in which you will transmit.',
  }),
  internalResistance: number({
    label: 'Internal resistance',
    dimension: 'resistance',
    min: 0,
    max: 2,
    help: 'Voltage drop at the terminals divided by the current that causes it; the battery data sheet states it too.',
  }),
  continuousCurrent: maybeNumber({
    label: 'Continuous current limit',
    dimension: 'current',
    min: 0.1,
    max: 5000,
    help: 'From the label of the supply or of the battery protection board. Leave empty if there is none.',
  }),
  peakCurrent: maybeNumber({
    label: 'Short-time current limit',
    dimension: 'current',
    min: 0.1,
    max: 20000,
    help: 'What the protection allows for a few seconds. Leave empty to use the continuous limit.',
  }),
  capacity: maybeNumber({
    label: 'Capacity',
    dimension: 'charge',
    min: 360,
    max: 1e7,
    help: 'Printed on the battery in ampere-hours. Leave empty where there is none; then no time is told.',
  }),
  capacityTime: number({
    label: 'Capacity holds over',
    dimension: 'time',
    min: 1800,
    max: 360000,
    help: 'The discharge time for which the capacity is printed: 20 h is usual for lead-acid, 5 h or less for LiFePO4.',
  }),
  peukertExponent: number({
    label: 'Peukert exponent',
    dimension: 'number',
    min: 1,
    max: 1.6,
    help: 'How much a heavy current shortens the time: 1.05 to 1.15 for AGM, 1.1 to 1.25 for gel, 1.2 to 1.6 for flooded lead-acid, 1.05 for LiFePO4.',
  }),
  emptyVoltage: maybeNumber({
    label: 'Open-circuit voltage near empty',
    dimension: 'voltage',
    min: 3,
    max: 60,
    help: 'Where you would stop and recharge: 12.0 V for lead-acid, about 12.8 V for LiFePO4. Leave empty to judge the present voltage only.',
  }),
  emptyResistanceFactor: number({
    label: 'Internal resistance near empty, times',
    dimension: 'number',
    min: 1,
    max: 5,
    help: 'A flat, cold or old battery has twice its usual resistance or more.',
  }),
  chargingVoltage: maybeNumber({
    label: 'Highest voltage',
    dimension: 'voltage',
    min: 3,
    max: 60,
    help: 'With a charger or the engine running: 14.4 to 14.7 V. Leave empty if the source is never higher than entered above.',
  }),
});

const pathElement = z.strictObject({
  kind: choice({
    label: 'Part',
    help: 'What the current passes here. The main wire follows the first fuse, or leads if there is none.',
    options: pathKinds,
  }),
  connector: choice({
    label: 'Connector',
    help: 'By class; the usual current and contact resistance come with it.',
    options: connectorKinds,
  }),
  count: number({
    label: 'How many',
    dimension: 'count',
    min: 1,
    max: 20,
    help: 'Contacts or joints in series, there and back together: a two-pole connector has two.',
  }),
  aged: flag({
    label: 'Old or loose',
    help: 'A worn or corroded contact has three to five times its resistance when new.',
  }),
  resistance: maybeNumber({
    label: 'Resistance of one, if measured',
    dimension: 'resistance',
    min: 0,
    max: 1,
    help: 'Voltage drop over the part divided by the current; a holder with its fuse in. Leave empty for the usual figure.',
  }),
  rating: maybeNumber({
    label: 'Rated current, if known',
    dimension: 'current',
    min: 0.1,
    max: 500,
    help: 'From the part or its data. Leave empty for the usual figure of its class, or if it has none.',
  }),
  drop: number({
    label: 'Forward voltage',
    dimension: 'voltage',
    min: 0,
    max: 3,
    help: 'Of the diode at this current: 0.4 to 0.55 V for a Schottky diode.',
  }),
  length: number({
    label: 'Length, one way',
    dimension: 'length',
    min: 0,
    max: 50,
    help: 'Of this piece; the way back is added for you.',
  }),
  size: choice({
    label: 'Size of this piece',
    help: 'Printed on the insulation. Metric sizes are fine-stranded copper, IEC 60228 class 5.',
    options: wireSizes,
  }),
});

export const wiringSchema = z.strictObject({
  length: number({
    label: 'Wire length, one way',
    dimension: 'length',
    min: 0,
    max: 50,
    help: 'From the source terminal to the converter or amplifier along the wire; the way back is added for you.',
  }),
  size: choice({
    label: 'Wire size',
    help: 'Printed on the insulation. Metric sizes are fine-stranded copper, IEC 60228 class 5.',
    options: wireSizes,
  }),
  material: choice({
    label: 'Conductor',
    help: 'Silvery strands are tinned copper or, in cheap cable, copper-clad aluminium: light, brittle, and a scratch shows grey metal.',
    options: wireMaterials,
  }),
  together: number({
    label: 'Loaded wires side by side',
    dimension: 'count',
    min: 1,
    max: 24,
    help: 'All wires in the same bundle or sleeve that carry current at the same time. The supply pair alone is 2.',
  }),
  insulationLimit: number({
    label: 'Insulation temperature limit',
    dimension: 'temperature',
    min: 313.15,
    max: 473.15,
    help: 'Printed on the wire: 60 °C is the cautious figure for unmarked PVC, 105 °C for marked hook-up wire.',
  }),
  path: z
    .array(pathElement, { error: 'The parts of the path must be a list' })
    .check(z.maxLength(20, { error: 'At most twenty parts can stand in the path' })),
  fuse: choice({
    label: 'Fuse type',
    help: 'The kind of fuse you will fit at the source.',
    options: fuseKinds,
  }),
  fuseRating: maybeNumber({
    label: 'Fuse fitted',
    dimension: 'current',
    min: 0.1,
    max: 500,
    help: 'The rating you have. Leave empty and the sheet picks the standard rating.',
  }),
  fuseDistance: number({
    label: 'Fuse from source terminal',
    dimension: 'length',
    min: 0,
    max: 20,
    help: 'Measured along the wire from the battery post or supply terminal to the fuse.',
  }),
  ssbOnly: flag({
    label: 'Locked to SSB',
    help: 'Only if this transmitter can never send a carrier: no tuning, no CW, no data. The fuse may then follow the average.',
  }),
});

export const boardsSchema = z.strictObject({
  transmitPower: number({
    label: 'Other boards, transmitting',
    dimension: 'power',
    min: 0,
    max: 500,
    help: 'Driver, bias, relays, display and fan on the 12 V side while you transmit: volts times amperes without the final.',
  }),
  receivePower: number({
    label: 'Other boards, receiving',
    dimension: 'power',
    min: 0,
    max: 500,
    help: 'The same, measured while you listen.',
  }),
});
