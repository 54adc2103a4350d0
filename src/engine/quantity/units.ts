import type { Dimension, NumberSpec } from '../../../shared/design/fields.ts';

/** A unit of one dimension: SI value = number × factor + offset. */
export interface Unit {
  /** As printed, and the name under which preferences keep it. */
  readonly symbol: string;
  readonly factor: number;
  /** Only temperatures have one, K. */
  readonly offset?: number;
  /** What people type for it, after `normalise`; the printed symbol is always among them. */
  readonly spellings: readonly string[];
  /** Offered in the unit menu of a field. Others are only understood when typed. */
  readonly offered: boolean;
}

/** Two families of units; the builder picks one and may change any single field. */
export type UnitSystem = 'metric' | 'inch';

/** International foot and inch, pound: exact by the international yard and pound agreement of 1959. */
const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
/** A millimetre of water at 1000 kg/m³ in standard gravity, Pa: conventional. */
const waterColumn = 9.80665;
/** Ice point, K, exact by definition of the degree Celsius. */
const icePoint = 273.15;
const fahrenheitStep = 5 / 9;
/** 0 °F in kelvin. */
const fahrenheitZero = icePoint - 32 * fahrenheitStep;

function unit(symbol: string, factor: number, spellings: string, offered = true): Unit {
  return {
    symbol,
    factor,
    spellings: spellings.split(' ').filter(Boolean),
    offered,
  };
}

function scale(symbol: string, factor: number, offset: number, spellings: string): Unit {
  return { ...unit(symbol, factor, spellings), offset };
}

