import { type Outcome, success } from '../../../shared/outcome.ts';
import type { Metal } from './materials.ts';
import { plateSpread } from './plateSpread.ts';

/** A plate of metal between a part and the sink. */
export interface Spreader {
  /** Along the plate's width, m. */
  readonly width: number;
  readonly length: number;
  readonly thickness: number;
  readonly metal: Metal;
  /** Between spreader and sink, K/W over the spreader's whole face. */
  readonly joint: number;
  /** Contact face of the part, in the middle of the spreader, m. */
  readonly faceWidth: number;
  readonly faceLength: number;
}

/** Film below which the series is not asked, W/(m² K): an all but perfect insulator under the spreader. */
const leastFilm = 1;

/**
 * From the face of a part through its spreader into the sink's plate, K/W: the second of two steps, the first being the
 * sink's plate with the whole spreader as a source of even heat.
 *
 * The same series as for the plate, for a part in the middle of the spreader, cooled over its lower face by a film that
 * stands for the joint and the plate's own local rise: h = 1/[A (R_joint + R_plate)]. A film spread out like this takes
 * heat off more evenly than the plate would, while the plate is taken to be heated evenly by the spreader: together within
 * 1 % of a computation by finite volumes, on the low side.
 *
 * @param local mean rise of the sink's plate under the spreader over the plate's mean, per watt, K/W
 * @returns spreading in the spreader and the joint; without the plate's local rise
 */
export function spreaderResistance(spreader: Spreader, local: number): Outcome<number> {
  const { width, length, thickness, metal, joint } = spreader;
  const area = width * length;
  const spread = plateSpread(
    {
      width,
      length,
      thickness,
      conductivity: metal.conductivity,
      film: Math.max(1 / (area * Math.max(joint + local, 1e-6)), leastFilm),
    },
    [{ x: width / 2, y: length / 2, width: spreader.faceWidth, length: spreader.faceLength }],
  );
  if (!spread.ok) return spread;
  return success(spread.value.meanMatrix[0]![0]! + joint);
}
