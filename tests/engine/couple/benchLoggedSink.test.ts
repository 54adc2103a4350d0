import { describe, expect, it } from 'vitest';
import { loggedSink, withLoggedSinks } from '../../../shared/design/loggedSink.ts';
import type { BenchRunInput, Design } from '../../../shared/design/schema.ts';
import { applyEdits } from '../../../src/engine/couple/answers/edits.ts';
import { map } from '../../../src/engine/couple/answers/map.ts';
import { sensitivity } from '../../../src/engine/couple/answers/sensitivity.ts';
import { solveFor } from '../../../src/engine/couple/answers/solveFor.ts';
import { benchReport, notMeasured, sinkKnowledge } from '../../../src/engine/couple/benchKnowledge.ts';
import { correctedSink, sinkWith } from '../../../src/engine/couple/correctedSink.ts';
import { solve } from '../../../src/engine/index.ts';
import { resultOf } from '../resultOf.ts';
import { warmUpRun } from './benchRuns.ts';
import { change, exampleOf } from './designs.ts';

const pressure = 101_325;
const beacon = exampleOf('pocket-beacon-10w');
const field = exampleOf('field-station-60w');

const known = (design: Design) => sinkKnowledge(design, pressure);
const keysOf = (design: Design) => known(design).notes.map(({ key }) => key);

/** A run that is told to have been logged on the sink of a design. */
const on = (design: Design, run: BenchRunInput): BenchRunInput => ({ ...run, sink: loggedSink(design.sink) });

/** The same design, its runs not saying on which sink they were logged. */
const forgetful = (design: Design): Design => ({
  ...design,
  bench: design.bench.map((run) => ({ ...run, sink: null })),
});

describe('the fit of a run', () => {
  it.each([
    ['longer', { length: 0.08 }],
    ['wider, more fins', { width: 0.1, finCount: 11 }],
    ['taller fins', { finHeight: 0.03 }],
    ['another metal and finish', { alloy: 'copper', finish: 'painted' }],
  ] as const)('is the same after the sink was made %s', (_how, sink) => {
    const changed = change(beacon, { sink });
    const before = resultOf(benchReport(beacon, pressure));
    const after = resultOf(benchReport(changed, pressure));
    expect(after.runs).toEqual(before.runs);
    // Other channels leave a little more to the estimate, and more doubt.
    expect(Math.abs(after.filmFactor - before.filmFactor)).toBeLessThan(
      0.1 * Math.abs(1 - before.filmFactor),
    );
    expect(after.uncertainty).toBeGreaterThanOrEqual(before.uncertainty);
    expect(known(changed).capacityFactor).toBe(known(beacon).capacityFactor);
    expect(known(changed).capacityUncertainty).toBe(known(beacon).capacityUncertainty);
  });

  it('follows the sink where the file does not say which it was', () => {
    expect(known(forgetful(beacon))).toEqual(known(beacon));
    const longer = forgetful(change(beacon, { sink: { length: 0.08 } }));
    // The log of the short sink, taken for one of a sink of twice the length.
    expect(known(longer).filmFactor).toBeLessThan(0.7);
  });

  it('fails by itself where the sink it was logged on is none; the others still count', () => {
    const run = beacon.bench[0]!;
    const none = { ...run, sink: { ...run.sink!, finCount: 60 } };
    const report = resultOf(benchReport({ ...beacon, bench: [none, run] }, pressure));
    expect(report.runs[0]).toMatchObject({ found: { ok: false, reason: { key: 'finsDoNotFit' } } });
    expect(report.counted).toBe(1);
    expect(report.filmFactor).toBe(known(beacon).filmFactor);
  });
});

describe('a sink that was changed after it was logged', () => {
  it('gains what the model says for the same film factor', () => {
    const rise = 50;
    const { ambient } = beacon.surroundings;
    const heat = (design: Design, filmFactor: number) =>
      resultOf(sinkWith(design, pressure, { ...notMeasured, filmFactor })).heat(ambient + rise, ambient);
    for (const length of [0.05, 0.06, 0.08, 0.12]) {
      const longer = change(beacon, { sink: { length } });
      const [own, carried] = [known(beacon).filmFactor, known(longer).filmFactor];
      const [before, after] = [solve(beacon).values, solve(longer).values];
      const gain = before.ratingResistance! / after.ratingResistance!;
      expect(gain / (heat(longer, carried) / heat(beacon, own)), String(length)).toBeCloseTo(1, 3);
      // Three times as long, and the factor of 0.9 has gone 1.4 % of itself back to the estimate.
      expect(Math.abs(Math.log(carried / own))).toBeLessThan(0.02);
    }
  });

  it('says less of channels with another gap: the more so, up to twice or half of it', () => {
    const fins = [beacon.sink.finCount, 8, 7, 5, 3].filter((count) => count <= beacon.sink.finCount);
    const doubts = fins.map((finCount) => known(change(beacon, { sink: { finCount } })).uncertainty!);
    for (const [i, doubt] of doubts.entries()) expect(doubt).toBeGreaterThanOrEqual(doubts[i - 1] ?? 0);
    expect(doubts.at(-1)!).toBeGreaterThan(2 * doubts[0]!);
    // Never more than was in doubt before the run.
    const bare = { ...beacon, bench: [] };
    const before = resultOf(benchReport(bare, pressure)).before.uncertainty;
    for (const doubt of doubts) expect(doubt).toBeLessThanOrEqual(before);
  });

  it('would gain next to nothing were the log taken for one of the longer sink', () => {
    const longer = change(beacon, { sink: { length: 0.05 } });
    const [before, after, taken] = [beacon, longer, forgetful(longer)].map(
      (design) => solve(design).values.ratingResistance!,
    );
    expect(before! / after! - 1).toBeGreaterThan(0.1);
    expect(before! / taken! - 1).toBeLessThan(0.25 * (before! / after! - 1));
  });

  it('holds more heat in the ratio of the drawings', () => {
    const longer = change(beacon, { sink: { length: 0.08 } });
    const [before, after] = [solve(beacon).values, solve(longer).values];
    expect(after.sinkHeatCapacity! / before.sinkHeatCapacity!).toBeCloseTo(2, 6);
    expect(after.capacityFactor).toBeCloseTo(before.capacityFactor!, 9);
  });

  it('says so, and no more than that', () => {
    expect(keysOf(beacon)).toEqual(['benchCorrected']);
    expect(keysOf(change(beacon, { sink: { length: 0.08 } }))).toEqual(['benchCorrected', 'benchOtherSink']);
    // Entries that mean nothing for this sink change nothing.
    expect(keysOf(change(beacon, { sink: { pinHeight: 0.01, emissivity: 0.3 } }))).toEqual([
      'benchCorrected',
    ]);
  });

  it('is less well known by a run on a drawn one, once weighed', () => {
    const weighed = change(beacon, { sink: { mass: 0.05 } });
    expect(known(weighed).capacityUncertainty!).toBeGreaterThan(known(beacon).capacityUncertainty!);
  });
});

