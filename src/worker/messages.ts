import type { Dimension } from '../../shared/design/fields.ts';
import type { Outcome } from '../../shared/outcome.ts';
import type { Reading } from '../engine/quantity/read.ts';

/** Typed text the scanner could not read, for a field of this dimension in this unit. */
export interface ExpressionQuestion {
  readonly id: number;
  readonly text: string;
  readonly dimension: Dimension;
  readonly unit: string;
}

export interface ExpressionAnswer {
  readonly id: number;
  readonly outcome: Outcome<Reading>;
}
