import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import sources from '../../../reference-data/sources-hazard.json';
import { failure } from '../../../shared/outcome.ts';
import type { Severity } from '../../../shared/solution.ts';
import { disclaimer, standingLines } from '../../../shared/standing.ts';
import { type CautionFigures, cautions } from '../../../src/engine/hazard/cautions.ts';
import { type ExposureInput, exposureDistance } from '../../../src/engine/hazard/exposureDistance.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const exposureInput: ExposureInput = {
  kind: 'halfWaveWire',
  band: '40 m',
  gain: 2.15,
  feedLineLoss: 0,
  exposureModeFactor: 1,
  exposureTransmitShare: 1,
  tier: 'general',
  groundFactor: 'usual',
  pep: 100,
};
const exposure = exposureDistance(exposureInput);
const figures: CautionFigures = {
  source: 'leadAcid',
  openVoltage: 12.8,
  faultCurrent: 640,
  breakingCapacity: 1000,
  fuseDistance: 0.1,
  fuseRating: 25,
  reverseProtected: false,
  wireTemperature: kelvin(40),
  insulationLimit: kelvin(75),
  touchTemperature: kelvin(58),
  touchedBy: 'adults',
  coolingTime: 1500,
  junctionPeak: kelvin(110),
  maximumJunction: kelvin(175),
  pep: 100,
  swr: 1,
  exposure,
  railVoltage: 48,
  fromConverter: true,
  railCapacitance: 4700e-6,
  package: 'flangeCeramic',
};
const keys = (change: Partial<CautionFigures> = {}) =>
  cautions({ ...figures, ...change }).map((one) => one.key);
const find = (key: string, change: Partial<CautionFigures> = {}) =>
  cautions({ ...figures, ...change }).find((one) => one.key === key);

describe('order', () => {
  it('is by severity, then supply, hot metal, RF burns, exposure, beryllia', () => {
    expect(keys()).toEqual([
      'supplyShort',
      'outputBurn',
      'hotMetal',
      'beryllia',
      'exposure',
      'storedEnergy',
      'hydrogen',
      'reversedLeads',
    ]);
  });

  it('within one severity follows the importance, whatever the figures', () => {
    const rank: Record<Severity, number> = { danger: 0, warning: 1, caution: 2, note: 3 };
    const importance = ['supplyShort', 'hotMetal', 'outputBurn', 'exposure', 'beryllia'];
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20000, noNaN: true }),
        fc.double({ min: 20, max: 150, noNaN: true }),
        fc.double({ min: 0.1, max: 1500, noNaN: true }),
        (faultCurrent, celsius, pep) => {
          const found = cautions({ ...figures, faultCurrent, touchTemperature: kelvin(celsius), pep });
          return found.every((one, index) => {
            const next = found[index + 1];
            if (!next) return true;
            if (rank[one.severity] !== rank[next.severity]) return rank[one.severity] < rank[next.severity];
            const here = importance.indexOf(one.key);
            const there = importance.indexOf(next.key);
            return here < 0 || there < 0 || here < there;
          });
        },
      ),
    );
  });
});

describe('figures in the sentences', () => {
  it.each([
    ['supplyShort', '640 A (8.2 kW)'],
    ['hotMetal', '58 °C'],
    ['hotMetal', '25 min'],
    ['outputBurn', '100 V peak'],
    [
      'exposure',
      'at least 1 m from the antenna (FCC, 47 CFR 1.1310, general population, averaged over 30 min)',
    ],
    ['storedEnergy', '5.4 J'],
    ['reversedLeads', '25 A fuse'],
  ])('%s says %s', (key, words) => {
    expect(find(key)?.sentence).toContain(words);
  });

  it('temperatures are rounded up and burn times down', () => {
    const found = find('hotMetal', { touchTemperature: kelvin(52.2), coolingTime: null });
    expect(found?.sentence).toContain('53 °C');
    expect(found?.sentence).toContain('after about 35 s of contact');
  });
});

