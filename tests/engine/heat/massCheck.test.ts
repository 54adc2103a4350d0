import { describe, expect, it } from 'vitest';
import { massCheck } from '../../../src/engine/heat/massCheck.ts';

describe('weighed against drawn mass', () => {
  it.each([
    [1.0, 'agrees', []],
    [0.92, 'agrees', []],
    [0.85, 'differs', ['massDiffers']],
    [1.2, 'differs', ['massDiffers']],
    [0.6, 'doubtful', ['massDoubtful']],
    [1.5, 'doubtful', ['massDoubtful']],
  ])('of ratio %d %s', (ratio, verdict, keys) => {
    const check = massCheck(2 * ratio, 2);
    expect(check.ratio).toBeCloseTo(ratio, 12);
    expect(check.verdict).toBe(verdict);
    expect(check.notes.map((n) => n.key)).toEqual(keys);
  });

  it('says which way and what to check', () => {
    expect(massCheck(0.6, 1).notes[0]!.sentence).toContain('40 % lighter');
    expect(massCheck(1.5, 1).notes[0]!.sentence).toContain('50 % heavier');
  });
});
