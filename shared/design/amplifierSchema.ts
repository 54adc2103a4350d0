import * as z from 'zod/mini';
import { choice, flag, maybeNumber, number } from './fields.ts';

/** One reading of a final with a steady carrier. */
const readingSchema = z.strictObject({
  power: number({
    label: 'Output read',
    dimension: 'power',
    min: 0,
    max: 3000,
    help: 'Carrier into a matched load at the antenna connector; 0 W for bias without drive.',
  }),
  current: number({
    label: 'Rail current read',
    dimension: 'current',
    min: 0,
    max: 500,
    help: 'Current of all devices together, at the rail of the readings.',
  }),
});

export const mostReadings = 8;

export const amplifierSchema = z.strictObject({
  class: choice({
    label: 'Class',
    help: 'Linear voice needs A, AB or B. C and the switching classes are for CW, FM and FSK.',
    options: {
      A: 'class A',
      AB: 'class AB',
      B: 'class B',
      C: 'class C',
      D: 'class D (switching)',
      E: 'class E (switching)',
      F: 'class F (harmonic tuned)',
    },
  }),
  pep: number({
    label: 'Output power (PEP)',
    dimension: 'power',
    min: 0.01,
    max: 3000,
    help: 'Peak envelope power into a matched load at the antenna connector, as you will run it.',
  }),
  calibration: choice({
    label: 'Known from',
    help: 'One efficiency is enough to begin with; a few readings of output and rail current are best.',
    options: {
      efficiency: 'drain efficiency at one power',
      devices: 'data of the devices',
      readings: 'readings of output and current',
    },
  }),
  efficiencyMeasured: flag({
    label: 'This efficiency is measured',
    help: 'Tick if it was measured on this amplifier. A guess has a wider band.',
  }),
  readings: z.array(readingSchema, { error: 'Readings must be a list' }).check(
    z.minLength(1, { error: 'Give at least one reading' }),
    z.maxLength(mostReadings, {
      error: `Give at most ${mostReadings} readings`,
    }),
  ),
  ratedPep: number({
    label: 'Power at which this holds',
    dimension: 'power',
    min: 0.01,
    max: 3000,
    help: 'The output at the antenna connector at which efficiency was measured or is stated, or for which the load is wound. The load stays as it is there.',
  }),
  ratedRail: number({
    label: 'Rail at which this holds',
    dimension: 'voltage',
    min: 3,
    max: 150,
    help: 'The DC voltage at the drains or collectors then.',
  }),
  efficiency: number({
    label: 'Drain efficiency there',
    dimension: 'share',
    min: 0.05,
    max: 0.99,
    help: 'RF power at the devices over rail voltage times rail current, key down. Guess: A 33 %, AB 52 %, B 60 %, C 68 %, D 83 %, E 85 %, F 74 %; measure yours.',
  }),
  quiescentCurrent: number({
    label: 'Quiescent current, all devices',
    dimension: 'current',
    min: 0,
    max: 50,
    help: 'Rail current with bias on and no drive. Class A takes it from the efficiency; B, C and switching classes have none.',
  }),
  conductionAngle: number({
    label: 'Conduction angle (class C)',
    dimension: 'angle',
    min: Math.PI / 2,
    max: Math.PI,
    help: 'Part of the cycle in which current flows, 90° to 180°. 120° to 150° is common.',
  }),
  outputLoss: number({
    label: 'Output network loss',
    dimension: 'decibel',
    min: 0,
    max: 6,
    help: 'Output transformer, low-pass filter, relay and meter together. Typical 0.6 dB; measure yours.',
  }),
  networkHeatToSink: number({
    label: 'Network heat into the sink',
    dimension: 'share',
    min: 0,
    max: 1,
    help: 'The output transformer beside the devices warms the sink, the filter warms the air in the case. A quarter is an assumption of this sheet.',
  }),
  drivePower: number({
    label: 'Drive absorbed by the devices',
    dimension: 'power',
    min: 0,
    max: 200,
    help: 'RF drive at PEP that ends as heat in the devices; a few per cent of the output at HF.',
  }),
  biasInReceive: flag({
    label: 'Bias on in receive',
    help: 'Tick if the quiescent current also flows while you listen.',
  }),
  biasKeyed: flag({
    label: 'Bias follows the CW key',
    help: 'Tick if the bias is switched off between dots and dashes.',
  }),
  saturationVoltage: number({
    label: 'Saturation voltage',
    dimension: 'voltage',
    min: 0,
    max: 20,
    help: 'Left across a device at small current when fully driven: about 1 V for bipolar devices with their ballast, 0 V for MOSFETs.',
  }),
  onResistance: number({
    label: 'On-resistance per device',
    dimension: 'resistance',
    min: 0,
    max: 20,
    help: 'R_DS(on) at 25 °C from the data sheet; choke and transformer in series may be added. 0 if the efficiency was measured hot.',
  }),
  onResistanceCoefficient: number({
    label: 'Rise of on-resistance',
    dimension: 'temperatureCoefficient',
    min: 0,
    max: 0.02,
    help: 'Per kelvin; 0.4 to 0.8 %/K for silicon. 0 if the efficiency was measured hot.',
  }),
  outputCapacitance: number({
    label: 'Output capacitance per device',
    dimension: 'capacitance',
    min: 0,
    max: 2e-8,
    help: 'C_oss at about the rail, from the data sheet. Class D loses it twice a cycle; E and F tune it out.',
  }),
  otherLoss: number({
    label: 'Other loss in the stage',
    dimension: 'share',
    min: 0,
    max: 0.5,
    help: 'Coils, transitions and harmonics, as a share of the output; 2 to 6 % is usual, 4 % is an assumption of this sheet.',
  }),
  arrangement: choice({
    label: 'Devices work',
    help: 'Only the transformer depends on it. More devices on one side share its current.',
    options: {
      parallel: 'on one side (single or in parallel)',
      pushPull: 'in push-pull',
    },
  }),
  turnsRatio: maybeNumber({
    label: 'Output transformer, turns ratio',
    dimension: 'number',
    min: 0.2,
    max: 15,
    help: 'Secondary turns over all primary turns, into 50 Ω. Leave empty when the figures above were measured with this transformer.',
  }),
  swr: number({
    label: 'SWR at the antenna connector',
    dimension: 'number',
    min: 1,
    max: 50,
    help: 'Heat is taken at the worst phase, since cable and filter turn it unknown. 1 is a matched load.',
  }),
  foldbackSwr: maybeNumber({
    label: 'Full power up to SWR',
    dimension: 'number',
    min: 1.05,
    max: 20,
    help: 'Where the protection begins to turn the drive down; above it, it holds the reflected power. Leave empty if there is none.',
  }),
  deviceKind: choice({
    label: 'Kind of device',
    help: 'Decides how the quiescent current drifts with temperature.',
    options: { mosfet: 'MOSFET', bipolar: 'bipolar' },
  }),
  biasTracking: choice({
    label: 'Bias follows the temperature of',
    help: 'Where the sensor of the bias sits: what lies between it and the junction is not compensated.',
    options: {
      nothing: 'nothing: it is fixed',
      plate: 'the sink (sensor beside the devices)',
      case: 'the case of a device',
    },
  }),
  transconductance: number({
    label: 'Transconductance at idle, per device (S)',
    dimension: 'number',
    min: 0,
    max: 100,
    help: 'Data sheet, at the quiescent current of one device; 1 to 4 S for RF power MOSFETs.',
  }),
  thresholdDrift: number({
    label: 'Fall of the threshold per kelvin',
    dimension: 'voltage',
    min: 0,
    max: 0.02,
    help: '2 to 4 mV for lateral RF parts, 3 to 6 mV for vertical ones (the latter from memory).',
  }),
  biasResistance: number({
    label: 'Source or emitter resistor, per device',
    dimension: 'resistance',
    min: 0,
    max: 10,
    help: 'In series with each device; 0 if there is none.',
  }),
});

