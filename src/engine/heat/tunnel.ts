import { note } from '../../../shared/outcome.ts';
import { type FanOnSink, withFan } from './fanLaws.ts';
import type { FinConditions, PreparedFinArray } from './finArray.ts';
import type { Mounting } from './orientation.ts';
import { panelLaws, type SinkLaws } from './sinkLaws.ts';

/** Standard deviation of ln(film coefficient) of a tunnel without its fan: what happens inside is left out (own choice). */
const stillUncertainty = 0.35;

/**
 * An extrusion whose fins stand between the plate and a wall as thick as the plate, so that the channels are closed all
 * round. A fan drives all its air through them. Without it the outside of the block counts alone, as one body of one
 * temperature: no air is taken to move inside, which is cautious.
 *
 * @param fan none for a tunnel whose fan is missing or stopped
 * Source: the channels as in `forcedAir.ts`; the block as a panel of the same outside (own choice).
 */
export function tunnelLaws(
  prepared: PreparedFinArray,
  mounting: Mounting,
  fan: FanOnSink | undefined,
  conditions: FinConditions,
): SinkLaws {
  const { width, length, finHeight, baseThickness, finCount, finThickness } = prepared.geometry;
  const block = panelLaws(
    { ...prepared.geometry, baseThickness: finHeight + 2 * baseThickness },
    mounting,
    conditions,
  );
  const wall = width * length * baseThickness;
  const still: SinkLaws = {
    ...block,
    surfaceArea:
      block.surfaceArea + prepared.channelBaseArea + prepared.channelCount * 2 * finHeight * length,
    gap: prepared.gap,
    finVolume: finCount * finThickness * finHeight * length + wall,
    uncertainty: stillUncertainty,
    notes: fan ? [] : [stillNote],
  };
  return fan ? withFan(still, prepared, { fan: fan.fan, path: { kind: 'duct' } }, conditions) : still;
}

const stillNote = note(
  'limit',
  'tunnelStill',
  'A closed tunnel without its fan sheds heat by its outside alone; what little air rises inside is not counted.',
);
