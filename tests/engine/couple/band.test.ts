import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Band, type Edges, solutionAtEdge } from '../../../shared/band.ts';
import { examples } from '../../../shared/design/examples.ts';
import { loggedSink } from '../../../shared/design/loggedSink.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { services } from '../../../shared/solution.ts';
import { figuresJson } from '../../../src/engine/catalogue/figuresJson.ts';
import { band, bandSteps } from '../../../src/engine/couple/band.ts';
import { bandSampler } from '../../../src/engine/couple/bandSampler.ts';
import { bandHeadline, bandState } from '../../../src/engine/couple/bandVerdicts.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { ratingCurve, solve, sweep } from '../../../src/engine/index.ts';
import { resultOf } from '../resultOf.ts';
import { warmUpRun } from './benchRuns.ts';
import { anyDesign } from './designArbitrary.ts';
import { change, exampleOf } from './designs.ts';

const field = exampleOf('field-station-60w');

const bandOf = (design: Design, samples = 128, seed = 1): Band => resultOf(band(design, { samples, seed }));
const edge = (found: Band, key: string): Edges => {
  const edges = found.edges[key];
  if (!edges) throw new Error(`no band for ${key}`);
  return edges;
};
const width = (found: Band, key: string): number => {
  const { low, high } = edge(found, key);
  return (high ?? Number.POSITIVE_INFINITY) - low;
};