const placeSchema = z.strictObject({
  x: number({
    label: 'From the left edge',
    dimension: 'length',
    min: 0,
    max: 1,
    help: 'To the middle of the device, across the fins.',
  }),
  y: number({
    label: 'From the lower edge',
    dimension: 'length',
    min: 0,
    max: 1,
    help: 'To the middle of the device, along the fins.',
  }),
});

const stageResistance = number({
  label: 'Resistance of the stage',
  dimension: 'thermalResistance',
  min: 0.0001,
  max: 100,
  help: 'Of one stage, from the table in the data sheet.',
});

const fosterStageSchema = z.strictObject({
  resistance: stageResistance,
  timeConstant: number({
    label: 'Time constant of the stage',
    dimension: 'time',
    min: 1e-6,
    max: 1000,
    help: 'Of the same stage, from the same table of the data sheet.',
  }),
});

const cauerStageSchema = z.strictObject({
  capacity: number({
    label: 'Heat capacity of the stage',
    dimension: 'heatCapacity',
    min: 1e-7,
    max: 1000,
    help: 'Of one stage, from the table in the data sheet; the junction comes first.',
  }),
  resistance: stageResistance,
});

const impedancePointSchema = z.strictObject({
  time: number({
    label: 'Pulse length',
    dimension: 'time',
    min: 1e-6,
    max: 1000,
    help: 'Read off the curve for a single pulse.',
  }),
  impedance: number({
    label: 'Transient impedance',
    dimension: 'thermalResistance',
    min: 0.0001,
    max: 100,
    help: 'Z_th at that time. If the plot shows shares, times the resistance.',
  }),
});

