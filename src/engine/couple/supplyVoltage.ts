import type { Design } from '../../../shared/design/schema.ts';

/** A mains supply does not run empty. */
export function hasState({ source }: Design): boolean {
  return source.kind !== 'mainsSupply';
}

/** Highest voltage the source can have, V. */
export function highestVoltage({ source }: Design): number {
  return Math.max(source.openVoltage, source.chargingVoltage ?? 0);
}

/** Forward voltages of the diodes in the path, added, V. */
export function seriesDropOf({ wiring }: Design): number {
  let drop = 0;
  for (const piece of wiring.path) if (piece.kind === 'diode') drop += piece.drop;
  return drop;
}
