import contactTable from '../../../reference-data/contactCurrent.json';
import type { ContactLevel } from '../../../shared/solution.ts';
import { brushBurn, contactLevel, powerAtLevel } from './contactCurrent.ts';

const megahertz = 1e6;
const milliampere = 1e-3;

/**
 * Published levels of radio-frequency current through a hand, beside the power into an impedance at which the current
 * of a matched output reaches each.
 *
 * frequency: Hz; impedance: Ω. Levels that are not listed at this frequency are left out.
 * Sources: IEEE C95.1-2345-2014 and ICNIRP 2010, as tabulated in reference-data/contactCurrent.json.
 */
export function contactTableAt(frequency: number, impedance: number): readonly ContactLevel[] {
  const rows: ContactLevel[] = [];
  const add = (key: string, label: string, level: number) =>
    rows.push({ key, label, level, power: powerAtLevel(level, impedance) });
  const listed = (label: string, place: 'unrestricted' | 'restricted', contact: 'touch' | 'grasp') => {
    const level = contactLevel(frequency, place, contact);
    if (level.ok) add(`${place}.${contact}`, label, level.value);
  };
  listed('Touch, anyone (IEEE C95.1)', 'unrestricted', 'touch');
  listed('Touch, restricted place (IEEE C95.1)', 'restricted', 'touch');
  listed('Grasp, restricted place (IEEE C95.1)', 'restricted', 'grasp');
  const { icnirp2010 } = contactTable;
  const f = frequency / megahertz;
  if (f >= icnirp2010.from && f <= icnirp2010.to) {
    add('icnirp.public', 'Contact, public (ICNIRP 2010)', icnirp2010.public * milliampere);
    add('icnirp.occupational', 'Contact, at work (ICNIRP 2010)', icnirp2010.occupational * milliampere);
  }
  add('brush', 'A light brush can arc and burn', brushBurn);
  return rows.sort((first, second) => first.level - second.level);
}