/** Every unit by dimension, small to large. Spellings are those left after `normalise` (µ is u, Ω is ohm). */
export const units: Readonly<Record<Dimension, readonly Unit[]>> = {
  length: [
    unit('µm', 1e-6, 'um micron microns micrometre micrometer', false),
    unit('mil', inch / 1000, 'mil mils thou', false),
    unit('mm', 1e-3, 'mm millimetre millimetres millimeter millimeters'),
    unit('cm', 1e-2, 'cm centimetre centimetres centimeter centimeters'),
    unit('in', inch, 'in inch inches "'),
    unit('ft', foot, "ft foot feet '"),
    unit('m', 1, 'm metre metres meter meters'),
    unit('km', 1000, 'km kilometre kilometres', false),
  ],
  area: [
    unit('mm²', 1e-6, 'mm2 sqmm mm^2'),
    unit('cm²', 1e-4, 'cm2 sqcm cm^2'),
    unit('in²', inch * inch, 'in2 sqin in^2'),
    unit('m²', 1, 'm2 sqm m^2'),
  ],
  power: [
    unit('mW', 1e-3, 'mW mw milliwatt milliwatts'),
    unit('W', 1, 'W w watt watts'),
    unit('kW', 1e3, 'kW kw KW kilowatt kilowatts'),
    unit('MW', 1e6, 'MW megawatt', false),
  ],
  voltage: [
    unit('mV', 1e-3, 'mV mv millivolt millivolts'),
    unit('V', 1, 'V v volt volts VDC Vdc'),
    unit('kV', 1e3, 'kV kv KV kilovolt', false),
  ],
  current: [
    unit('mA', 1e-3, 'mA ma milliamp milliamps'),
    unit('A', 1, 'A a amp amps ampere amperes'),
    unit('kA', 1e3, 'kA ka', false),
  ],
  resistance: [
    unit('µΩ', 1e-6, 'uohm uOhm microohm'),
    unit('mΩ', 1e-3, 'mohm mOhm milliohm milliohms'),
    unit('Ω', 1, 'ohm Ohm ohms Ohms R'),
    unit('kΩ', 1e3, 'kohm kOhm Kohm kiloohm', false),
    unit('MΩ', 1e6, 'Mohm MOhm megohm', false),
  ],
  thermalResistance: [
    unit('K/W', 1, 'K/W k/w K/w k/W KpW'),
    unit('°C/W', 1, '°C/W °c/w C/W c/w degC/W deg/W'),
  ],
  temperature: [
    scale('°C', 1, icePoint, '°C °c C c degC degc celsius'),
    scale('°F', fahrenheitStep, fahrenheitZero, '°F °f F f degF degf fahrenheit'),
    scale('K', 1, 0, 'K k kelvin'),
  ],
  temperatureCoefficient: [
    unit('%/K', 1e-2, '%/K %/k %/°C %/°c %/C percent/K'),
    unit('1/K', 1, '/K 1/K 1/°C 1/C K^-1'),
    unit('ppm/K', 1e-6, 'ppm/K ppm/°C ppm/C', false),
  ],
  time: [
    unit('ns', 1e-9, 'ns nanosecond nanoseconds'),
    unit('µs', 1e-6, 'us usec microsecond microseconds'),
    unit('ms', 1e-3, 'ms msec millisecond milliseconds'),
    unit('s', 1, 's sec secs second seconds'),
    unit('min', 60, 'min mins minute minutes'),
    unit('h', 3600, 'h hr hrs hour hours'),
  ],
  share: [unit('%', 1e-2, '% percent pct'), unit('1', 1, 'ratio', false)],
  decibel: [unit('dB', 1, 'dB db DB dBi dbi')],
  frequency: [
    unit('Hz', 1, 'Hz hz HZ'),
    unit('kHz', 1e3, 'kHz khz KHz kHZ kc'),
    unit('MHz', 1e6, 'MHz Mhz mhz MHZ Mc'),
    unit('GHz', 1e9, 'GHz Ghz ghz GHZ', false),
  ],
  mass: [
    unit('mg', 1e-6, 'mg', false),
    unit('g', 1e-3, 'g gram grams gramme grammes'),
    unit('oz', pound / 16, 'oz ounce ounces'),
    unit('lb', pound, 'lb lbs pound pounds'),
    unit('kg', 1, 'kg kilo kilos kilogram kilograms'),
  ],
  capacitance: [
    unit('pF', 1e-12, 'pF pf'),
    unit('nF', 1e-9, 'nF nf'),
    unit('µF', 1e-6, 'uF uf mfd'),
    unit('mF', 1e-3, 'mF', false),
    unit('F', 1, 'F farad', false),
  ],
  inductance: [
    unit('nH', 1e-9, 'nH nh'),
    unit('µH', 1e-6, 'uH uh'),
    unit('mH', 1e-3, 'mH mh'),
    unit('H', 1, 'H henry', false),
  ],
  charge: [
    unit('nC', 1e-9, 'nC nc'),
    unit('µC', 1e-6, 'uC uc', false),
    unit('C', 1, 'C As coulomb', false),
    unit('mAh', 3.6, 'mAh mah MAH'),
    unit('Ah', 3600, 'Ah ah AH'),
  ],
  energy: [unit('mJ', 1e-3, 'mJ mj'), unit('J', 1, 'J Ws joule'), unit('kJ', 1e3, 'kJ kj')],
  pulseIntegral: [unit('A² s', 1, 'A2s A^2s')],
  angle: [unit('°', Math.PI / 180, '° deg degree degrees'), unit('rad', 1, 'rad radian radians')],
  conductivity: [
    unit('W/(m K)', 1, 'W/(mK) W/(m*K) W/mK W/m/K W/m-K W/(m°C)'),
    unit('W/(cm K)', 100, 'W/(cmK) W/cmK', false),
  ],
  temperatureDifference: [unit('K', 1, 'K k kelvin °C C'), unit('°F', fahrenheitStep, '°F F', false)],
  filmCoefficient: [unit('W/(m² K)', 1, 'W/(m2K) W/m2K')],
  heatCapacity: [unit('J/K', 1, 'J/K J/°C'), unit('kJ/K', 1e3, 'kJ/K', false)],
  resistancePerLength: [unit('mΩ/m', 1e-3, 'mohm/m mOhm/m'), unit('Ω/m', 1, 'ohm/m Ohm/m', false)],
  keyingSpeed: [unit('wpm', 1, 'wpm WPM Wpm words/min')],
  count: [unit('', 1, 'pcs pieces pc')],
  number: [unit('', 1, '')],
  volumeFlow: [
    unit('L/s', 1e-3, 'L/s l/s litre/s'),
    unit('m³/h', 1 / 3600, 'm3/h m^3/h cbm/h'),
    unit('ft³/min', foot ** 3 / 60, 'ft3/min ft^3/min cfm CFM'),
    unit('m³/s', 1, 'm3/s m^3/s', false),
  ],
  pressure: [
    unit('Pa', 1, 'Pa pa pascal'),
    unit('mmH₂O', waterColumn, 'mmH2O mmh2o mmAq mmWC'),
    unit('inH₂O', 1000 * inch * waterColumn, 'inH2O inh2o inWC'),
    unit('hPa', 100, 'hPa mbar', false),
  ],
};

/** A word for each dimension, as it stands in a message: "kg is a mass". */
export const dimensionWords: Readonly<Record<Dimension, string>> = {
  length: 'a length',
  area: 'an area',
  power: 'a power',
  voltage: 'a voltage',
  current: 'a current',
  resistance: 'a resistance',
  thermalResistance: 'a thermal resistance',
  temperature: 'a temperature',
  temperatureCoefficient: 'a change per kelvin',
  time: 'a time',
  share: 'a share',
  decibel: 'a ratio in decibels',
  frequency: 'a frequency',
  mass: 'a mass',
  capacitance: 'a capacitance',
  inductance: 'an inductance',
  charge: 'a charge',
  energy: 'an energy',
  pulseIntegral: 'a pulse of current',
  angle: 'an angle',
  conductivity: 'a thermal conductivity',
  temperatureDifference: 'a difference of temperature',
  filmCoefficient: 'a film coefficient',
  heatCapacity: 'a heat capacity',
  resistancePerLength: 'a resistance per length',
  keyingSpeed: 'a keying speed',
  count: 'a count',
  number: 'a plain number',
  volumeFlow: 'a flow of air',
  pressure: 'a pressure',
};

