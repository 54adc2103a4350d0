/** A stretch of an over in slots, with the heat that stands for it. */
export interface SlotPart {
  readonly kind: 'sending' | 'listening' | 'mean';
  /** Stands for slots before: the sink follows its course, the device has not come into the rhythm of slots. */
  readonly standsIn: boolean;
  /** s */
  readonly duration: number;
}

/**
 * An over in slots as few stretches of constant heat, with the same energy and the same course of the sink at its end.
 *
 * The last slots are followed one by one. Those before them count with their mean heat, but the sink runs ahead of the
 * mean within every slot, on the average by half of what it gains while sending; half a sending before the mean and half a
 * listening after it put that in. What the sink sheds of it meanwhile is of second order.
 *
 * An over holds a whole number of slots: the nearest, stretched or shortened to fill it, so that the mean heat of an over
 * does not jump with its length.
 *
 * over, slot: s. keyedShare: of a slot, spent sending. followed: slots followed at the end, at least 1.
 */
export function slotCourse(over: number, slot: number, keyedShare: number, followed: number): SlotPart[] {
  const count = Math.max(1, Math.round(over / slot));
  const length = over / count;
  const part = (kind: SlotPart['kind'], duration: number, standsIn = false): SlotPart => ({
    kind,
    standsIn,
    duration,
  });
  const sending = keyedShare * length;
  const listening = length - sending;
  const each = (slots: number, standsIn = false) =>
    Array.from({ length: slots }, () => [
      part('sending', sending, standsIn),
      part('listening', listening, standsIn),
    ]).flat();
  const before = count - followed - 1;
  // Up to two slots before cost no more than their replacement.
  if (before <= 2) return each(count);
  return [
    part('sending', sending / 2, true),
    part('mean', (before - 0.5) * length, true),
    part('listening', listening / 2, true),
    // One slot for the device to find the rhythm.
    ...each(1, true),
    ...each(followed),
  ];
}
