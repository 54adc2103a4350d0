import type { Design } from '../../../shared/design/schema.ts';
import { writeQuantity } from '../quantity/write.ts';

/** Below this share of the PEP wanted (3 dB) the design does not do its job. Own choice. */
const wantedShare = 0.5;

/** Below this share of it (1 dB) what comes out is told beside every duty. Own choice. */
const toldShare = 0.8;

/** Whether less than half of the PEP wanted comes out, whatever keeps it back. reached: W at the antenna connector. */
export function fallsShort(design: Design, reached: number | undefined): boolean {
  return reached !== undefined && reached < wantedShare * design.amplifier.pep;
}

/** What a duty stands for where the power wanted is not reached, mismatch and foldback included: ", at 27.5 W, not 40 W". */
export function reachedWords(design: Design, reached: number | undefined): string {
  if (reached === undefined || reached >= toldShare * design.amplifier.pep) return '';
  const watts = (value: number) => writeQuantity(value, 'power', 'W');
  return `, at ${watts(reached)}, not ${watts(design.amplifier.pep)}`;
}
