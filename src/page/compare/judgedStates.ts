import type { Results } from '../state/results.ts';
import type { JudgedStates } from './consequences.ts';

/** Verdicts of both: with their bands as soon as both have one, else nominal for both, so that like is held against like. */
export function judgedStates(here: Results, there: Results): JudgedStates & { readonly sure: boolean } {
  const sure = here.band() !== undefined && there.band() !== undefined;
  const verdictsOf = (side: Results) => (sure ? side.band() : side.solution())?.verdicts ?? [];
  return { sure, mine: verdictsOf(here), theirs: verdictsOf(there) };
}
