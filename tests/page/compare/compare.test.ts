import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { withLeaf } from '../../../shared/design/leaves.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { type State, services } from '../../../shared/solution.ts';
import { defaultUnit } from '../../../src/engine/quantity/units.ts';
import { consequences } from '../../../src/page/compare/consequences.ts';
import { figureLines, writeDifference } from '../../../src/page/compare/figures.ts';
import { givenDifferences, withAllOfTheirs, withTheirs } from '../../../src/page/compare/given.ts';
import { overlayPlot } from '../../../src/page/compare/overlay.ts';
import type { UnitOf } from '../../../src/page/state/given.ts';
import type { Curves } from '../../../src/page/state/results.ts';
import { engine, plainSpaces, steadyRun } from '../support.tsx';

const metric: UnitOf = (_path, spec) => defaultUnit(spec, 'metric');
const [station, beacon, data] = examples.map((each) => each.design) as [Design, Design, Design];
const between = (mine: Design, theirs: Design) =>
  givenDifferences(mine, theirs, metric).map((row) => ({
    ...row,
    mine: plainSpaces(row.mine),
    theirs: plainSpaces(row.theirs),
  }));

describe('what is given differently', () => {
  it('is nothing between a design and itself, whatever its name', () => {
    expect(between(station, { ...station, name: 'another' })).toEqual([]);
  });

  it('names each changed value in the builder’s words and units, and nothing else', () => {
    const longer = withLeaf(withLeaf(station, 'sink.length', 0.15), 'device.pad', 'mica');
    expect(between(station, longer)).toEqual([
      expect.objectContaining({ path: 'device.pad', mine: 'alumina plate, greased' }),
      {
        path: 'sink.length',
        group: 'Sink',
        label: 'Length along the fins',
        mine: '100 mm',
        theirs: '150 mm',
        takeable: true,
      },
    ]);
  });

  it('tells values that one of the two does not have', () => {
    const straight = withLeaf(station, 'converter.kind', 'none');
    const rail = between(station, straight).find((row) => row.path === 'converter.points');
    expect(rail).toMatchObject({ theirs: 'does not apply', takeable: false });
  });

  it('says of a list that is empty that there are none, not that it has no meaning', () => {
    const logged: Design = { ...station, bench: [steadyRun] };
    expect(between(station, logged)).toEqual([
      expect.objectContaining({ path: 'bench', mine: 'none', theirs: expect.stringContaining('20 W') }),
    ]);
    expect(between(logged, station)).toEqual([expect.objectContaining({ path: 'bench', theirs: 'none' })]);
  });

  it('sees lists and how well something is known', () => {
    const other = {
      ...station,
      doubts: { 'sink.finHeight': 'caliper' as const },
      wiring: { ...station.wiring, path: station.wiring.path.slice(1) },
    };
    expect(between(station, other).map((row) => row.path)).toEqual(['wiring.path', 'doubts.sink.finHeight']);
  });

  it.each([
    ['beacon', beacon],
    ['data', data],
  ])('taking each value of the %s leaves no difference, nor does taking all', (_, theirs) => {
    let mine: Design = station;
    // Taking one value can bring others into play, so it is done until nothing is left.
    for (let round = 0; round < 4; round++)
      for (const { path } of between(mine, theirs)) mine = withTheirs(mine, theirs, path);
    expect(between(mine, theirs)).toEqual([]);
    expect(mine.name).toBe(station.name);
    const all = withAllOfTheirs(station, theirs);
    expect(all).toEqual({ ...theirs, name: station.name });
  });
});

