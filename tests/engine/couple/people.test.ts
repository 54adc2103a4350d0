import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { Solution } from '../../../shared/solution.ts';
import { band, solve } from '../../../src/engine/index.ts';
import { anyDesign } from './designArbitrary.ts';
import { change, exampleOf } from './designs.ts';

const fieldStation = exampleOf('field-station-60w');
const antenna = (edit: Partial<Design['antenna']>, pep = 100) =>
  solve(change(fieldStation, { antenna: edit, amplifier: { pep, ratedPep: Math.max(pep, 60) } }));
const caution = (solution: Solution, key: string) => solution.cautions.find((one) => one.key === key);
const people = (solution: Solution) => solution.verdicts.find((one) => one.key === 'people');

/** Every sentence of a solution that a person reads. */
function textsOf(solution: Solution): readonly string[] {
  return [
    ...solution.verdicts.flatMap((one) => [one.headline, one.sentence]),
    ...solution.cautions.flatMap((one) => [one.title, one.figure, one.sentence, one.action]),
    ...solution.labels.flatMap((one) => [one.place, one.heading, ...one.lines]),
    ...solution.exposure.map((row) => row.exemption ?? ''),
    ...solution.contacts.map((row) => row.label),
    ...solution.reasons.map((one) => one.sentence),
    ...solution.notes.map((one) => one.sentence),
  ];
}

describe('exposure in the solution', () => {
  it('100 W all the time into a wire on 20 m: the far-field form by hand', () => {
    const { values } = antenna({ exposureBy: 'share', exposureModeFactor: 1, exposureTransmitShare: 1 });
    // 1.6 √(100 · 10^0.215/(4π · 180·10/14.35²)) m, rounded up; OET Bulletin 65 equation 6.
    const density = 1800 / 14.35 ** 2;
    const byHand = 1.6 * Math.sqrt((100 * 10 ** 0.215) / (4 * Math.PI * density));
    expect(values.exposureDistance).toBeGreaterThanOrEqual(byHand);
    expect(values.exposureDistance).toBeLessThan(byHand + 0.1);
    expect(values.exposurePower).toBe(100);
  });

  it('follows mode factor, overs and line loss, and not the duty of the heat', () => {
    const overs = {
      exposureBy: 'overs',
      exposureOver: 120,
      exposurePause: 180,
      exposureModeFactor: 0.2,
    } as const;
    const { values } = antenna({ ...overs, feedLineLoss: 3.0103 });
    expect(values.exposurePower).toBeCloseTo(100 * 0.2 * 0.4 * 0.5, 4);
    const busy = solve(change(fieldStation, { service: { transmitShare: 1 } }));
    const quiet = solve(change(fieldStation, { service: { transmitShare: 0.1 } }));
    expect(busy.values.exposurePower).toBe(quiet.values.exposurePower);
    expect(busy.exposure).toEqual(quiet.exposure);
  });

  it('and the duty of the exposure leaves the heat alone', () => {
    const heat = (solution: Solution) =>
      Object.entries(solution.values).filter(([key]) => /junction|plate|Heat/.test(key));
    expect(heat(antenna({ exposureTransmitShare: 0.1, exposureBy: 'share' }))).toEqual(
      heat(antenna({ exposureModeFactor: 1, exposureBy: 'overs', exposurePause: 0 })),
    );
  });

  it('any other antenna has limits but no distance, and the reason is said', () => {
    const solution = antenna({ kind: 'other' });
    expect(solution.values.exposureDistance).toBeUndefined();
    expect(solution.exposure.every((row) => row.distance === null)).toBe(true);
    expect(people(solution)?.sentence).toContain('No formula holds for this antenna');
    expect(caution(solution, 'exposure')?.severity).toBe('warning');
  });

  it('people who come too near turn the verdict', () => {
    const state = (nearestPerson: number | null) =>
      people(
        solve(
          change(fieldStation, {
            antenna: { nearestPerson, exposureBy: 'share', exposureModeFactor: 1, exposureTransmitShare: 1 },
            limits: { touchedBy: 'nobody' },
          }),
        ),
      )?.state;
    expect([state(null), state(10), state(2), state(0.5)]).toEqual(['fine', 'fine', 'close', 'over']);
  });

  it('never falls with power, mode factor, share, gain or a shorter pause, on any band and in any design', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const distances = (edit: Partial<Design['antenna']>, pep = design.amplifier.pep) =>
          solve(change(design, { antenna: edit, amplifier: { pep } })).exposure.map(
            (row) => row.distance ?? 0,
          );
        const start = distances({});
        const { antenna: given } = design;
        const more = [
          distances({}, Math.min(3000, design.amplifier.pep * 1.5)),
          distances({ gain: Math.min(20, given.gain + 1) }),
          distances({ exposureModeFactor: Math.min(1, given.exposureModeFactor * 1.2) }),
          distances({ exposureTransmitShare: Math.min(1, given.exposureTransmitShare * 1.2) }),
          distances({ exposurePause: given.exposurePause / 2 }),
          distances({ exposureOver: Math.min(36000, given.exposureOver * 2) }),
        ];
        for (const other of more) {
          expect(other).toHaveLength(11);
          other.forEach((distance, band) => {
            expect(distance).toBeGreaterThanOrEqual(start[band] ?? 0);
          });
        }
      }),
      { numRuns: 12, seed: 6 },
    );
  });
});

