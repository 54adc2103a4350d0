import type { Doubt } from '../../../shared/design/doubtSchema.ts';
import { instruments } from '../../../shared/design/instruments.ts';
import { type FieldPlace, fieldsOf } from '../../../shared/design/leaves.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import { applies } from './applies.ts';
import { type Leaf, leafAt, type NumberField, valueAt } from './fields.ts';

export type UnitOf = (path: string, spec: NumberField) => string;

/** One given value as text, or a whole list of them. */
export interface GivenRow {
  /** Of the field, or of the list. */
  readonly path: string;
  readonly label: string;
  readonly value: string;
  /** Of a list: what its rows are called, and each row as text. */
  readonly list?: { readonly noun: string; readonly items: readonly string[] };
  /** Says nothing: empty, no, none or nought. */
  readonly idle: boolean;
}

export interface GivenGroup {
  readonly section: string;
  readonly title: string;
  readonly rows: readonly GivenRow[];
}

const titles: Readonly<Record<string, string>> = {
  source: 'Source',
  wiring: 'Wire and fuse',
  converter: 'Converter',
  boards: 'Other boards',
  amplifier: 'Final',
  device: 'Devices and mounting',
  sink: 'Sink',
  surroundings: 'Case and surroundings',
  service: 'Service',
  antenna: 'Antenna and people',
  limits: 'Limits',
  hazards: 'Stored energy and rail',
  doubts: 'How well it is known',
  bench: 'Bench runs',
};

/** Lists of the design: what the list is called, and what one row of it. */
const lists: Readonly<Record<string, readonly [string, string]>> = {
  'wiring.path': ['Parts of the 12 V path', 'Part'],
  'converter.points': ['Efficiency points', 'Point'],
  'amplifier.readings': ['Readings of the final', 'Reading'],
  'device.places': ['Places on the plate', 'Place'],
  'device.fosterStages': ['Stages of the curve fit', 'Stage'],
  'device.cauerStages': ['Stages junction to case', 'Stage'],
  'device.impedancePoints': ['Transient impedance', 'Impedance'],
  bench: ['Bench runs', 'Run'],
};

const none = '–';

/** A value as the builder would write it. */
export function writeLeaf({ path, spec }: FieldPlace, value: Leaf, unitOf: UnitOf): string {
  if (value === null || value === '') return none;
  if (spec.kind === 'choice') return spec.options[String(value)] ?? String(value);
  if (spec.kind === 'flag') return value ? 'yes' : 'no';
  if (spec.kind === 'text' || typeof value !== 'number') return String(value);
  return writeEcho(value, spec.dimension, unitOf(path, spec));
}

function saysNothing(value: Leaf): boolean {
  return value === null || value === false || value === 0 || value === 'none' || value === '';
}

/** "wiring.path.2.kind" -> "wiring.path"; undefined for a field that stands in no list. */
function listOf(path: string): string | undefined {
  const at = path.search(/\.\d+\./);
  return at < 0 ? undefined : path.slice(0, at);
}

function itemText(fields: readonly FieldPlace[], prefix: string, design: Design, unitOf: UnitOf): string {
  const own = fields.filter(
    ({ path }) => path.startsWith(prefix) && listOf(path.slice(prefix.length)) === undefined,
  );
  const texts = own.flatMap((field) => {
    const value = leafAt(design, field.path);
    if (saysNothing(value)) return [];
    return field.spec.kind === 'flag' ? [field.spec.label.toLowerCase()] : [writeLeaf(field, value, unitOf)];
  });
  const readings = valueAt(design, `${prefix}readings`);
  return [...texts, ...(Array.isArray(readings) ? [`${readings.length} readings`] : [])].join(', ');
}

function listRow(path: string, fields: readonly FieldPlace[], design: Design, unitOf: UnitOf): GivenRow {
  const [label, noun] = lists[path] ?? [path, 'Row'];
  const rows = valueAt(design, path);
  const items = Array.isArray(rows)
    ? rows.map((_, index) => itemText(fields, `${path}.${index}.`, design, unitOf))
    : [];
  return {
    path,
    label,
    value: items.length === 0 ? none : items.map((item, index) => `${index + 1}: ${item}`).join('; '),
    list: { noun, items },
    idle: items.length === 0,
  };
}

function doubtText(doubt: Doubt, field: FieldPlace, unitOf: UnitOf): string {
  if (typeof doubt === 'string') return instruments[doubt];
  const spec = field.spec as NumberField;
  const dimension = spec.dimension === 'temperature' ? 'temperatureDifference' : spec.dimension;
  return `±${writeEcho(doubt, dimension, unitOf(field.path, spec))}`;
}

function doubtRows(fields: readonly FieldPlace[], design: Design, unitOf: UnitOf): readonly GivenRow[] {
  return fields.flatMap((field) => {
    const doubt = (design.doubts as Readonly<Record<string, Doubt | undefined>>)[field.path];
    if (doubt === undefined) return [];
    const value = doubtText(doubt, field, unitOf);
    return [{ path: `doubts.${field.path}`, label: field.spec.label, value, idle: false }];
  });
}

/** Everything that is given and has a meaning in this design, as text, in the order of the file; without its name. */
export function givenGroups(design: Design, unitOf: UnitOf): readonly GivenGroup[] {
  const fields = fieldsOf(design).filter(({ path }) => path !== 'name' && applies(design, path));
  const groups = new Map<string, GivenRow[]>();
  const listed = new Set<string>();
  const add = (row: GivenRow) => {
    const section = row.path.split('.')[0]!;
    groups.set(section, [...(groups.get(section) ?? []), row]);
  };
  for (const field of fields) {
    const list = listOf(field.path);
    if (list === undefined) {
      const value = leafAt(design, field.path);
      const { label } = field.spec;
      add({ path: field.path, label, value: writeLeaf(field, value, unitOf), idle: saysNothing(value) });
    } else if (!listed.has(list)) {
      listed.add(list);
      add(listRow(list, fields, design, unitOf));
    }
  }
  for (const row of doubtRows(fields, design, unitOf)) add(row);
  return [...groups].map(([section, rows]) => ({ section, title: titles[section] ?? section, rows }));
}