describe('what follows', () => {
  const solved = engine.solve(station);
  const metres = (value: number) => `${value} m`;
  const nominal = (mine: Design, theirs: Design) => ({
    mine: engine.solve(mine).verdicts,
    theirs: engine.solve(theirs).verdicts,
  });
  const told = (mine: Design, theirs: Design, states = nominal(mine, theirs)) =>
    consequences(engine.solve(mine), engine.solve(theirs), states, metres).map(
      ({ about, words }) => `${about}: ${plainSpaces(words)}`,
    );

  it('is nothing between equals', () => {
    expect(consequences(solved, solved, nominal(station, station), metres)).toEqual([]);
  });

  it('a shorter sink is hotter, with less duty and a shorter hold', () => {
    const shorter = withLeaf(station, 'sink.length', 0.06);
    const line = told(shorter, station).find((each) => each.startsWith('key-down'));
    expect(line).toMatch(
      /the junction is hotter by \d+ K; safe duty \d+ % instead of 39 %; held from cold .* instead of 6 min/,
    );
    expect(told(station, shorter).find((each) => each.startsWith('key-down'))).toMatch(/cooler by \d+ K/);
  });

  it('tells the states it is given for both, those of the band where the table shows them', () => {
    const at = (state: State) =>
      solved.verdicts.map((verdict) => (verdict.key === 'keyDown' ? { ...verdict, state } : verdict));
    const [line] = told(station, station, { mine: at('over'), theirs: at('close') });
    expect(line).toBe('key-down: over instead of close.');
    expect(told(station, station, { mine: at('over'), theirs: at('over') })).toEqual([]);
  });

  it('says of a service that only one can carry', () => {
    expect(told(beacon, station).join('\n')).toMatch(/SSB: not to be had here: .*[Cc]lass E/);
    expect(told(station, beacon).join('\n')).toMatch(/SSB: only here/);
  });

  it('speaks of current, fuse and distance', () => {
    const text = told(data, station).join('\n');
    expect(text).toMatch(
      /12 V input: draws at the peak 19\.5 A instead of 11\.1 A; fuse 30\.0 A instead of 20\.0 A/,
    );
    expect(text).toMatch(/keep from the antenna at least 2 m instead of 0\.5 m/);
  });
});

describe('figures', () => {
  it.each([
    [400, 388, 'temperature', '+12 K'],
    [388, 400, 'temperature', '−12 K'],
    [0.38, 0.55, 'share', '−17 points'],
    [60, 310, 'time', '−4 min 10 s'],
    [11.1, 9, 'current', '+2.1 A'],
    [11.1, 11.1, 'current', ''],
  ] as const)('%d against %d (%s) is %s', (mine, theirs, dimension, words) => {
    expect(plainSpaces(writeDifference(mine, theirs, dimension))).toBe(words);
  });

  it('has a line where one side has a figure, and a word where a time has no end', () => {
    const lines = figureLines(engine.solve(beacon), engine.solve(station));
    const at = (key: string) => lines.find((line) => line.key === key)?.difference;
    expect(at('ssb.junctionPeak')).toBe('only there');
    expect(at('keyDown.holdTime')).toBe('longer');
    expect(at('keyDown.junctionPeak')).toMatch(/^−\d+.K$/);
  });
});

describe('both curves in one plot', () => {
  const sweepsOf = (design: Design) =>
    Object.fromEntries(
      services.map((service) => [service, engine.sweep(design, service)]),
    ) as Curves['sweeps'];
  const side = (design: Design) => ({ design, solution: engine.solve(design), sweeps: sweepsOf(design) });

  it('differ by line style and name, on one scale that holds both', () => {
    const told = overlayPlot(side(station), side(data), 'keyDown')!;
    const [here, there] = told.data.series;
    expect([here?.label, there?.label]).toEqual(['here', 'there']);
    expect(here?.dash).not.toEqual(there?.dash);
    for (const series of told.data.series) {
      expect(series.values).toHaveLength(told.data.x.length);
      expect(Math.max(...series.values.map((value) => value ?? 0))).toBeLessThanOrEqual(told.data.yRange[1]);
    }
  });

  it('a service that one side has not leaves an empty line, not a wrong one', () => {
    const told = overlayPlot(side(station), side(beacon), 'ssb')!;
    expect(told.data.series[1]?.values.every((value) => value === null)).toBe(true);
  });
});
