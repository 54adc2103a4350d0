import type { Design } from '../../../shared/design/schema.ts';
import { type Note, note } from '../../../shared/outcome.ts';
import { buildableTurns } from '../amplifier/turnsRatio.ts';
import { writeNumber } from '../quantity/write.ts';
import { isSwitching } from './final.ts';
import { turnsText } from './finalStage.ts';

const plain = (value: number) => writeNumber(value, 3, true);
/** Ratios this close are the same transformer. */
const sameRatio = 0.02;

/** The nearest ratios of whole turns around the one at which PEP takes the whole swing; nothing where it is not known. */
export function turnsAdvice(design: Design, values: Readonly<Record<string, number>>): readonly Note[] {
  const wanted = values.fullSwingRatio;
  const present = values.loadTurnsRatio;
  if (wanted === undefined || present === undefined || isSwitching(design.amplifier.class)) return [];
  const { reaching, falling } = buildableTurns(wanted);
  const known = design.amplifier.turnsRatio !== null;
  const now =
    Math.abs(present / wanted - 1) < sameRatio
      ? `The load ${known ? 'as wound ' : ''}is that of a turns ratio of ${plain(present)}: PEP takes the whole swing.`
      : `The load ${known ? 'as wound ' : ''}is that of a turns ratio of ${plain(present)}; PEP would take the whole swing at ${plain(wanted)}.`;
  const short = falling ? `; ${turnsText(falling)} falls short of the power` : '';
  const advice = reaching
    ? `Nearest to wind, secondary to primary: ${turnsText(reaching)}${short}.`
    : 'No ratio of whole turns up to 12 : 1 makes this power.';
  return [note('information', 'turnsAdvice', `${now} ${advice}`, { wanted, present })];
}