describe('touch in the solution', () => {
  it.each([
    ['metal', 55],
    ['glass', 66],
    ['plastic', 71],
  ] as const)('adults on %s: %i °C', (surface, celsius) => {
    const { values } = solve(change(fieldStation, { limits: { surface } }));
    expect(values.touchThreshold).toBeCloseTo(celsius + 273.15, 9);
  });

  it('the burn time is that of the table at the pessimistic edge and never rises with the room', () => {
    const at = (warmer: number) =>
      solve(
        change(fieldStation, { surroundings: { ambient: 283.15 + warmer }, service: { transmitShare: 0.1 } }),
      );
    const cool = at(0);
    const row = cool.burns.find((one) => one.surface === 'metal');
    expect(row?.burnsAfter).toBe(cool.values.burnTime ?? null);
    let last = Number.POSITIVE_INFINITY;
    for (const warmer of [0, 5, 10, 15, 20]) {
      const time = at(warmer).values.burnTime ?? Number.POSITIVE_INFINITY;
      expect(time).toBeLessThanOrEqual(last);
      last = time;
    }
    expect(last).toBeLessThan(600);
  });

  it('a hot sink has a time to cool, a cold one none', () => {
    expect(solve(fieldStation).values.coolingTime).toBeGreaterThan(60);
    const cold = change(fieldStation, { surroundings: { ambient: 273.15 }, service: { transmitShare: 0 } });
    expect(solve(cold).values.coolingTime).toBe(0);
  });
});

describe('with the band', () => {
  it('cautions, labels and burns speak of the hottest place at the pessimistic edge', () => {
    const mild = change(fieldStation, { service: { transmitShare: 0.15 } });
    const solution = solve(mild);
    const found = band(mild, { samples: 24, seed: 3 });
    if (!found.ok) throw new Error(found.reason.sentence);
    const { edges, people: told } = found.value;
    const edge = Math.max(edges.metal?.high ?? 0, solution.values.touchTemperature ?? 0);
    const figure = `${Math.ceil(edge - 273.15)} °C`;
    expect(told?.cautions.find((one) => one.key === 'hotMetal')?.figure).toBe(figure);
    expect(told?.labels.find((one) => one.key === 'hotSurface')?.lines[0]).toContain(figure);
    const burns = (rows: Solution['burns'] | undefined) =>
      rows?.find((row) => row.surface === 'metal')?.burnsAfter;
    expect(burns(told?.burns)).toBeLessThanOrEqual(burns(solution.burns) ?? 0);
    // Nothing else changes with it.
    const others = (list: Solution['cautions'] | undefined) => list?.filter((one) => one.key !== 'hotMetal');
    expect(others(told?.cautions)).toEqual(others(solution.cautions));
  });
});

