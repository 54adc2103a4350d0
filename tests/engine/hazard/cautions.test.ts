import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import sources from '../../../reference-data/sources-hazard.json';
import { failure } from '../../../shared/outcome.ts';
import type { Severity } from '../../../shared/solution.ts';
import { disclaimer, standingLines } from '../../../shared/standing.ts';
import { type CautionFigures, cautions } from '../../../src/engine/hazard/cautions.ts';
import { type ExposureInput, exposureDistance } from '../../../src/engine/hazard/exposureDistance.ts';
import { labelsOf } from '../../../src/engine/hazard/labels.ts';
import { wireOn20 } from './exposureInput.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const exposureInput: ExposureInput = { ...wireOn20, band: '40 m' };
const exposure = exposureDistance(exposureInput);
const figures: CautionFigures = {
  source: 'leadAcid',
  openVoltage: 12.8,
  faultCurrent: 640,
  breakingCapacity: 1000,
  fuseDistance: 0.1,
  fuseRating: 25,
  fuseName: 'blade, medium',
  reverseProtected: false,
  wireTemperature: kelvin(40),
  insulationLimit: kelvin(75),
  inputCurrent: 7.9,
  touchTemperature: kelvin(58),
  touchedBy: 'adults',
  surface: 'metal',
  coolingTime: 1500,
  junctionPeak: kelvin(110),
  junctionEdge: null,
  hottestService: 'key-down',
  maximumJunction: kelvin(175),
  pep: 100,
  swr: 1,
  fingerLevel: 0.0215,
  exposure,
  nearestPerson: null,
  exemption: null,
  railVoltage: 48,
  fromConverter: true,
  greatestRail: 60,
  railCapacitance: 4700e-6,
  bleederTime: 30,
  package: 'flangeCeramic',
  pad: 'bare',
  deviceCount: 2,
  finned: true,
  sinkMass: 1.2,
  fan: false,
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
      'converterHigh',
      'beryllia',
      'exposure',
      'storedEnergy',
      'hydrogen',
      'reversedLeads',
      'sharpFins',
      'heavySink',
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
    ['supplyShort', 'red-hot within tenths of a second'],
    ['outputBurn', '1.4 A, 66 times the level for a touching finger on this band (21 mA)'],
    ['converterHigh', '60 V on the 48 V rail: no longer extra-low voltage'],
    ['heavySink', '1.2 kg'],
  ])('%s says %s', (key, words) => {
    expect(find(key)?.sentence).toContain(words);
  });

  it('temperatures are rounded up and burn times down', () => {
    const found = find('hotMetal', { touchTemperature: kelvin(52.2), coolingTime: null });
    expect(found?.sentence).toContain('53 °C');
    expect(found?.sentence).toContain('after about 35 s of contact');
  });
});

