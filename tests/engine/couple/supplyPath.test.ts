import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { part } from '../../../shared/design/start.ts';
import { solve } from '../../../src/engine/index.ts';
import { fuseResistance } from '../../../src/engine/supply/fuse.ts';
import { expectClose } from '../closeTo.ts';
import { change, exampleOf } from './designs.ts';

const station = exampleOf('field-station-60w');
const withPath = (path: Design['wiring']['path'], wiring: Partial<Design['wiring']> = {}) =>
  change(station, { wiring: { ...wiring, path } });
const keysOf = (design: Design) => solve(design).supply.map((finding) => finding.key);

describe('the path in order', () => {
  it('puts the main wire behind the first fuse', () => {
    const { path } = solve(
      withPath([
        part('switch'),
        part('fuse'),
        { ...part('connector', 2), connector: 'flat45' },
        part('diode'),
      ]),
    );
    expect(path.map((row) => row.kind)).toEqual(['switch', 'fuse', 'mainWire', 'connector', 'diode']);
  });

  it('bolts the fuse to the source when no holder is listed, and counts the filter choke', () => {
    const { path } = solve(
      change(station, {
        wiring: { path: [part('joint')] },
        converter: { filterInductance: 1e-6, filterResistance: 0.003 },
      }),
    );
    expect(path.map((row) => row.name)).toEqual([
      '20 A fuse',
      'AWG 10, there and back',
      'crimped ring or screw joint',
      'filter choke',
    ]);
    expectClose(path[0]!.resistance, fuseResistance('bladeMedium', 20)!, 1e-12);
  });

  it('drops and heats add up to those of the supply', () => {
    const { path, values, powerPath } = solve(withPath([part('fuse'), part('diode'), part('wire')]));
    const sum = (pick: 'drop' | 'heat' | 'resistance') => path.reduce((all, row) => all + row[pick], 0);
    expectClose(sum('drop'), values.pathDropPep ?? 0, 1e-12);
    expectClose(sum('resistance'), values.pathResistance ?? 0, 1e-12);
    expectClose(sum('heat'), powerPath.pep.find((step) => step.key === 'wiring')!.heat, 1e-12);
    expect(values.seriesDrop).toBe(0.45);
  });

  it('takes measured resistances for the usual ones, and old contacts for four times new ones', () => {
    const row = (piece: Design['wiring']['path'][number]) => solve(withPath([part('fuse'), piece])).path[2]!;
    expectClose(row({ ...part('connector', 2), resistance: 0.004 }).resistance, 0.008, 1e-12);
    const fresh = row(part('connector', 2));
    const aged = row({ ...part('connector', 2), aged: true });
    expectClose(aged.resistance, 4 * fresh.resistance, 1e-12);
    expect(aged.rise).toBeGreaterThan(3.9 * (fresh.rise ?? 0));
  });

  it('another piece of wire has its own size and temperature', () => {
    const thin = solve(withPath([part('fuse'), { ...part('wire'), size: 'AWG 18', length: 0.2 }])).path[2]!;
    const thick = solve(withPath([part('fuse'), { ...part('wire'), size: 'AWG 8', length: 0.2 }])).path[2]!;
    expect(thin.resistance).toBeGreaterThan(10 * thick.resistance);
    expect(thin.rating).toBeLessThan(thick.rating ?? 0);
  });

  it('names the weakest part and does not let the fuse pass for its protection', () => {
    const design = withPath([part('fuse'), { ...part('connector', 2), connector: 'flat15' }]);
    const { path, supply, values } = solve(design);
    expect(path.find((row) => row.weakest)?.name).toMatch(/15 A size/);
    expect(values.weakestRating).toBe(15);
    expect(supply.find((finding) => finding.key === 'fuse.weakestPart')?.sentence).toMatch(
      /20\sA fuse does not protect .* 15\sA: flat wiping contact/,
    );
    expect(keysOf(station)).not.toContain('fuse.weakestPart');
  });

  it('a contact beyond its rating is over', () => {
    const design = withPath([part('fuse'), { ...part('connector', 2), connector: 'lighter' }]);
    expect(keysOf(design)).toContain('pathPart');
    expect(solve(design).path[2]!.state).toBe('over');
    expect(solve(design).verdicts.find((one) => one.key === 'supply')?.state).toBe('over');
  });
});