describe('output, supply and parts in the solution', () => {
  it('voltage and current follow the SWR by the forward form', () => {
    const { values } = solve(change(fieldStation, { amplifier: { pep: 100, ratedPep: 100, swr: 3 } }));
    expect(values.outputVoltagePeak).toBeCloseTo(150, 9);
    expect(values.outputCurrent).toBeCloseTo(1.5 * Math.SQRT2, 9);
    expect(values.contactRatio).toBeGreaterThan(80);
    expect(values.dummyLoadPower).toBe(100);
  });

  it('stored energy and its bleeder', () => {
    const { values } = solve(change(fieldStation, { hazards: { railCapacitance: 0.1, bleederTime: 30 } }));
    expect(values.railEnergy).toBeCloseTo((0.1 * 36 ** 2) / 2, 9);
    expect(values.bleeder).toBeCloseTo(100, 9);
    expect(values.bleederPower).toBeCloseTo(12.96, 9);
  });

  it('a short at a battery is a danger with a ring red-hot in tenths of a second', () => {
    const found = caution(solve(fieldStation), 'supplyShort');
    expect(found?.severity).toBe('danger');
    expect(found?.sentence).toContain('red-hot within tenths of a second');
  });

  it.each([
    ['railVoltage', { converter: { outputVoltage: 72 } }, 'warning'],
    ['railVoltage', { converter: { outputVoltage: 52 } }, 'note'],
    ['converterHigh', { hazards: { greatestRail: 80 } }, 'warning'],
    ['beryllia', { device: { package: 'stud' } }, 'warning'],
    ['grease', { device: { pad: 'grease' } }, 'note'],
    ['heavySink', { sink: { mass: 6 } }, 'caution'],
    ['fan', { sink: { fan: 'along' } }, 'note'],
    ['fusePlace', { wiring: { fuseDistance: 0.5 } }, 'warning'],
    ['hydrogen', { source: { kind: 'vehicle' } }, 'caution'],
  ] as const)('%s stands with %j as a %s', (key, edit, severity) => {
    expect(caution(solve(change(fieldStation, edit)), key)?.severity).toBe(severity);
  });

  it('without a converter nothing fails high', () => {
    const straight = change(fieldStation, { converter: { kind: 'none' } });
    expect(caution(solve(straight), 'converterHigh')).toBeUndefined();
  });
});

describe('wording, for any design', () => {
  const forbidden = /\b(safe|safely|safety|compliant|compliance|approved|harmless)\b/i;

  it('never tells people that something is harmless, permitted or in order', () => {
    for (const { design } of examples) {
      for (const text of textsOf(solve(design))) expect(text).not.toMatch(forbidden);
    }
    fc.assert(
      fc.property(anyDesign, (design) => {
        for (const text of textsOf(solve(design))) expect(text).not.toMatch(forbidden);
      }),
      { numRuns: 120, seed: 16 },
    );
  });

  it('a distance stands with set, tier, averaging time and the word estimate on the same line', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const found = caution(solve(design), 'exposure');
        if (!found?.figure.endsWith(' m')) return;
        expect(found.sentence).toMatch(
          /^Estimate: at least [\d.]+ m .*\((FCC|ICNIRP|EU).*, averaged over (6|30) min\)/,
        );
      }),
      { numRuns: 60, seed: 26 },
    );
  });

  it('cautions come gravest first and each has figure, action and source', () => {
    const rank = ['danger', 'warning', 'caution', 'note'];
    fc.assert(
      fc.property(anyDesign, (design) => {
        const { cautions } = solve(design);
        const ranks = cautions.map((one) => rank.indexOf(one.severity));
        expect(ranks).toEqual(ranks.toSorted((first, second) => first - second));
        for (const one of cautions) {
          for (const text of [one.title, one.figure, one.sentence, one.action, one.source])
            expect(text).not.toBe('');
          expect(`${one.title}${one.figure}${one.sentence}${one.action}`).not.toMatch(
            /NaN|Infinity|undefined|null/,
          );
        }
      }),
      { numRuns: 60, seed: 36 },
    );
  });
});