describe('a sink that is cooled in another way than the one that was logged', () => {
  const still = { ...field, bench: [on(field, warmUpRun(field, { film: 0.8, capacity: 1 }))] };
  const ways = [
    ['position', { position: 'crosswise' }],
    ['shape', { shape: 'panel' }],
    ['fan', { fan: 'along' }],
  ] as const;

  it.each(ways)(
    'by its %s follows the run part of the way, stays less well known, and says so',
    (_by, sink) => {
      const other = change(still, { sink });
      const [own, carried] = [known(still), known(other)];
      expect(carried.uncertainty!).toBeGreaterThan(1.5 * own.uncertainty!);
      // Estimate and run weigh about the same: about half of the way, in the logarithm.
      const share = Math.log(carried.filmFactor) / Math.log(own.filmFactor);
      expect(share).toBeGreaterThan(0.35);
      expect(share).toBeLessThan(0.85);
      expect(carried.capacityFactor).toBe(own.capacityFactor);
      expect(keysOf(other)).toContain('benchOtherCooling');
    },
  );

  it('is as well known as ever when it is turned back', () => {
    const back = change(change(still, { sink: { position: 'crosswise' } }), {
      sink: { position: 'upright' },
    });
    expect(known(back)).toEqual(known(still));
  });

  it('does with its fan stopped what a run without the fan has shown, and nothing of a run with it', () => {
    const fan = change(still, { sink: { fan: 'along' } });
    const stopped = resultOf(correctedSink(fan, pressure, false));
    expect(stopped.heat(340, 300)).toBeCloseTo(resultOf(correctedSink(still, pressure)).heat(340, 300), 9);
    const blown = { ...fan, bench: fan.bench.map((run) => on(fan, run)) };
    const estimate = resultOf(correctedSink({ ...fan, bench: [] }, pressure, false));
    expect(resultOf(correctedSink(blown, pressure, false)).heat(340, 300)).toBe(estimate.heat(340, 300));
  });
});

describe('questions that change the sink', () => {
  const both = [beacon, forgetful(beacon)] as const;

  it('leave a run with the sink it was logged on, even where the file does not say which', () => {
    const { rows, value } = resultOf(sensitivity(forgetful(beacon), 'ratingResistance'));
    const { raised } = rows.find(({ path }) => path === 'sink.length')!;
    const longer = change(beacon, { sink: { length: 1.1 * beacon.sink.length } });
    expect(raised).toBeCloseTo(solve(longer).values.ratingResistance! - value, 9);
    // A tenth more length sheds more than 6 % more, of which a fit of the longer sink would leave nothing.
    expect(raised! / value).toBeLessThan(-0.06);
  });

  it('change the sink and not the run, as remedies do', () => {
    const edits = [{ path: 'sink.length', value: 0.08 }];
    const told = applyEdits(beacon, edits);
    expect(told.bench).toEqual(beacon.bench);
    expect(applyEdits(forgetful(beacon), edits)).toEqual(told);
  });

  it('find the same length and the same map either way', () => {
    const target = { quantity: 'ratingResistance', value: 0.8 * solve(beacon).values.ratingResistance! };
    const lengths = both.map((design) => {
      const answer = resultOf(solveFor(design, { path: 'sink.length', targets: [target] }));
      return Number(answer.found[0]!.value);
    });
    expect(lengths[1]).toBe(lengths[0]);
    expect(solve(change(beacon, { sink: { length: lengths[0]! } })).values.ratingResistance).toBeCloseTo(
      target.value,
      2,
    );
    const question = {
      x: { path: 'sink.length' },
      y: { path: 'service.transmitShare' },
      columns: 3,
      rows: 6,
    };
    expect(map(both[1], question)).toEqual(map(both[0], question));
  });

  it('are told the sink of every run', () => {
    expect(withLoggedSinks(beacon)).toBe(beacon);
    expect(withLoggedSinks(forgetful(beacon))).toEqual(beacon);
  });
});