describe('band of the results', () => {
  it.each(examples.map(({ key, design }) => [key, design] as const))(
    '%s: holds every nominal figure',
    (_, design) => {
      const { values } = solve(design);
      const { edges } = bandOf(design, 32);
      for (const [key, { low, high }] of Object.entries(edges)) {
        const nominal = values[key];
        if (nominal === undefined) continue;
        expect(low, key).toBeLessThanOrEqual(nominal);
        if (high !== null) expect(high, key).toBeGreaterThanOrEqual(nominal);
      }
      expect(Object.keys(edges).filter((key) => values[key] !== undefined).length).toBeGreaterThan(8);
    },
  );

  it('is the same for the same seed, and nearly the same for another', () => {
    expect(bandOf(field, 64)).toEqual(bandOf(field, 64));
    const one = edge(bandOf(field, 512, 1), 'keyDown.junctionPeak');
    const other = edge(bandOf(field, 512, 2), 'keyDown.junctionPeak');
    expect(one).not.toEqual(other);
    expect(Math.abs(one.high! - other.high!)).toBeLessThan(2);
    expect(Math.abs(one.low - other.low)).toBeLessThan(2);
  });

  it.each(examples.map(({ key, design }) => [key, design] as const))(
    '%s: the hottest place a hand can reach is one figure, in verdict, caution and list',
    (_, design) => {
      const solution = solve(design);
      const found = bandOf(design);
      const { values } = solutionAtEdge(solution, found);
      const degrees = Math.ceil(values.touchTemperature! - 273.15);
      const people = found.verdicts.find(({ key }) => key === 'people')!;
      expect(people.headline).toMatch(new RegExp(`metal up to ${degrees}\\s°C`));
      const listed = JSON.parse(figuresJson(design, solution, found)).quantities.touchTemperature.value;
      expect(listed).toBe(values.touchTemperature);
      expect(values.touchTemperature!).toBeGreaterThanOrEqual(solution.values.touchTemperature!);
    },
  );

  it('warns of a junction that comes to the stop at the pessimistic edge alone', () => {
    const stop = field.device.maximumJunction - 10;
    const close = change(field, { service: { transmitShare: 1 }, surroundings: { ambient: 302 } });
    const found = bandOf(close);
    const nominal = solve(close);
    const keys = (cautions: readonly { readonly key: string }[]) => cautions.map(({ key }) => key);
    expect(nominal.values['keyDown.junctionPeak']).toBeLessThan(stop);
    expect(keys(nominal.cautions)).not.toContain('hotJunction');
    expect(edge(found, 'keyDown.junctionPeak').high).toBeGreaterThan(stop);
    expect(keys(found.people!.cautions)).toContain('hotJunction');
  });

  it('says the same of the safe duty whatever duty is planned', () => {
    const duties = [0, 0.05, 0.4, 1].map((transmitShare) =>
      edge(bandOf(change(field, { service: { transmitShare } })), 'keyDown.safeDuty'),
    );
    for (const { low, high } of duties) {
      expect(Math.abs(low - duties[0]!.low)).toBeLessThan(5e-3);
      expect(Math.abs(high! - duties[0]!.high!)).toBeLessThan(5e-3);
    }
  });

  it('has settled at the usual number of samples: ten times as many move its edges by less than 1 K and 2 % of duty', () => {
    const usual = bandOf(field, 512);
    const many = bandOf(field, 5120);
    for (const service of services) {
      const junction = `${service}.junctionPeak`;
      expect(Math.abs(edge(usual, junction).low - edge(many, junction).low)).toBeLessThan(1);
      expect(Math.abs(edge(usual, junction).high! - edge(many, junction).high!)).toBeLessThan(1);
      const duty = `${service}.safeDuty`;
      expect(Math.abs(edge(usual, duty).low - edge(many, duty).low)).toBeLessThan(0.02);
    }
  });

  // Each row adds doubt to one entry; the band of the key named beside it may not become narrower.
  it.each<[string, Design['doubts'], Design['doubts'], string]>([
    [
      'fin thickness',
      { 'sink.finThickness': 'caliper' },
      { 'sink.finThickness': 'guess' },
      'ratingResistance',
    ],
    ['fin height', { 'sink.finHeight': 'ruler' }, { 'sink.finHeight': 'guess' }, 'ratingResistance'],
    ['width', { 'sink.width': 0 }, { 'sink.width': 0.02 }, 'ratingResistance'],
    [
      'junction to case',
      { 'device.junctionToCase': 0.01 },
      { 'device.junctionToCase': 'guess' },
      'keyDown.junctionPeak',
    ],
    [
      'efficiency',
      { 'amplifier.efficiency': 0.01 },
      { 'amplifier.efficiency': 0.06 },
      'keyDown.junctionPeak',
    ],
  ])('more doubt of the %s never narrows it', (_, less, more, key) => {
    // Two per cent are left to the sampling: a thicker fin cools better and narrows the gap, which nearly cancel.
    expect(width(bandOf({ ...field, doubts: more }), key)).toBeGreaterThan(
      0.98 * width(bandOf({ ...field, doubts: less }), key),
    );
  });

  it('is wider when the finish is unsure', () => {
    const anodised = change(field, { sink: { finish: 'anodised' } });
    const unsure = change(field, { sink: { finish: 'unsure' } });
    expect(width(bandOf(unsure), 'ratingHeat')).toBeGreaterThan(width(bandOf(anodised), 'ratingHeat'));
  });

  it('is narrower when the efficiency was measured', () => {
    const measured = change(field, { amplifier: { efficiencyMeasured: true } });
    const guessed = change(field, { amplifier: { efficiencyMeasured: false } });
    expect(width(bandOf(measured), 'keyDown.junctionPeak')).toBeLessThan(
      width(bandOf(guessed), 'keyDown.junctionPeak'),
    );
  });

  it('counts the doubt of what was changed since a bench run, and of no other length', () => {
    const run = { ...warmUpRun(field, { film: 0.9, capacity: 1 }), sink: loggedSink(field.sink) };
    const logged = { ...field, bench: [run] };
    const drawn = (design: Design) =>
      resultOf(bandSampler(prepare(design), 1))
        .unknowns.map(({ key }) => key)
        .filter((key) => key.startsWith('sink.'));
    expect(drawn(logged)).toEqual([]);
    expect(drawn(change(logged, { sink: { length: 0.12 } }))).toEqual(['sink.length']);
    const painted = resultOf(bandSampler(prepare(change(logged, { sink: { finish: 'painted' } })), 1));
    expect(painted.unknowns.map(({ key }) => key)).toContain('emissivity');
    const guessed = {
      ...change(logged, { sink: { length: 0.12 } }),
      doubts: { 'sink.length': 'guess' as const },
    };
    const measured = { ...guessed, doubts: { 'sink.length': 'caliper' as const } };
    expect(width(bandOf(guessed), 'ratingHeat')).toBeGreaterThan(1.1 * width(bandOf(measured), 'ratingHeat'));
  });

  it('is narrower for the sink once a bench run has measured it', () => {
    const measured = { ...field, bench: [warmUpRun(field, { film: 0.9, capacity: 1.05 })] };
    const before = bandOf(field);
    const after = bandOf(measured);
    expect(before.measured).toBe(false);
    expect(after.measured).toBe(true);
    expect(width(after, 'ratingResistance')).toBeLessThan(0.5 * width(before, 'ratingResistance'));
    expect(width(after, 'keyDown.plateMean')).toBeLessThan(width(before, 'keyDown.plateMean'));
  });

  it('ranks what matters: a hot sink in doubt points to its film, a guessed joint to the joint', () => {
    const exact: Design['doubts'] = {
      'amplifier.efficiency': 0.001,
      'device.junctionToCase': 0.001,
      'device.padResistance': 0.001,
    };
    const known = change({ ...field, doubts: exact }, { device: { pad: 'measured', padResistance: 0.6 } });
    expect(bandOf(known).ranking.keyDown?.[0]?.key).toBe('film');
    const joint = { ...known, doubts: { ...exact, 'device.padResistance': 0.5 } };
    const [first] = bandOf(joint).ranking.keyDown ?? [];
    expect(first?.key).toBe('pad');
    expect(first?.effect).toBeGreaterThan(0);
  });

  it('shares out no more than the whole variance', () => {
    for (const ranking of Object.values(bandOf(field).ranking)) {
      expect(ranking.reduce((sum, { share }) => sum + share, 0)).toBeLessThan(1.15);
    }
  });

  it('draws its edges around the nominal curves of duty and rating', () => {
    const found = bandOf(field);
    for (const service of services) {
      const { x, low, high } = found.duty[service]!;
      const nominal = resultOf(sweep(field, service, 101));
      x.forEach((share, i) => {
        const at = nominal.junctionPeak[Math.round(share * 100)]!;
        expect(low[i]!).toBeLessThanOrEqual(at + 0.01);
        expect(high[i]!).toBeGreaterThanOrEqual(at - 0.01);
      });
    }
    const { x, low, high } = found.rating!;
    const rating = resultOf(ratingCurve(field));
    x.forEach((heat, i) => {
      const next = rating.heat.findIndex((each) => each >= heat);
      const near = rating.resistance[next < 0 ? rating.heat.length - 1 : next]!;
      expect(low[i]!).toBeLessThan(near * 1.02);
      expect(high[i]!).toBeGreaterThan(near * 0.98);
    });
  });

  it('counts the doubt of the metal: on a thin panel the spreading has a band', () => {
    const panel = exampleOf('class-a-panel-8w');
    const found = bandOf(panel);
    const nominal = solve(panel).values.spreadingResistance!;
    const { low, high } = edge(found, 'spreadingResistance');
    // An unknown sheet conducts 120 to 190 W/(m K), against the 140 taken.
    expect(low / nominal).toBeLessThan(0.85);
    expect(high! / nominal).toBeGreaterThan(1.1);
    const exact = {
      ...panel,
      doubts: { 'sink.width': 0, 'sink.length': 0, 'sink.baseThickness': 0 },
    } as const;
    expect(edge(bandOf(exact), 'spreadingResistance').high! / nominal).toBeGreaterThan(1.1);
  });

  it('counts the doubt of the case: its air always, the junctions of a sink inside', () => {
    const vented = change(field, { surroundings: { caseVents: 'vented', ventArea: 4e-4 } });
    const sure = bandOf({ ...vented, doubts: { 'surroundings.ventArea': 1e-6 } });
    const guessed = bandOf({ ...vented, doubts: { 'surroundings.ventArea': 2e-4 } });
    expect(width(guessed, 'keyDown.caseAir')).toBeGreaterThan(1.2 * width(sure, 'keyDown.caseAir'));
    const inside = change(vented, { sink: { placement: 'inside' } });
    const keys = bandOf(inside, 64).ranking.keyDown?.map(({ key }) => key);
    expect(keys).toContain('caseCooling');
    expect(bandOf(field).ranking.keyDown?.map(({ key }) => key)).not.toContain('caseCooling');
  });

  it('holds for a sink inside the case, with fewer samples', () => {
    const inside = change(field, { sink: { placement: 'inside' } });
    const found = resultOf(band(inside, { samples: 16 }));
    const { values } = solve(inside);
    const { low, high } = edge(found, 'keyDown.junctionPeak');
    expect(low).toBeLessThan(values['keyDown.junctionPeak']!);
    expect(high).toBeGreaterThan(values['keyDown.junctionPeak']!);
  });

  it('tells its progress and stops when told to', () => {
    const told: number[] = [];
    const stopped = band(field, {
      samples: 160,
      onProgress: (share) => told.push(share),
      cancelled: () => told.length >= 3,
    });
    expect(stopped).toMatchObject({ ok: false, reason: { key: 'cancelled' } });
    expect(told).toEqual([0.1, 0.2, 0.3]);
    expect(bandSteps(field, { samples: 32 }).next()).toEqual({ done: false, value: 0.5 });
  });

  it('gives the reason of a design that has no heat path', () => {
    const wrong = change(field, { sink: { finCount: 200, finThickness: 0.02 } });
    expect(band(wrong)).toMatchObject({ ok: false, reason: { key: 'finsDoNotFit' } });
  });

  it('never throws and never gives NaN, for any design', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const found = band(design, { samples: 16 });
        if (!found.ok) {
          expect(found.reason.sentence).not.toBe('');
          return;
        }
        for (const [key, { low, high }] of Object.entries(found.value.edges)) {
          expect(Number.isNaN(low), key).toBe(false);
          expect(high === null || Number.isFinite(high), key).toBe(true);
        }
        const text = found.value.verdicts.map((line) => `${line.headline} ${line.sentence}`).join(' ');
        expect(text).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 60 },
    );
  });
});