/** Rows of a ladder or points of a curve. */
export const mostStages = 8;
const listOf = <T extends z.core.$ZodType>(row: T, name: string) =>
  z
    .array(row, { error: `${name} must be a list` })
    .check(
      z.minLength(1, { error: `${name}: give at least one` }),
      z.maxLength(mostStages, { error: `${name}: give at most ${mostStages}` }),
    );

export const deviceSchema = z.strictObject({
  count: number({
    label: 'Number of devices',
    dimension: 'count',
    min: 1,
    max: 16,
    help: 'Transistors that share the heat of the final; a twin package counts as two.',
  }),
  package: choice({
    label: 'Package',
    help: 'What the body looks like. Ceramic flange and stud packages may contain beryllia.',
    options: {
      tab: 'plastic with tab (TO-220 kind)',
      largeTab: 'large plastic tab (TO-247 kind)',
      can: 'metal can (TO-3 kind)',
      flangeCeramic: 'ceramic on a flange',
      stud: 'ceramic stud',
      mouldedRf: 'moulded RF package',
      other: 'other',
    },
  }),
  maximumJunction: number({
    label: 'Greatest junction temperature',
    dimension: 'temperature',
    min: 323.15,
    max: 573.15,
    help: 'T_j max of the data sheet: 150 °C for most plastic, 175 °C for many power MOSFETs, 200 °C for metal and ceramic.',
  }),
  maximumVoltage: maybeNumber({
    label: 'Greatest drain or collector voltage',
    dimension: 'voltage',
    min: 5,
    max: 2000,
    help: 'V_DSS or V_CES of the data sheet; four times the rail is a usual rule at 12 V.',
  }),
  maximumHeat: maybeNumber({
    label: 'Greatest dissipation, per device',
    dimension: 'power',
    min: 0.1,
    max: 5000,
    help: 'P_D max of the data sheet with the case at 25 °C; the derating line bends there.',
  }),
  ladder: choice({
    label: 'Junction to case known as',
    help: 'One value is enough for long overs. The curve of the data sheet tells how hot dots, dashes and syllables get the junction.',
    options: {
      value: 'one value',
      points: 'points of the transient curve',
      foster: 'curve-fit ladder (Foster)',
      cauer: 'physical ladder (Cauer)',
    },
  }),
  fosterStages: listOf(fosterStageSchema, 'Stages'),
  cauerStages: listOf(cauerStageSchema, 'Stages'),
  impedancePoints: listOf(impedancePointSchema, 'Points'),
  junctionToCase: number({
    label: 'Junction to case, per device',
    dimension: 'thermalResistance',
    min: 0.01,
    max: 100,
    help: 'R_thJC of the data sheet, in K/W.',
  }),
  junctionTime: maybeNumber({
    label: 'Junction time constant',
    dimension: 'time',
    min: 1e-5,
    max: 10,
    help: 'From the transient thermal impedance plot: where the curve has reached 63 %. Leave empty and the junction is taken to follow at once.',
  }),
  flangeMass: number({
    label: 'Mass of one device',
    dimension: 'mass',
    min: 0,
    max: 0.5,
    help: 'Kitchen scale or data sheet: a TO-220 weighs 2 g, a TO-247 6 g, a large flange 10 to 30 g.',
  }),
  contactLength: number({
    label: 'Contact length',
    dimension: 'length',
    min: 0.002,
    max: 0.2,
    help: 'Long side of the metal face that presses on the plate.',
  }),
  contactWidth: number({
    label: 'Contact width',
    dimension: 'length',
    min: 0.002,
    max: 0.2,
    help: 'Short side of the metal face that presses on the plate.',
  }),
  pad: choice({
    label: 'Between case and plate',
    help: 'The insulator or grease under the device.',
    options: {
      grease: 'thermal grease, metal on metal',
      mica: 'mica, greased both sides',
      siliconePad: 'silicone rubber pad',
      polyimide: 'polyimide film, coated',
      alumina: 'alumina plate, greased',
      aluminiumNitride: 'aluminium nitride plate, greased',
      beryllia: 'beryllia plate, greased (old stock, toxic dust)',
      bare: 'bare metal on metal, dry',
      measured: 'own value in K/W',
    },
  }),
  padResistance: number({
    label: 'Case to plate, per device (own value)',
    dimension: 'thermalResistance',
    min: 0,
    max: 50,
    help: 'Used with “own value in K/W”: measured or from the maker of the pad for this area.',
  }),
  places: z
    .array(placeSchema, { error: 'Places must be a list' })
    .check(z.maxLength(16, { error: 'At most 16 places' })),
  spreader: flag({
    label: 'Spreader plate under each device',
    help: 'A piece of copper or thick aluminium between device and sink. The insulator named here lies on top of it.',
  }),
  spreaderWidth: number({
    label: 'Spreader width',
    dimension: 'length',
    min: 0.002,
    max: 0.5,
    help: 'Caliper, across the fins.',
  }),
  spreaderLength: number({
    label: 'Spreader length',
    dimension: 'length',
    min: 0.002,
    max: 0.5,
    help: 'Caliper, along the fins.',
  }),
  spreaderThickness: number({
    label: 'Spreader thickness',
    dimension: 'length',
    min: 0.0005,
    max: 0.05,
    help: 'Caliper, at the edge of the plate.',
  }),
  spreaderMetal: choice({
    label: 'Spreader metal',
    help: 'Copper spreads nearly twice as well as aluminium.',
    options: { copper: 'copper', sheet: 'aluminium sheet', extruded: 'extruded aluminium' },
  }),
  spreaderPad: choice({
    label: 'Between spreader and sink',
    help: 'Grease, or an insulator if the spreader is live.',
    options: {
      grease: 'thermal grease, metal on metal',
      mica: 'mica, greased both sides',
      siliconePad: 'silicone rubber pad',
      polyimide: 'polyimide film, coated',
      alumina: 'alumina plate, greased',
      aluminiumNitride: 'aluminium nitride plate, greased',
      bare: 'bare metal on metal, dry',
    },
  }),
});