describe('when a caution stands', () => {
  it.each([
    ['fusePlace', { fuseDistance: 0.3 }, 'warning'],
    ['fusePlace', { fuseDistance: 0.3, source: 'mainsSupply' }, 'caution'],
    ['fuseBreakingCapacity', { faultCurrent: 3200 }, 'danger'],
    ['hotWire', { wireTemperature: kelvin(90) }, 'danger'],
    ['hotWire', { wireTemperature: kelvin(60) }, 'note'],
    ['hotMetal', { touchTemperature: kelvin(70) }, 'danger'],
    ['hotMetal', { touchTemperature: kelvin(70), touchedBy: 'nobody' }, 'caution'],
    ['hotMetal', { touchTemperature: kelvin(45), touchedBy: 'nobody' }, 'note'],
    ['hotJunction', { junctionPeak: kelvin(166) }, 'danger'],
    ['outputBurn', { pep: 5 }, 'warning'],
    ['railVoltage', { railVoltage: 72 }, 'warning'],
    ['railVoltage', { railVoltage: 50, fromConverter: false }, 'note'],
    ['lithium', { source: 'lithiumIronPhosphate' }, 'caution'],
    ['hydrogen', { source: 'vehicle' }, 'caution'],
    ['exposure', { exposure: failure('exposureNeedsSurvey', 'No formula holds.') }, 'warning'],
  ] as const)('%s with %j is a %s', (key, change, severity) => {
    expect(find(key, change as Partial<CautionFigures>)?.severity).toBe(severity);
  });

  it.each([
    ['fusePlace', { fuseDistance: 0.178 }],
    ['hotMetal', { touchTemperature: kelvin(42) }],
    ['hotMetal', { touchTemperature: null }],
    ['hotJunction', { junctionPeak: kelvin(164) }],
    ['outputBurn', { pep: 0.9 }],
    ['railVoltage', { railVoltage: 49 }],
    ['beryllia', { package: 'tab' }],
    ['storedEnergy', { railCapacitance: 100e-6 }],
    ['hydrogen', { source: 'mainsSupply' }],
    ['reversedLeads', { reverseProtected: true }],
    ['supplyShort', { faultCurrent: null }],
  ] as const)('%s does not stand with %j', (key, change) => {
    expect(keys(change as Partial<CautionFigures>)).not.toContain(key);
  });

  it('a worse match raises the voltage spoken of', () => {
    expect(find('outputBurn', { swr: 3 })?.sentence).toContain('150 V peak at a standing-wave ratio of 3');
  });

  it('the tier for a trained household says whom it leaves out', () => {
    const controlled = exposureDistance({ ...exposureInput, tier: 'controlled' });
    expect(find('exposure', { exposure: controlled })?.action).toContain(
      'trained members of the household only',
    );
  });
});

describe('wording', () => {
  const changes: Partial<CautionFigures>[] = [
    {},
    {
      faultCurrent: 3200,
      fuseDistance: 2,
      wireTemperature: kelvin(120),
      touchTemperature: kelvin(90),
      railVoltage: 80,
    },
    {
      source: 'lithiumIronPhosphate',
      touchedBy: 'nobody',
      junctionPeak: kelvin(174),
      railCapacitance: 0.1,
      pep: 5,
    },
    {
      exposure: exposureDistance({ ...exposureInput, kind: 'other' }),
      wireTemperature: kelvin(60),
      fuseRating: null,
    },
  ];
  const all = changes.flatMap((change) => cautions({ ...figures, ...change }));

  it('never tells people that something is harmless or permitted', () => {
    const texts = [
      ...all.flatMap((one) => [one.title, one.sentence, one.action]),
      disclaimer,
      ...standingLines,
    ];
    for (const text of texts) expect(text).not.toMatch(/\b(safe|safely|compliant|approved|harmless)\b/i);
  });

  it('has a listed source and no unfilled figure', () => {
    for (const one of all) {
      expect(Object.keys(sources)).toContain(one.source);
      expect(`${one.title}${one.sentence}${one.action}`).not.toMatch(/NaN|Infinity|undefined|null/);
    }
  });
});