describe('wire', () => {
  it('copper-clad aluminium has 1.6 times the resistance, bears less and says so', () => {
    const clad = solve(change(station, { wiring: { material: 'copperClad' } }));
    const plain = solve(station);
    expectClose((clad.values.wireResistance20 ?? 0) / (plain.values.wireResistance20 ?? 1), 1 / 0.62, 1e-9);
    expectClose((clad.values.wireAmpacity ?? 0) / (plain.values.wireAmpacity ?? 1), Math.sqrt(0.62), 0.02);
    expect(clad.notes.map((one) => one.key)).toContain('copperClad');
  });

  it('more wires in the bundle allow less current', () => {
    const bundled = solve(change(station, { wiring: { together: 6 } })).values.wireAmpacity ?? 0;
    expect(bundled).toBeLessThan(0.75 * (solve(station).values.wireAmpacity ?? 0));
  });

  it('the table marks one size as fitted, and every thinner one than the first that passes fails by name', () => {
    const { wires } = solve(station);
    const gauge = wires.filter((row) => row.size.startsWith('AWG'));
    const first = gauge.findIndex((row) => row.fails.length === 0);
    expect(gauge[first]?.size).toBe('AWG 16');
    for (const row of gauge.slice(0, first)) expect(row.fails.length).toBeGreaterThan(0);
    expect(wires.filter((row) => row.chosen).map((row) => row.size)).toEqual(['AWG 10']);
  });
});

describe('source', () => {
  it('near empty the peak meets less voltage, and a collapse then is told', () => {
    const { values } = solve(station);
    expect(values.inputVoltageEmpty).toBeLessThan(values.inputVoltagePep ?? 0);
    expect(values.inputCurrentEmpty).toBeGreaterThan(values.inputCurrentPep ?? 0);
    const tired = change(station, { source: { emptyVoltage: 11, emptyResistanceFactor: 5 } });
    const finding = solve(tired).supply.find((one) => one.key === 'emptySource');
    expect(finding?.state).toBe('close');
    expect(finding?.sentence).toMatch(/Near empty/);
  });

  it('a mains supply does not run empty and has no time', () => {
    const { values } = solve(exampleOf('data-final-100w'));
    expect(values.inputVoltageEmpty).toBeUndefined();
    expect(values['ssb.runTime']).toBeUndefined();
  });

  it('time on the battery falls with the duty; the cautious figure is never the longer one', () => {
    const busy = solve(change(station, { service: { transmitShare: 0.8 } })).values;
    const quiet = solve(change(station, { service: { transmitShare: 0.1 } })).values;
    for (const service of ['ssb', 'cw', 'keyDown']) {
      expect(busy[`${service}.runTime`]).toBeLessThan(quiet[`${service}.runTime`] ?? 0);
      expect(busy[`${service}.runTimeCautious`]).toBeLessThanOrEqual(busy[`${service}.runTime`] ?? 0);
    }
  });

  it('inrush: I²t is half of C V² over the resistance, and a weak fuse is told', () => {
    const design = change(station, { converter: { inputCapacitance: 4700e-6 } });
    const { values } = solve(design);
    const resistance = (values.sourceResistance ?? 0) + (values.pathResistance ?? 0);
    expectClose(
      values.inrushIntegral ?? 0,
      (13.2 ** 2 * values.switchedCapacitance!) / (2 * resistance),
      1e-9,
    );
    expect(values.inrushVoltage).toBe(13.2);
    const small = solve(
      change(station, { converter: { inputCapacitance: 100e-6 }, hazards: { railCapacitance: 0 } }),
    ).values;
    expect(small.inrushVoltage).toBeGreaterThan(13.2);
    const huge = change(station, { converter: { inputCapacitance: 0.1 } });
    expect(keysOf(huge)).toContain('inrush');
  });
});