/** Dimensions whose values people write with a bare SI prefix: "4k7", "22m", "2u2". */
const prefixed: ReadonlySet<Dimension> = new Set([
  'power',
  'voltage',
  'current',
  'resistance',
  'frequency',
  'capacitance',
  'inductance',
]);

const prefixFactors: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  m: 1e-3,
  k: 1e3,
  M: 1e6,
  G: 1e9,
};

/**
 * The factor of a bare prefix letter in a dimension, or undefined where it would be a guess: "22m" is 22 mΩ in
 * a resistance but could be metres, minutes or milli elsewhere. `R` and `V` mark the decimal point ("4R7", "3V3").
 */
export function prefixFactor(letter: string, dimension: Dimension): number | undefined {
  if (dimension === 'resistance' && (letter === 'R' || letter === 'r')) return 1;
  // Elsewhere a capital K is a kelvin in the wrong field.
  if (dimension === 'resistance' && letter === 'K') return 1e3;
  if (dimension === 'voltage' && (letter === 'V' || letter === 'v')) return 1;
  return prefixed.has(dimension) ? prefixFactors[letter] : undefined;
}

/** The unit of a dimension with this printed symbol, or the first one offered. */
export function findUnit(dimension: Dimension, symbol: string): Unit {
  const all = units[dimension];
  return all.find((each) => each.symbol === symbol) ?? all.find((each) => each.offered) ?? all[0]!;
}

/** The units a field's menu offers. */
export function offeredUnits(dimension: Dimension): readonly Unit[] {
  return units[dimension].filter((each) => each.offered);
}

/** SI value of a number in a unit. */
export function toSI(number: number, of: Unit): number {
  return number * of.factor + (of.offset ?? 0);
}

/** Number of a SI value in a unit. */
export function fromSI(value: number, of: Unit): number {
  return (value - (of.offset ?? 0)) / of.factor;
}

/** The usual metric unit of each dimension. */
export const metricUnits: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  area: 'mm²',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'Ω',
  thermalResistance: 'K/W',
  temperature: '°C',
  temperatureCoefficient: '%/K',
  time: 's',
  share: '%',
  decibel: 'dB',
  frequency: 'MHz',
  mass: 'g',
  capacitance: 'µF',
  inductance: 'µH',
  charge: 'Ah',
  energy: 'J',
  pulseIntegral: 'A² s',
  angle: '°',
  conductivity: 'W/(m K)',
  temperatureDifference: 'K',
  filmCoefficient: 'W/(m² K)',
  heatCapacity: 'J/K',
  resistancePerLength: 'mΩ/m',
  keyingSpeed: 'wpm',
  count: '',
  number: '',
  volumeFlow: 'L/s',
  pressure: 'Pa',
};

const inchUnits: Partial<Record<Dimension, string>> = {
  length: 'in',
  area: 'in²',
  mass: 'oz',
};

/** A field whose range ends here or above is a distance (wire, altitude), not a part on the bench, m. */
const distanceFrom = 5;
/** A resistance field that ends at or below this is a matter of milliohms, Ω. */
const milliohmsBelow = 5;
/** A time field that begins below this is a matter of milliseconds, s. */
const millisecondsBelow = 0.1;

/** A time field that begins at or above this is a matter of hours, s. */
const hoursFrom = 1800;
/** A frequency field that ends at or below this is a matter of kilohertz, Hz. */
const kilohertzBelow = 5e6;
/** A charge, a capacitance or a time field that ends at or below this belongs to a transistor. */
const transistorBelow = { charge: 1e-3, capacitance: 1e-6, time: 1e-4 } as const;

/** The unit a field starts with. It follows from its dimension, its range and the builder's family of units. */
export function defaultUnit(spec: Pick<NumberSpec, 'dimension' | 'min' | 'max'>, system: UnitSystem): string {
  const { dimension, min, max } = spec;
  if (dimension === 'length' && max >= distanceFrom) return system === 'inch' ? 'ft' : 'm';
  if (dimension === 'resistance' && max <= milliohmsBelow) return 'mΩ';
  if (dimension === 'frequency' && max <= kilohertzBelow) return 'kHz';
  if (dimension === 'charge' && max <= transistorBelow.charge) return 'nC';
  if (dimension === 'capacitance' && max <= transistorBelow.capacitance) return 'pF';
  if (dimension === 'time' && max <= transistorBelow.time) return 'ns';
  if (dimension === 'time' && min >= hoursFrom) return 'h';
  if (dimension === 'time' && min < millisecondsBelow && min > 0) return 'ms';
  const inInches = system === 'inch' ? inchUnits[dimension] : undefined;
  return inInches ?? metricUnits[dimension];
}
