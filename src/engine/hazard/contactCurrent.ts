import contactTable from '../../../reference-data/contactCurrent.json';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';

const megahertz = 1e6;
const milliampere = 1e-3;

/** From this power a caution stands at the output, W. Own choice; 0.014 W into 50 Ω already passes the touch level. */
export const cautionFrom = 1;

/** A light brush can arc and burn at this current, A. */
export const brushBurn = contactTable.brush.burns * milliampere;

interface ContactRow {
  readonly from: number;
  readonly to: number;
  readonly touch: readonly number[];
  readonly grasp: readonly number[] | null;
}

/**
 * Level of radio-frequency current through a touching finger or a grasping hand, A r.m.s.
 *
 * Touch 16.7 mA, 16.7 (f/3 MHz)^0.3 from 3 to 30 MHz, 33.4 mA above; three times that in restricted places, with
 * grasp 100, 100 (f/3)^0.3, 200 mA. frequency: Hz, 0.1 to 110 MHz.
 * Errors: `contactFrequency` outside, `noGraspLevel` where only touch is listed.
 * Source: IEEE C95.1-2345-2014 as tabulated by Tell and Tell (2018).
 */
export function contactLevel(
  frequency: number,
  place: 'unrestricted' | 'restricted' = 'unrestricted',
  contact: 'touch' | 'grasp' = 'touch',
): Outcome<number> {
  const f = frequency / megahertz;
  const rows = contactTable[place] as readonly ContactRow[];
  const row = rows.find(
    (one, index) => f >= one.from && (f < one.to || (index === rows.length - 1 && f <= one.to)),
  );
  if (!row)
    return failure('contactFrequency', 'Contact levels are listed from 0.1 to 110 MHz.', { frequency });
  const level = row[contact];
  if (level === null) return failure('noGraspLevel', 'Only a touch level is listed here.', { frequency });
  return success(level[0]! * (f / 3) ** level[1]! * milliampere);
}

/** Power into an impedance whose current equals a contact level, W: I² Z. */
export function powerAtLevel(level: number, impedance: number): number {
  return level * level * impedance;
}