describe('a junction that is too hot', () => {
  it('says where stop is, so that a figure below the end of the data sheet is no contradiction', () => {
    const found = find('hotJunction', { junctionPeak: kelvin(166.3), maximumJunction: kelvin(175) });
    expect(found?.title).toBe('Stop: the transistors may fail');
    expect(found?.figure).toBe('166 °C');
    expect(found?.sentence).toMatch(
      /^The junction would reach 166 °C in key-down at the planned duty, nominally\. Stop is at 165 °C, 10 K short of the data sheet’s end at 175 °C\./,
    );
    const beyond = find('hotJunction', { junctionPeak: kelvin(190), maximumJunction: kelvin(175) });
    expect(beyond?.title).toBe('Stop: the transistors would fail');
  });

  it('stands where only the pessimistic edge comes to the stop, and says how it is meant', () => {
    const edge = { junctionPeak: kelvin(140), maximumJunction: kelvin(175) };
    expect(find('hotJunction', { ...edge, junctionEdge: kelvin(164) })).toBeUndefined();
    const found = find('hotJunction', { ...edge, junctionEdge: kelvin(168) });
    expect(found?.title).toBe('Stop: the transistors may fail');
    expect(found?.sentence).toMatch(/140 °C in .* nominally, but 168 °C at the pessimistic edge/);
    expect(found?.action).toMatch(/bench run/);
    // A sample that has run away has no temperature worth a figure.
    expect(find('hotJunction', { ...edge, junctionEdge: kelvin(626) })?.figure).toBe('more than 175 °C');
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
    ['exposure', { nearestPerson: 0.9 }, 'danger'],
    ['exposure', { nearestPerson: 1.2 }, 'warning'],
    ['exposure', { nearestPerson: 5 }, 'caution'],
    ['hotMetal', { touchTemperature: kelvin(58), surface: 'plastic' }, 'caution'],
    ['hotMetal', { touchTemperature: kelvin(72), surface: 'glass' }, 'warning'],
    ['converterHigh', { greatestRail: null }, 'caution'],
    ['converterHigh', { greatestRail: 56 }, 'caution'],
    ['converterHigh', { greatestRail: 80 }, 'warning'],
    ['converterHigh', { greatestRail: 130 }, 'danger'],
    ['storedEnergy', { railCapacitance: 0.1 }, 'warning'],
    ['beryllia', { package: 'tab', pad: 'beryllia' }, 'warning'],
    ['grease', { pad: 'mica' }, 'note'],
    ['fan', { fan: true }, 'note'],
    ['heavySink', { sinkMass: 5 }, 'caution'],
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
    ['converterHigh', { fromConverter: false }],
    ['converterHigh', { greatestRail: 52 }],
    ['heavySink', { sinkMass: 0.8 }],
    ['sharpFins', { finned: false }],
    ['fan', { fan: false }],
    ['grease', { pad: 'siliconePad' }],
    ['hydrogen', { source: 'mainsSupply' }],
    ['reversedLeads', { reverseProtected: true }],
    ['supplyShort', { faultCurrent: null }],
  ] as const)('%s does not stand with %j', (key, change) => {
    expect(keys(change as Partial<CautionFigures>)).not.toContain(key);
  });

  it('a bleeder is named by its resistance, its heat and its time', () => {
    // 0.1 F to 5 % in 30 s: 30/(3·0.1) = 100 Ω, 48²/100 = 23 W.
    expect(find('storedEnergy', { railCapacitance: 0.1 })?.action).toContain('100 Ω, 23 W');
  });

  it('the dummy load takes the power of the key held down', () => {
    expect(find('outputBurn', { pep: 60 })?.action).toContain('a dummy load that takes 60 W');
  });

  it('the US exemption is stated with its distance and without relief from the limits', () => {
    const said = find('exposure', { exemption: 'evaluation needed', nearestPerson: 5 })?.sentence;
    expect(said).toContain('US rule at 5 m: evaluation needed; the limits hold in any case.');
  });

  it('a weak source does not make a ring glow', () => {
    expect(find('supplyShort', { faultCurrent: 20 })?.sentence).not.toContain('red-hot');
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
    { pad: 'beryllia', fan: true, sinkMass: 6, nearestPerson: 0.5, surface: 'glass', greatestRail: null },
    {
      exposure: exposureDistance({ ...exposureInput, kind: 'other' }),
      wireTemperature: kelvin(60),
      fuseRating: null,
    },
  ];
  const all = changes.flatMap((change) => cautions({ ...figures, ...change }));

  it('never tells people that something is harmless or permitted', () => {
    const texts = [
      ...all.flatMap((one) => [one.title, one.figure, one.sentence, one.action]),
      disclaimer,
      ...standingLines,
    ];
    for (const text of texts) expect(text).not.toMatch(/\b(safe|safely|compliant|approved|harmless)\b/i);
  });

  it('has a listed source and no unfilled figure', () => {
    for (const one of all) {
      expect(Object.keys(sources)).toContain(one.source);
      expect(one.figure).not.toBe('');
      expect(`${one.title}${one.figure}${one.sentence}${one.action}`).not.toMatch(
        /NaN|Infinity|undefined|null/,
      );
    }
  });
});

describe('labels for the box', () => {
  const labelKeys = (change: Partial<CautionFigures> = {}) =>
    labelsOf({ ...figures, ...change }).map((one) => one.key);
  const label = (key: string, change: Partial<CautionFigures> = {}) =>
    labelsOf({ ...figures, ...change }).find((one) => one.key === key);
  const text = (key: string, change: Partial<CautionFigures> = {}) => {
    const found = label(key, change);
    return [found?.heading, ...(found?.lines ?? [])].join('; ');
  };

  it('are chosen by the design', () => {
    expect(labelKeys()).toEqual([
      'supply',
      'fuse',
      'hotSurface',
      'radio',
      'antenna',
      'capacitors',
      'beryllia',
    ]);
    expect(
      labelKeys({
        touchTemperature: kelvin(45),
        pep: 0.5,
        fuseRating: null,
        package: 'tab',
        railCapacitance: 0,
        railVoltage: 12,
        exposure: failure('exposureNeedsSurvey', 'No formula holds.'),
        fan: true,
      }),
    ).toEqual(['supply', 'fan']);
  });

  it.each([
    ['supply', '12.8 V DC; up to 7.9 A; + red, − black'],
    ['fuse', 'Fuse 25 A; blade, medium'],
    ['hotSurface', 'Hot surface; up to 58 °C: burns within seconds; stays hot for 25 min'],
    ['radio', '100 V peak, 1.4 A'],
    ['antenna', 'Keep at least 1 m away; Estimate: FCC'],
    ['capacitors', '48 V DC inside; Capacitors hold 5.4 J'],
    ['beryllia', 'May contain beryllia'],
  ])('%s: %s', (key, words) => {
    expect(text(key)).toContain(words);
  });

  it('each says where it goes, in few words that fit', () => {
    for (const one of labelsOf({ ...figures, fan: true })) {
      expect(one.place.length).toBeGreaterThan(5);
      expect(one.heading.length).toBeLessThan(26);
      for (const line of one.lines) expect(line.length).toBeLessThan(100);
    }
  });
});
