import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';

export const serviceSchema = z.strictObject({
  cycle: number({
    label: 'Cycle: one over and the receive time after it',
    dimension: 'time',
    min: 1,
    max: 7200,
    help: 'One over and the listening after it. 300 s is a usual contact.',
  }),
  transmitShare: number({
    label: 'Planned duty',
    dimension: 'share',
    min: 0,
    max: 1,
    help: 'Share of the cycle in which you transmit: 40 % of 5 minutes is an over of 2 minutes.',
  }),
  averageToPeak: number({
    label: 'SSB average-to-peak ratio',
    dimension: 'share',
    min: 0.01,
    max: 0.95,
    help: 'Average RF power over PEP while talking: relaxed 8 %, unprocessed 20 %, compressed 30 %, heavily processed 50 %.',
  }),
  keyingSpeed: number({
    label: 'CW speed',
    dimension: 'keyingSpeed',
    min: 3,
    max: 60,
    help: 'Words per minute, PARIS standard. Slow keying heats the junction more within an element.',
  }),
});

export const bands = {
  '160 m': '160 m',
  '80 m': '80 m',
  '60 m': '60 m',
  '40 m': '40 m',
  '30 m': '30 m',
  '20 m': '20 m',
  '17 m': '17 m',
  '15 m': '15 m',
  '12 m': '12 m',
  '10 m': '10 m',
  '6 m': '6 m',
} as const;

export type Band = keyof typeof bands;

export const antennaSchema = z.strictObject({
  kind: choice({
    label: 'Antenna',
    help: 'A far-field distance is only given where it is meaningful.',
    options: {
      halfWaveWire: 'half-wave or longer wire',
      smallLoaded: 'short loaded antenna',
      smallLoop: 'small transmitting loop',
      other: 'anything else (indoor, end-fed in the shack, beam close by)',
    },
  }),
  band: choice({
    label: 'Band',
    help: 'The distance is worked out at the upper edge of the band.',
    options: bands,
  }),
  gain: number({
    label: 'Antenna gain (dBi)',
    dimension: 'decibel',
    min: -20,
    max: 20,
    help: 'Over an isotropic antenna; 2.15 dBi for a half-wave wire.',
  }),
  feedLineLoss: number({
    label: 'Feed-line loss',
    dimension: 'decibel',
    min: 0,
    max: 20,
    help: 'Matched loss of the line on this band. 0 dB is the cautious figure.',
  }),
  exposureModeFactor: number({
    label: 'Exposure: mode factor',
    dimension: 'share',
    min: 0.05,
    max: 1,
    help: 'The regulator’s average-to-peak figure for exposure only: SSB 20 %, processed SSB 50 %, CW 40 %, carrier, FM and data 100 %.',
  }),
  exposureTransmitShare: number({
    label: 'Exposure: share of the averaging time on the air',
    dimension: 'share',
    min: 0.01,
    max: 1,
    help: 'The busiest averaging window (30 or 6 minutes), not the day. 100 % is the cautious figure.',
  }),
  tier: choice({
    label: 'Exposure limit',
    help: 'The controlled limit is for the licensee and trained members of the household only (47 CFR 97.13); neighbours and visitors are general population.',
    options: {
      general: 'general population',
      controlled: 'controlled (trained household)',
    },
  }),
  groundFactor: choice({
    label: 'Ground reflection',
    help: 'Field raised by the ground; 1.6 times is the usual figure of OET Bulletin 65.',
    options: {
      free: 'none (free space)',
      usual: 'field × 1.6',
      worst: 'field × 2 (worst case)',
    },
  }),
});

export const limitsSchema = z.strictObject({
  designJunction: maybeNumber({
    label: 'Design limit of the junction',
    dimension: 'temperature',
    min: 313.15,
    max: 548.15,
    help: 'Leave empty for the lower of 125 °C and T_j max − 40 K.',
  }),
  touchedBy: choice({
    label: 'Who can touch the sink',
    help: 'Sets the contact time that must do no harm.',
    options: {
      adults: 'adults, a short touch (10 s)',
      anyone: 'anyone, children too (1 min)',
      carried: 'carried in the hand or on the lap (10 min)',
      nobody: 'nobody: guarded or out of reach',
    },
  }),
  touchGoverns: flag({
    label: 'Touch limit counts for safe duty',
    help: 'Tick if the safe duty must also keep the sink touchable.',
  }),
});
