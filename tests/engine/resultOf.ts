import type { Outcome } from '../../shared/outcome.ts';

/** The value of an outcome that must have one; the reason fails the test. */
export function resultOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.reason.key}: ${outcome.reason.sentence}`);
  return outcome.value;
}
