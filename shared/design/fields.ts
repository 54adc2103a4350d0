import * as z from 'zod/mini';

/** The physical dimension of a field; the page and the reader of typed text choose display units from it. */
export type Dimension =
  | 'length'
  | 'area'
  | 'power'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'thermalResistance'
  | 'temperature'
  | 'temperatureCoefficient'
  | 'time'
  | 'share'
  | 'decibel'
  | 'frequency'
  | 'mass'
  | 'capacitance'
  | 'inductance'
  | 'charge'
  | 'angle'
  | 'conductivity'
  | 'keyingSpeed'
  | 'count'
  | 'number'
  | 'volumeFlow'
  | 'pressure'
  | 'temperatureDifference'
  // Found quantities only; no field has these.
  | 'energy'
  | 'pulseIntegral'
  | 'heatCapacity'
  | 'filmCoefficient'
  | 'resistancePerLength';

/** The SI unit in which a design file holds a field of each dimension, as printed in messages and in the JSON Schema. */
export const fileUnits: Readonly<Record<Dimension, string>> = {
  length: 'm',
  area: 'm²',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'Ω',
  thermalResistance: 'K/W',
  temperature: 'K',
  temperatureCoefficient: '1/K',
  time: 's',
  share: '1',
  decibel: 'dB',
  frequency: 'Hz',
  mass: 'kg',
  capacitance: 'F',
  inductance: 'H',
  charge: 'C',
  angle: 'rad',
  conductivity: 'W/(m K)',
  keyingSpeed: 'words per minute',
  count: 'pieces',
  number: '1',
  volumeFlow: 'm³/s',
  pressure: 'Pa',
  energy: 'J',
  pulseIntegral: 'A² s',
  temperatureDifference: 'K',
  heatCapacity: 'J/K',
  filmCoefficient: 'W/(m² K)',
  resistancePerLength: 'Ω/m',
};

export interface NumberSpec {
  readonly label: string;
  readonly dimension: Dimension;
  readonly min: number;
  readonly max: number;
  /** Where the builder finds this number, in one sentence. */
  readonly help: string;
}

export interface ChoiceSpec {
  readonly label: string;
  readonly help: string;
  /** Value in the file -> words on the page. */
  readonly options: Readonly<Record<string, string>>;
}

export interface FlagSpec {
  readonly label: string;
  readonly help: string;
}

export interface TextSpec {
  readonly label: string;
  readonly help: string;
  readonly maxLength: number;
}

export type FieldSpec =
  | ({ readonly kind: 'number'; readonly optional: boolean } & NumberSpec)
  | ({ readonly kind: 'choice' } & ChoiceSpec)
  | ({ readonly kind: 'flag' } & FlagSpec)
  | ({ readonly kind: 'text' } & TextSpec);

/** Every leaf of the design schema registers what it is here, so label, unit, range and help are said once. */
export const fieldRegistry = z.registry<FieldSpec>();

/** A short figure for a message: at most four significant digits, no exponent for everyday sizes. */
export function plain(value: number): string {
  const short = Number(value.toPrecision(4));
  return Math.abs(short) >= 1e-4 && Math.abs(short) < 1e6 ? String(short) : short.toExponential();
}

function rangeMessage(spec: NumberSpec): string {
  const unit =
    spec.dimension === 'share' || spec.dimension === 'number' ? '' : ` ${fileUnits[spec.dimension]}`;
  return `${spec.label} must lie between ${plain(spec.min)} and ${plain(spec.max)}${unit}`;
}

function numberSchema(spec: NumberSpec) {
  const unit = fileUnits[spec.dimension];
  const kind = `${spec.label} must be a number${unit === '1' ? '' : ` in ${unit}`}`;
  const base =
    spec.dimension === 'count'
      ? z.number({ error: kind }).check(z.int({ error: `${spec.label} must be a whole number` }))
      : z.number({ error: kind });
  return base.check(
    z.gte(spec.min, { error: rangeMessage(spec) }),
    z.lte(spec.max, { error: rangeMessage(spec) }),
  );
}

/** A number that must be given. */
export function number(spec: NumberSpec) {
  return numberSchema(spec).register(fieldRegistry, {
    kind: 'number',
    optional: false,
    ...spec,
  });
}

/** A number that may be unknown; `null` in the file. */
export function maybeNumber(spec: NumberSpec) {
  return z.nullable(numberSchema(spec)).register(fieldRegistry, { kind: 'number', optional: true, ...spec });
}

export function choice<const T extends Record<string, string>>(spec: {
  readonly label: string;
  readonly help: string;
  readonly options: T;
}) {
  const keys = Object.keys(spec.options) as [keyof T & string, ...(keyof T & string)[]];
  const error = `${spec.label} must be one of: ${keys.join(', ')}`;
  return z.enum(keys, { error }).register(fieldRegistry, { kind: 'choice', ...spec });
}

export function flag(spec: FlagSpec) {
  return z
    .boolean({ error: `${spec.label} must be true or false` })
    .register(fieldRegistry, { kind: 'flag', ...spec });
}

export function text(spec: TextSpec) {
  return z
    .string({ error: `${spec.label} must be text` })
    .check(
      z.maxLength(spec.maxLength, {
        error: `${spec.label} may have at most ${spec.maxLength} characters`,
      }),
    )
    .register(fieldRegistry, { kind: 'text', ...spec });
}
