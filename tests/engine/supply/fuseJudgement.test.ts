import { describe, expect, it } from 'vitest';
import sources from '../../../reference-data/sources-supply.json';
import { type FuseQuestion, judgeFuse, wireProtection } from '../../../src/engine/supply/fuseJudgement.ts';

const question: FuseQuestion = {
  load: { kind: 'bladeMedium', pepCurrent: 18, rmsCurrent: 18, ssbOnly: false, ambient: 298.15 },
  rating: 25,
  wireAmpacity: 30,
  farFault: { current: 914, limitedBy: 'resistance', power: 11700 },
  nearFault: { current: 950, limitedBy: 'resistance', power: 12000 },
  sourceVoltage: 12.8,
  distance: 0.15,
  wireArea: 4e-6,
  insulationLimit: 343.15,
};
const state = (change: Partial<FuseQuestion>, key: string) =>
  judgeFuse({ ...question, ...change }).find((finding) => finding.key === key)?.state;

describe('a fuse in its place', () => {
  it('passes: 25 A blade behind 914 A on 4 mm² of 70 °C PVC, which bears 0.25 s', () => {
    expect(judgeFuse(question).map((finding) => finding.state)).toEqual(new Array(6).fill('fine'));
  });

  it.each([
    ['load', { rating: 20 }, 'over'],
    ['wire', { wireAmpacity: 20 }, 'close'],
    ['wire', { wireAmpacity: 16 }, 'over'],
    ['wire', { wireAmpacity: 0 }, 'over'],
    ['letThrough', { farFault: { current: 30, limitedBy: 'resistance', power: 380 } }, 'over'],
    ['letThrough', { farFault: { current: 28, limitedBy: 'supply', power: 20 } }, 'fine'],
    ['letThrough', { wireArea: 0.75e-6 }, 'over'],
    ['breakingCapacity', { nearFault: { current: 3200, limitedBy: 'resistance', power: 41000 } }, 'over'],
    ['breakingCapacity', { load: { ...question.load, kind: 'glassLag' } }, 'close'],
    ['voltage', { sourceVoltage: 48 }, 'over'],
    ['voltage', { load: { ...question.load, kind: 'glassQuick' } }, 'close'],
    ['place', { distance: 0.178 }, 'fine'],
    ['place', { distance: 0.18 }, 'close'],
    ['place', { distance: 1.1 }, 'over'],
  ] as const)('%s with %j is %s', (key, change, expected) => {
    expect(state(change as Partial<FuseQuestion>, key)).toBe(expected);
  });

  it('names a source that is listed with every finding, and no infinite number', () => {
    for (const finding of judgeFuse({ ...question, wireAmpacity: 0 })) {
      expect(Object.keys(sources)).toContain(finding.source);
      for (const one of Object.values(finding.numbers)) expect(Number.isFinite(one)).toBe(true);
    }
  });

  it('protects the wire to 100 %, warns to 150 % (33 CFR 183.455), rejects above', () => {
    expect([30, 30.1, 45, 45.1].map((rating) => wireProtection(rating, 30))).toEqual([
      'fine',
      'close',
      'close',
      'over',
    ]);
  });
});
