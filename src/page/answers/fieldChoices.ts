import type { FieldSpec } from '../../../shared/design/fields.ts';
import { fieldsOf } from '../../../shared/design/leaves.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { services } from '../../../shared/solution.ts';
import { entryFor, quantityOrder } from '../../engine/catalogue/index.ts';
import { applies } from '../state/applies.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceGroup {
  readonly label: string;
  readonly choices: readonly Choice[];
}

const sections: Readonly<Record<string, string>> = {
  source: 'Source',
  wiring: 'Wiring',
  converter: 'Converter',
  boards: 'Other boards',
  amplifier: 'Final',
  device: 'Devices',
  sink: 'Sink',
  surroundings: 'Surroundings',
  service: 'Service and duty',
  antenna: 'Antenna',
  limits: 'Limits',
  hazards: 'Stored energy',
};

/** Rows of a list bear the same labels; they are counted. */
function labelOf(path: string, spec: FieldSpec): string {
  const row = /\.(\d+)\./.exec(path);
  return row ? `${spec.label} (${Number(row[1]) + 1})` : spec.label;
}

/** Fields in sight, by section, under the labels of the sheet. */
function fieldGroups(design: Design, wanted: (spec: FieldSpec) => boolean): readonly ChoiceGroup[] {
  const groups = new Map<string, Choice[]>();
  for (const { path, spec } of fieldsOf(design)) {
    const section = path.split('.')[0]!;
    if (sections[section] === undefined || !wanted(spec) || !applies(design, path)) continue;
    const choices = groups.get(section) ?? [];
    choices.push({ value: path, label: labelOf(path, spec) });
    groups.set(section, choices);
  }
  return [...groups].map(([section, choices]) => ({ label: sections[section]!, choices }));
}

/** What can be the unknown: numbers and choices. */
export function unknownGroups(design: Design): readonly ChoiceGroup[] {
  return fieldGroups(design, (spec) => spec.kind === 'number' || spec.kind === 'choice');
}

/** What can be drawn along an axis: numbers. */
export function axisGroups(design: Design): readonly ChoiceGroup[] {
  return fieldGroups(design, (spec) => spec.kind === 'number');
}

/** Found quantities that this design has, the often asked ones of each service first. */
const oftenAsked = ['safeDuty', 'junctionPeak', 'junctionMargin', 'holdTime'];

export function targetGroups(
  values: Readonly<Record<string, number>>,
  nameOf: (service: (typeof services)[number]) => string,
): readonly ChoiceGroup[] {
  const choice = (key: string, of = ''): readonly Choice[] => {
    const entry = entryFor(key);
    if (!entry || entry.given || values[key] === undefined) return [];
    return [{ value: key, label: of === '' ? entry.label : `${entry.label} (${of})` }];
  };
  const byService = services.map((service) => {
    const often = oftenAsked.map((name) => `${service}.${name}`);
    const others = quantityOrder.map((name) => `${service}.${name}`).filter((key) => !often.includes(key));
    return {
      label: nameOf(service),
      choices: [...often, ...others].flatMap((key) => choice(key, nameOf(service))),
    };
  });
  const whole = { label: 'Whole design', choices: quantityOrder.flatMap((key) => choice(key)) };
  return [...byService, whole].filter((group) => group.choices.length > 0);
}
