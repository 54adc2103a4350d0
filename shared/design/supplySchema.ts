import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';

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
});

/** Sizes of the wire table: AWG by number, metric by nominal area of IEC 60228 class 5. */
export const wireSizes = {
  'AWG 20': 'AWG 20',
  'AWG 18': 'AWG 18',
  'AWG 16': 'AWG 16',
  'AWG 14': 'AWG 14',
  'AWG 12': 'AWG 12',
  'AWG 10': 'AWG 10',
  'AWG 8': 'AWG 8',
  'AWG 6': 'AWG 6',
  'AWG 4': 'AWG 4',
  'AWG 2': 'AWG 2',
  '0.5 mm2': '0.5 mm²',
  '0.75 mm2': '0.75 mm²',
  '1 mm2': '1 mm²',
  '1.5 mm2': '1.5 mm²',
  '2.5 mm2': '2.5 mm²',
  '4 mm2': '4 mm²',
  '6 mm2': '6 mm²',
  '10 mm2': '10 mm²',
  '16 mm2': '16 mm²',
  '25 mm2': '25 mm²',
  '35 mm2': '35 mm²',
} as const;

export type WireSize = keyof typeof wireSizes;

export const fuseKinds = {
  bladeMedium: 'blade, medium',
  bladeHigh: 'blade, large (high current)',
  glassQuick: '5 × 20 mm quick (IEC)',
  glassLag: '5 × 20 mm time-lag (IEC)',
  cartridge: '6.3 × 32 mm cartridge (UL)',
} as const;

export type FuseKind = keyof typeof fuseKinds;

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
  tinned: flag({
    label: 'Tinned strands',
    help: 'Silvery strands. Tinned metric wire has a little more resistance.',
  }),
  insulationLimit: number({
    label: 'Insulation temperature limit',
    dimension: 'temperature',
    min: 313.15,
    max: 473.15,
    help: 'Printed on the wire: 60 °C is the cautious figure for unmarked PVC, 105 °C for marked hook-up wire.',
  }),
  otherResistance: number({
    label: 'Fuse holder, connectors, switch',
    dimension: 'resistance',
    min: 0,
    max: 1,
    help: 'Everything in the 12 V path but the wire and the source, both poles together. Typical 2 to 10 mΩ; measure yours.',
  }),
  seriesDrop: number({
    label: 'Series diode drop',
    dimension: 'voltage',
    min: 0,
    max: 3,
    help: 'Forward voltage of a series diode for reverse polarity; 0 if there is none.',
  }),
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

export const heatPlaces = {
  caseAir: 'the air in the case',
  amplifierSink: 'the sink of the final',
  outside: 'outside the case',
} as const;

const efficiencyPoint = z.strictObject({
  inputVoltage: number({
    label: 'Point: input voltage',
    dimension: 'voltage',
    min: 3,
    max: 60,
    help: 'Input voltage at which this efficiency was measured or printed.',
  }),
  inputCurrent: number({
    label: 'Point: input current',
    dimension: 'current',
    min: 0.05,
    max: 500,
    help: 'Input current at which this efficiency was measured or printed.',
  }),
  efficiency: number({
    label: 'Point: efficiency',
    dimension: 'share',
    min: 0.3,
    max: 0.999,
    help: 'Output power over input power at this point.',
  }),
});

export const converterSchema = z.strictObject({
  kind: choice({
    label: 'Converter',
    help: 'Whether the rail is raised from the source or is the source itself.',
    options: {
      none: 'none: amplifier straight from the source',
      module: 'bought step-up module',
    },
  }),
  outputVoltage: number({
    label: 'Rail voltage',
    dimension: 'voltage',
    min: 5,
    max: 150,
    help: 'The voltage you set at the output of the converter.',
  }),
  points: z.array(efficiencyPoint, { error: 'Efficiency points must be a list' }).check(
    z.minLength(1, {
      error: 'Give at least one efficiency point of the converter',
    }),
    z.maxLength(3, {
      error: 'Give at most three efficiency points of the converter',
    }),
  ),
  noLoadPower: number({
    label: 'No-load input power',
    dimension: 'power',
    min: 0,
    max: 50,
    help: 'Input voltage times input current with nothing connected to the output.',
  }),
  minimumInput: number({
    label: 'Lowest input voltage',
    dimension: 'voltage',
    min: 3,
    max: 60,
    help: 'Below this the module cuts out; from its data.',
  }),
  inputCurrentLimit: maybeNumber({
    label: 'Input current limit',
    dimension: 'current',
    min: 0.1,
    max: 500,
    help: 'The module’s greatest input current. If its data say nothing, the printed output power over the highest input voltage, times 0.7, is a cautious guess.',
  }),
  outputCurrentLimit: maybeNumber({
    label: 'Output current limit',
    dimension: 'current',
    min: 0.1,
    max: 500,
    help: 'Rated output current, if the data give one.',
  }),
  powerLimit: maybeNumber({
    label: 'Rated output power',
    dimension: 'power',
    min: 1,
    max: 5000,
    help: 'The headline figure of the module. It usually holds with forced air only.',
  }),
  powerShare: number({
    label: 'Usable part of rated power',
    dimension: 'share',
    min: 0.1,
    max: 1,
    help: 'Without a fan 50 to 70 % is common practice; 100 % with the air flow that the data ask for.',
  }),
  heatTo: choice({
    label: 'Converter heat goes to',
    help: 'Where the module sits and what its cooling touches.',
    options: heatPlaces,
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
    help: 'The same while you listen.',
  }),
});
