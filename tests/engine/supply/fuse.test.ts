import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import table from '../../../reference-data/fuses.json';
import sources from '../../../reference-data/sources-supply.json';
import { type FuseKind, fuseKinds } from '../../../shared/design/supplyChoices.ts';
import {
  type FuseLoad,
  fuseDerating,
  fuseResistance,
  fuseType,
  gateBand,
  gateBandWords,
  neededRating,
  pickFuse,
} from '../../../src/engine/supply/fuse.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const kinds = Object.keys(fuseKinds) as FuseKind[];
const load = (
  kind: FuseKind,
  pepCurrent: number,
  celsius: number,
  more: Partial<FuseLoad> = {},
): FuseLoad => ({
  kind,
  pepCurrent,
  rmsCurrent: pepCurrent,
  ssbOnly: false,
  ambient: celsius + 273.15,
  ...more,
});

describe('rating for a carrier', () => {
  it.each(cases.fuse_pick.map((row) => [row.I, row.T, row.need, row.blade, row.maxi] as const))(
    '%f A at %i °C needs %f A: blade %i A, large blade %i A (independent implementation)',
    (current, celsius, needed, blade, large) => {
      const picked = resultOf(pickFuse(load('bladeMedium', current, celsius)));
      expectClose(picked.needed, needed, 1e-12);
      expect(picked.rating).toBe(blade);
      expect(resultOf(pickFuse(load('bladeHigh', current, celsius))).rating).toBe(large);
    },
  );

  it.each([
    [18, 25, 25],
    [18, 65, 30],
    [14, 40, 20],
  ])(
    'worked: %f A at %i °C takes %i A; 20.000 A exactly does not go up a rating',
    (current, celsius, rating) => {
      expect(resultOf(pickFuse(load('bladeMedium', current, celsius))).rating).toBe(rating);
    },
  );

  it('IEC 60127 fuses run nearer to their rating than blade fuses', () => {
    expectClose(neededRating(load('glassLag', 4.5, 20)), 5, 1e-12);
    expectClose(neededRating(load('bladeMedium', 4.5, 20)), 6, 1e-12);
  });

  it('names a kind that is not made so large', () => {
    const found = pickFuse(load('glassQuick', 18, 25));
    expect(found.ok ? '' : found.reason.key).toBe('noFuseRating');
  });
});

describe('rating for a transmitter locked to SSB', () => {
  it('follows the average until the peak governs', () => {
    const byMean = load('bladeMedium', 18, 20, { rmsCurrent: 15, ssbOnly: true });
    expectClose(neededRating(byMean), 15 / 0.75, 1e-12);
    const byPeak = load('bladeMedium', 18, 20, { rmsCurrent: 8, ssbOnly: true });
    expectClose(neededRating(byPeak), 18 / 1.1, 1e-12);
  });

  it('is never larger than for a carrier, and always keeps the peak under the 135 % gate', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: -30, max: 70, noNaN: true }),
        (kind, pep, share, celsius) => {
          const voice = neededRating(load(kind, pep, celsius, { rmsCurrent: share * pep, ssbOnly: true }));
          return voice <= neededRating(load(kind, pep, celsius)) + 1e-12 && pep / voice < 1.35;
        },
      ),
    );
  });
});

describe('derating with temperature', () => {
  // Maker data of a 40 A large blade fuse: 40, 34, 30, 25 and 22 A.
  it.each([
    [20, 40],
    [65, 34],
    [85, 30],
    [110, 25],
    [125, 22],
  ])('at %i °C carries %i A of 40', (celsius, current) => {
    expectClose(40 * fuseDerating(celsius + 273.15), current, 1e-12);
  });

  it('never rises with temperature and is held outside', () => {
    expect(fuseDerating(200)).toBe(1);
    expect(fuseDerating(600)).toBe(0.55);
    fc.assert(
      fc.property(
        fc.double({ min: 230, max: 420, noNaN: true }),
        (kelvin) => fuseDerating(kelvin + 1) <= fuseDerating(kelvin),
      ),
    );
  });
});

describe('gates', () => {
  it.each([
    ['bladeMedium', 20, 40, 'between 0.15 s and 5 s'],
    ['bladeMedium', 10, 16, 'between 0.25 s and 50 s'],
    ['bladeMedium', 25, 914, 'within 0.1 s'],
    ['bladeMedium', 40, 400, 'within 0.15 s'],
    ['bladeHigh', 40, 80, 'between 2 s and 50 s'],
    ['bladeMedium', 20, 20, 'not before 100 h, and perhaps never'],
    ['glassLag', 4, 20, 'between 0.02 s and 3 s'],
    ['cartridge', 10, 13.5, 'within 1 h'],
  ] as const)('%s %f A at %f A opens %s', (kind, rating, current, words) => {
    expect(gateBandWords(gateBand(kind, rating, current)).replace('60 min', '1 h')).toBe(words);
  });

  it('between two gates takes the wider bounds and never a time of its own', () => {
    const between = gateBand('bladeMedium', 20, 50);
    expect(between).toEqual({ multiple: 2.5, shortest: 0.04, longest: 5 });
  });

  it('bounds never rise with current and are numbers of the table', () => {
    const listed = new Set<number | null>([null]);
    for (const kind of kinds) {
      const type = fuseType(kind);
      for (const gate of [...type.gates, ...(type.gatesAbove30 ?? [])]) {
        listed.add(gate.shortest);
        listed.add(gate.longest);
      }
    }
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 0.2, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (kind, multiple, more) => {
          const first = gateBand(kind, 10, 10 * multiple);
          const second = gateBand(kind, 10, 10 * multiple * more);
          const longest = (band: typeof first) => band.longest ?? Number.MAX_VALUE;
          return listed.has(first.shortest) && listed.has(first.longest) && longest(second) <= longest(first);
        },
      ),
    );
  });
});

describe('table of fuses', () => {
  it.each(kinds)('%s has rising ratings and gates, and sources that are listed', (kind) => {
    const type = fuseType(kind);
    expect(type.ratings).toEqual([...type.ratings].sort((first, second) => first - second));
    const percents = type.gates.map((gate) => gate.percent);
    expect(percents).toEqual([...percents].sort((first, second) => first - second));
    expect(Object.keys(sources)).toContain(type.source);
    expect(Object.keys(sources)).toContain(type.gatesSource);
    for (const gate of type.gates) {
      if (gate.shortest !== null && gate.longest !== null) expect(gate.shortest).toBeLessThan(gate.longest);
    }
  });

  // ISO 8820-3 (2015), scope: 32 V or 58 V, not over 100 A, breaking capacity 1000 A.
  it.each(['bladeMedium', 'bladeHigh'] as const)('%s breaks 1000 A at 32 V', (kind) => {
    expect(fuseType(kind).breakingCapacity).toBe(1000);
    expect(fuseType(kind).voltage).toBe(32);
    expect(Math.max(...fuseType(kind).ratings)).toBeLessThanOrEqual(100);
  });

  it('a breaking capacity printed for AC is not taken for a battery', () => {
    expect(typeof table.kinds.glassQuick.breakingCapacity).toBe('string');
    expect(fuseType('glassQuick').breakingCapacity).toBeNull();
  });

  it('knows the cold resistance of tabulated ratings and scales to the others', () => {
    expect(fuseResistance('bladeMedium', 40)).toBe(0.00144);
    expectClose(fuseResistance('bladeHigh', 60) ?? 0, (0.0014 * 40) / 60, 1e-12);
    expect(fuseResistance('glassLag', 5)).toBeNull();
  });
});
