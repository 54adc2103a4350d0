import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotCourse } from '../../../src/engine/couple/slotCourse.ts';

const any = fc.record({
  over: fc.double({ min: 1, max: 7200, noNaN: true }),
  slot: fc.constantFrom(7.5, 15, 120),
  keyedShare: fc.double({ min: 0.3, max: 0.95, noNaN: true }),
  followed: fc.integer({ min: 1, max: 5 }),
});

describe('course of an over in slots', () => {
  it('fills the over and sends for the keyed share of it', () => {
    fc.assert(
      fc.property(any, ({ over, slot, keyedShare, followed }) => {
        const parts = slotCourse(over, slot, keyedShare, followed);
        const weight = { sending: 1, listening: 0, mean: keyedShare } as const;
        const time = parts.reduce((sum, { duration }) => sum + duration, 0);
        const sent = parts.reduce((sum, { kind, duration }) => sum + weight[kind] * duration, 0);
        expect(time).toBeCloseTo(over, 6);
        expect(sent).toBeCloseTo(keyedShare * over, 6);
        expect(parts.every(({ duration }) => duration > 0)).toBe(true);
      }),
    );
  });

  it('stands in for many slots with a few parts and the same mean surplus of heat', () => {
    const [slot, keyedShare, count] = [15, 0.8, 20];
    const surplusArea = (parts: ReturnType<typeof slotCourse>) => {
      let surplus = 0;
      let area = 0;
      for (const { kind, duration } of parts) {
        const power = kind === 'sending' ? 1 : kind === 'listening' ? 0 : keyedShare;
        const step = (power - keyedShare) * duration;
        area += (surplus + step / 2) * duration;
        surplus += step;
      }
      return area;
    };
    const short = slotCourse(count * slot, slot, keyedShare, 1);
    const full = slotCourse(count * slot, slot, keyedShare, count);
    expect(full).toHaveLength(2 * count);
    expect(short.length).toBeLessThan(8);
    expect(surplusArea(short) / surplusArea(full)).toBeCloseTo(1, 1);
    expect(short.filter(({ standsIn }) => !standsIn)).toHaveLength(2);
  });

  it('holds at least one slot, shortened to fill a short over', () => {
    expect(slotCourse(6, 15, 0.5, 1)).toEqual([
      { kind: 'sending', duration: 3, standsIn: false },
      { kind: 'listening', duration: 3, standsIn: false },
    ]);
  });
});