describe('verdicts with the band', () => {
  const limits = { design: 400, close: 415, stop: 430, maximum: 440 };

  it.each([
    [380, 399, 'fine'],
    [380, 401, 'close'],
    [380, 431, 'over'],
    [401, 414, 'close'],
    [401, 416, 'over'],
  ] as const)('nominal %d K, edge %d K: %s', (nominal, pessimistic, state) => {
    expect(bandState(nominal, pessimistic, limits)).toBe(state);
  });

  it('state the pessimistic edge first and the other one after it, the nominal in the sentence', () => {
    const { verdicts, edges } = bandOf(field);
    const keyDown = verdicts.find(({ key }) => key === 'keyDown')!;
    const { low, high } = edges['keyDown.safeDuty']!;
    const whole = (share: number) => Math.floor(share * 100);
    expect(whole(low)).toBeGreaterThan(0);
    expect(keyDown.headline).toContain(
      `up to ${whole(low)}\u202f% of the time, perhaps ${whole(high!)}\u202f%, or `,
    );
    expect(keyDown.headline).toMatch(/, or [^,]* from cold(, perhaps \d[^,]*| and more)$/);
    expect(keyDown.sentence).toMatch(/^Nominal \d+\u202f%\. Junction at the planned /);
    expect(keyDown.sentence).toContain('the pessimistic edge is');
  });

  it.each([
    [
      { low: 0.21, high: 0.62 },
      { low: 208, high: 663 },
      'up to 21 % of the time, perhaps 62 %, or 3 min 28 s from cold, perhaps 11 min 3 s',
    ],
    [
      { low: 0.21, high: null },
      { low: 208, high: null },
      'up to 21 % of the time, perhaps 100 %, or 3 min 28 s from cold and more',
    ],
    [
      { low: 0.21, high: 0.214 },
      { low: 208, high: 208.2 },
      'up to 21 % of the time, or 3 min 28 s from cold',
    ],
    [{ low: 0, high: 0.31 }, { low: 12, high: 663 }, 'not at any duty, perhaps up to 31 %'],
    [
      { low: 0.0067, high: 0.05 },
      { low: 2.1, high: 48 },
      'under 1 % of the time, perhaps up to 5 %, or 2.1 s from cold, perhaps 48 s',
    ],
    [{ low: 0.004, high: 0.008 }, undefined, 'under 1 % of the time'],
    [{ low: 0, high: 0 }, { low: 0, high: 0 }, 'not at any duty'],
    [{ low: 1, high: 1 }, { low: Number.POSITIVE_INFINITY, high: null }, 'any duty'],
  ])('say duty %o and hold time %o as “%s”', (duty, hold, words) => {
    expect(bandHeadline('keyDown', duty, hold).replaceAll('\u202f', ' ')).toBe(words);
  });

  it('leave the reasons of refused services as they are', () => {
    const beacon = exampleOf('pocket-beacon-10w');
    const nominal = solve(beacon).verdicts.find(({ key }) => key === 'ssb');
    expect(bandOf(beacon, 32).verdicts.find(({ key }) => key === 'ssb')).toEqual(nominal);
  });
});
