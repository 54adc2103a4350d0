import { type Note, note } from '../../../shared/outcome.ts';

/** Weighed over drawn mass, and what to make of it. */
export interface MassCheck {
  readonly ratio: number;
  readonly verdict: 'agrees' | 'differs' | 'doubtful';
  readonly notes: readonly Note[];
}

/** Rounded roots, holes and taper change the mass by this much (own choice). */
const usual = 0.1;
/** More than this is a wrong dimension or another metal (own choice). */
const doubtful = 0.25;

/**
 * Compares the weighed mass of a sink with that of its drawing. The weighed mass decides the heat capacity; the
 * comparison finds wrong entries.
 *
 * @param weighed kg
 * @param drawn kg, from dimensions and metal
 */
export function massCheck(weighed: number, drawn: number): MassCheck {
  const ratio = weighed / drawn;
  const off = Math.abs(ratio - 1);
  if (off <= usual) return { ratio, verdict: 'agrees', notes: [] };
  const verdict = off <= doubtful ? 'differs' : 'doubtful';
  return { ratio, verdict, notes: [noteOf(ratio, verdict)] };
}

function noteOf(ratio: number, verdict: 'differs' | 'doubtful'): Note {
  const percent = Math.round(Math.abs(ratio - 1) * 100);
  const side = ratio > 1 ? 'heavier' : 'lighter';
  const advice =
    verdict === 'differs'
      ? 'Holes, rounded roots or tapered fins may explain it.'
      : ratio > 1
        ? 'Look for a thicker plate or fins, a bracket or a bolt left on, or another metal.'
        : 'Look for tapered, hollow or shorter fins, fewer of them, a thinner plate, or another metal.';
  return note(
    verdict === 'differs' ? 'information' : 'limit',
    verdict === 'differs' ? 'massDiffers' : 'massDoubtful',
    `The sink weighs ${percent} % ${side} than its drawing. ${advice}`,
    { ratio },
  );
}
