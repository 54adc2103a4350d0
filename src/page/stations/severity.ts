import type { Severity } from '../../../shared/solution.ts';

/** How a caution is called, most severe first. */
export const severityWords: Readonly<Record<Severity, string>> = {
  danger: 'Danger',
  warning: 'Warning',
  caution: 'Caution',
  note: 'Note',
};
