import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wireSizesByArea } from '../../../src/engine/supply/conductor.ts';
import { type WireQuestion, wireTable } from '../../../src/engine/supply/wireTable.ts';
import { expectClose } from '../closeTo.ts';

const question: WireQuestion = {
  length: 2,
  material: 'plain',
  insulationLimit: 348.15,
  ambient: 298.15,
  pepCurrent: 16,
  heatingCurrent: 14,
  source: {
    kind: 'leadAcid',
    openVoltage: 12.8,
    internalResistance: 0.02,
    pathResistance: 0.006,
    continuousCurrent: null,
    peakCurrent: null,
  },
  load: { kind: 'bladeMedium', pepCurrent: 16, rmsCurrent: 14, ssbOnly: false, ambient: 298.15 },
  fuseRating: 25,
  fitted: '4 mm2',
};
const row = (size: string, change: Partial<WireQuestion> = {}) =>
  wireTable({ ...question, ...change }).rows.find((one) => one.size === size);

describe('wire table', () => {
  it('lists every size, thinnest first, and marks the fitted one', () => {
    const { rows } = wireTable(question);
    expect(rows.map((one) => one.size)).toEqual(wireSizesByArea);
    expect(rows.filter((one) => one.chosen).map((one) => one.size)).toEqual(['4 mm2']);
  });

  it('names the first size that passes everything, in the system of the wire fitted', () => {
    expect(wireTable(question).firstPassing).toBe('4 mm2');
    expect(wireTable({ ...question, fitted: 'AWG 14' }).firstPassing).toBe('AWG 10');
    expect(wireTable({ ...question, dropLimit: 1e-4 }).firstPassing).toBeNull();
  });

  it('says in words what a size fails', () => {
    expect(row('AWG 12')?.fails).toEqual(['a 25 A fuse does not protect it: 22.9 A allowed']);
    expect(row('2.5 mm2')?.fails).toEqual(['drop 4.3 % at PEP, over 3 %']);
    expect(row('0.5 mm2')?.fails).toHaveLength(4);
    expect(row('AWG 20', { heatingCurrent: 500 })?.fails.join()).toContain('would melt at 500 A');
    expect(row('0.5 mm2', { length: 30 })?.fails.join()).toContain('may not open the 25 A fuse');
  });

  it('the drop is that of the warm loop at the peak current', () => {
    const found = row('4 mm2');
    expectClose(found?.drop ?? 0, 16 * (found?.resistance ?? 0), 1e-12);
    expect(found?.resistance ?? 0).toBeGreaterThan(4 * 4.95e-3);
    expect(found?.resistance ?? 1).toBeLessThan(4 * 4.95e-3 * 1.1);
  });

  it('drop falls with area within a system, for any load', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.constantFrom('plain' as const, 'tinned' as const, 'copperClad' as const),
        (current, length, material) => {
          const { rows } = wireTable({
            ...question,
            pepCurrent: current,
            heatingCurrent: current / 3,
            length,
            material,
          });
          const falls = (list: typeof rows) =>
            list.every((one, index) => index === 0 || one.drop <= (list[index - 1]?.drop ?? 0));
          return (
            falls(rows.filter((one) => one.size.startsWith('AWG'))) &&
            falls(rows.filter((one) => !one.size.startsWith('AWG'))) &&
            rows.every((one) => Number.isFinite(one.drop) && Number.isFinite(one.ampacity))
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it('has no empty figure anywhere in the ranges of the design', () => {
    const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        double(0, 50),
        double(313.15, 473.15),
        double(233.15, 343.15),
        double(0, 2000),
        double(0, 2),
        double(0.1, 500),
        (length, insulationLimit, ambient, current, resistance, fuseRating) => {
          const { rows } = wireTable({
            ...question,
            length,
            insulationLimit,
            ambient,
            fuseRating,
            pepCurrent: current,
            heatingCurrent: current,
            source: { ...question.source, internalResistance: resistance, pathResistance: 0 },
          });
          return rows.every(
            (one) =>
              [one.resistance, one.drop, one.dropShare, one.ampacity].every(Number.isFinite) &&
              !/NaN|Infinity/.test(one.fails.join()),
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});
