import padsTable from '../../../reference-data/interfacePads.json' with { type: 'json' };
import type { DeviceInput } from '../../../shared/design/schema.ts';

/** The pads whose resistance follows from the contact area. */
export type Pad = Exclude<DeviceInput['pad'], 'measured'>;

/** Case to plate, K/W: typical, and the range that should hold nine of ten joints. */
export interface InterfaceResistance {
  readonly typical: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Thermal resistance between the case of a device and the plate, K/W: R = (t/k + joints)/A.
 *
 * @param pad what lies between
 * @param area of contact that is really pressed, m²; a single screw at the end of a tab presses 50 to 70 % of it (from
 *   memory), see `pressedShare`
 *
 * Source: reference-data/interfacePads.json; thicknesses are typical values of the trade, from memory.
 */
export function interfaceResistance(pad: Pad, area: number): InterfaceResistance {
  const row = padsTable.rows[pad];
  const specific = row.thickness / row.conductivity + row.joints;
  return { typical: specific / area, low: row.range[0]! / area, high: row.range[1]! / area };
}

/** Share of a tab that one screw at its end presses: middle of 50 to 70 % (from memory, own choice). */
const singleScrewShare = 0.6;

/** Share of the contact face that is pressed: less than all for tabs held by one screw, all for flanges. */
export function pressedShare(bodyPackage: DeviceInput['package']): number {
  return bodyPackage === 'tab' || bodyPackage === 'largeTab' ? singleScrewShare : 1;
}
