import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number, text } from './fields.ts';

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
  speechKind: choice({
    label: 'SSB',
    help: 'How dense the speech is: average RF power over PEP while talking. It makes the heat.',
    options: {
      relaxed: 'relaxed, unprocessed (8 %)',
      unprocessed: 'unprocessed, the regulator’s figure (20 %)',
      compressed: 'compressed (30 %)',
      heavy: 'heavily processed, contest (50 %)',
      own: 'own average-to-peak ratio',
      twoTone: 'two-tone test (50 %)',
    },
  }),
  speechActivity: number({
    label: 'Speech within the over',
    dimension: 'share',
    min: 0.2,
    max: 1,
    help: 'Share of the over in which you speak. Small pauses are in the law of speech already: 100 % is usual.',
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
  keyingWeight: number({
    label: 'CW weight',
    dimension: 'share',
    min: 0.3,
    max: 0.7,
    help: 'Share of a dot and its space taken by the dot: 50 % is normal, more makes every mark longer.',
  }),
  keyingText: text({
    label: 'CW text',
    help: 'Sent over and over; PARIS is the standard word. Letters, digits and the usual signs.',
    maxLength: 60,
  }),
  keyDownMode: choice({
    label: 'Key-down is',
    help: 'What the third curve stands for. Its envelope and its time on the air follow the mode. For turns in alternate slots take a cycle of two slots and a duty of 50 %.',
    options: {
      carrier: 'a carrier',
      fm: 'FM',
      am: 'AM',
      rtty: 'RTTY',
      sstv: 'slow-scan television',
      phaseShift: 'phase-shift keying, text',
      phaseShiftIdle: 'phase-shift keying, idle',
      FT8: 'FT8',
      FT4: 'FT4',
      WSPR: 'WSPR',
    },
  }),
  modulationDepth: number({
    label: 'AM modulation',
    dimension: 'share',
    min: 0,
    max: 1,
    help: 'Depth of a steady tone; 0 % is the carrier alone, which is the hottest in a linear stage.',
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

/** Exposure limits a builder can choose from; the engine holds the levels. */
export const limitSetNames = {
  fcc: 'US, FCC 47 CFR 1.1310',
  icnirp2020: 'ICNIRP 2020',
  eu1999: 'EU 1999/519/EC (ICNIRP 1998)',
} as const;

export type ChosenLimitSet = keyof typeof limitSetNames;

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
  efficiency: number({
    label: 'Efficiency of the short antenna',
    dimension: 'share',
    min: 0.001,
    max: 1,
    help: 'Radiated over accepted power. Loading coil and ground take the rest; 100 % is the cautious figure.',
  }),
  loopRadius: number({
    label: 'Loop radius',
    dimension: 'length',
    min: 0.05,
    max: 5,
    help: 'From the centre to the conductor; for a square loop half of its side.',
  }),
  loopResistance: number({
    label: 'Loop loss resistance',
    dimension: 'resistance',
    min: 0,
    max: 50,
    help: 'Conductor, joints and capacitor together, without the radiation resistance, which is added for you. 0 is the cautious figure.',
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
  exposureBy: choice({
    label: 'Exposure: time on the air',
    help: 'For exposure alone; the duty of the heat is another figure and stands with the service.',
    options: {
      share: 'as a share of the averaging time',
      overs: 'as overs and pauses',
    },
  }),
  exposureOver: number({
    label: 'Exposure: longest over',
    dimension: 'time',
    min: 1,
    max: 36000,
    help: 'The longest spell of transmitting you would make. The busiest averaging window (30 or 6 minutes) is found from it.',
  }),
  exposurePause: number({
    label: 'Exposure: pause after it',
    dimension: 'time',
    min: 0,
    max: 36000,
    help: 'The shortest pause between two such overs.',
  }),
  exposureTransmitShare: number({
    label: 'Exposure: share of the averaging time on the air',
    dimension: 'share',
    min: 0.01,
    max: 1,
    help: 'The busiest averaging window (30 or 6 minutes), not the day. 100 % is the cautious figure.',
  }),
  limitSet: choice({
    label: 'Exposure limits',
    help: 'The set that your country goes by; ask your authority if you do not know.',
    options: limitSetNames,
  }),
  tier: choice({
    label: 'Who is exposed',
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
  nearestPerson: maybeNumber({
    label: 'Nearest that people come',
    dimension: 'length',
    min: 0.05,
    max: 1000,
    help: 'From any part of the antenna to any part of a person, neighbours and passers-by too. Leave empty and only the least distance is stated.',
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
  surface: choice({
    label: 'What the hand touches',
    help: 'Anodised, painted or plated metal burns like bare metal. A cover of plastic or glass is taken to be as hot as the metal under it.',
    options: {
      metal: 'metal, bare, anodised or painted',
      plastic: 'plastic cover',
      glass: 'glass, ceramic or stone',
    },
  }),
  touchGoverns: flag({
    label: 'Touch limit counts for safe duty',
    help: 'Tick if the safe duty must also keep the sink touchable.',
  }),
});

export const hazardsSchema = z.strictObject({
  railCapacitance: number({
    label: 'Capacitors on the rail, together',
    dimension: 'capacitance',
    min: 0,
    max: 500,
    help: 'Sum of all capacitors from the rail to ground, those in the converter too; it is printed on them.',
  }),
  bleederTime: number({
    label: 'Discharged within',
    dimension: 'time',
    min: 0.1,
    max: 3600,
    help: 'Time after switching off in which a bleeder resistor is to take the rail to 5 % of its voltage.',
  }),
  greatestRail: maybeNumber({
    label: 'Most the converter can give',
    dimension: 'voltage',
    min: 5,
    max: 500,
    help: 'Upper end of its adjusting range, or what its over-voltage cut-out allows: the rail if it fails high. Leave empty if not known.',
  }),
});
