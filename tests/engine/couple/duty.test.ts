import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { failure, success } from '../../../shared/outcome.ts';
import { type DutyLimit, type DutyPoint, safeShare } from '../../../src/engine/couple/duty.ts';
import { between } from '../heat/geometries.ts';
import { resultOf } from '../resultOf.ts';

const junction = (limit: number): DutyLimit => ({
  key: 'junction',
  limit,
  temperature: (point) => point.junctionPeak,
});
const touch = (limit: number): DutyLimit => ({
  key: 'touch',
  limit,
  temperature: (point) => point.platePeak,
});

/** Temperatures over the share: the junction from 300 K to 300 + rise, the plate half of it. */
const curve = (rise: number) => (share: number) => ({
  share,
  junctionPeak: 300 + rise * share ** 0.8,
  platePeak: 300 + (rise / 2) * share ** 0.8,
});

/** Counts how often a state is asked for. */
function counted(at: (share: number) => DutyPoint) {
  const asked: number[] = [];
  return {
    asked,
    at: (share: number) => {
      asked.push(share);
      return success(at(share));
    },
  };
}

describe('safe share', () => {
  it('is where the limit is met, whatever state is known before', () => {
    fc.assert(
      fc.property(between(20, 400), between(0, 1), fc.boolean(), (rise, planned, rising) => {
        const at = curve(rise);
        const exact = Math.min(1, (98 / rise) ** 1.25);
        const given = rising ? at(planned) : undefined;
        const found = resultOf(safeShare((share) => success(at(share)), [junction(398)], rising, given));
        expect(Math.abs(found.share - exact)).toBeLessThan(3e-5);
        expect(found.governing).toBe(rise > 98 ? 'junction' : null);
      }),
    );
  });

  it('never asks for a state twice, and for few', () => {
    const { asked, at } = counted(curve(200));
    safeShare(at, [junction(398), touch(500)], true, curve(200)(0.5));
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked).not.toContain(0.5);
    expect(asked.length).toBeLessThan(9);
  });

  it('names the limit that is met first', () => {
    const at = (share: number) => success(curve(200)(share));
    expect(resultOf(safeShare(at, [junction(398), touch(320)], true)).governing).toBe('touch');
    expect(resultOf(safeShare(at, [junction(330), touch(320)], true)).governing).toBe('junction');
  });

  it('is nothing where listening alone passes the limit', () => {
    const at = (share: number) => success(curve(200)(share));
    expect(resultOf(safeShare(at, [junction(299)], true))).toEqual({ share: 0, governing: 'junction' });
    expect(resultOf(safeShare(at, [junction(299)], true, curve(200)(0.4)))).toEqual({
      share: 0,
      governing: 'junction',
    });
  });

  it('takes the first crossing of a curve that falls again', () => {
    const hill = (share: number) =>
      success({ junctionPeak: 300 + 120 * Math.sin(Math.PI * share), platePeak: 300 });
    const found = resultOf(safeShare(hill, [junction(360)], false));
    expect(Math.abs(found.share - 1 / 6)).toBeLessThan(3e-5);
  });

  it('ends before a share without a steady state', () => {
    const at = (share: number) => (share > 0.7 ? failure('runaway', 'none') : success(curve(50)(share)));
    const found = resultOf(safeShare(at, [junction(398)], true));
    expect(Math.abs(found.share - 0.7)).toBeLessThan(3e-5);
    expect(found.governing).toBe('junction');
  });
});
