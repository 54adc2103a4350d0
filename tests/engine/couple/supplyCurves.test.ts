import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { wireBears } from '../../../src/engine/couple/timeCurrent.ts';
import { solve, supplyCurves } from '../../../src/engine/index.ts';
import { conductorBySize } from '../../../src/engine/supply/conductor.ts';
import { expectClose } from '../closeTo.ts';
import { change, exampleOf } from './designs.ts';

const station = exampleOf('field-station-60w');
const designed = change(station, { converter: { kind: 'designed', heatTo: 'ownSink' } });

describe('fuse, load and wire over current and time', () => {
  const found = supplyCurves(station).timeCurrent;
  if (!found) throw new Error('no curves');

  it('is as long everywhere, current rising, holds below opens', () => {
    const { current, holds, opens, wire } = found;
    for (const list of [holds, opens, wire]) expect(list).toHaveLength(current.length);
    current.forEach((one, i) => {
      if (i > 0) expect(one).toBeGreaterThanOrEqual(current[i - 1]!);
      const [shortest, longest] = [holds[i], opens[i]];
      if (typeof shortest === 'number' && typeof longest === 'number') {
        expect(shortest).toBeLessThanOrEqual(longest);
      }
    });
  });

  it('passes through the gates of a 20 A blade fuse: 0.15 to 5 s at 200 %', () => {
    const at = (percent: number) => found.current.findIndex((one) => one >= 0.2 * percent * (1 - 1e-9));
    expect(found.holds[at(200)]).toBe(0.15);
    expect(found.opens[at(200)]).toBe(5);
    expect(found.opens[at(600)]).toBe(0.1);
  });

  it('carries the loads of the services and the short', () => {
    const { values } = solve(station);
    const over = station.service.cycle * station.service.transmitShare;
    expect(found.loads.map((load) => load.label)).toEqual([
      'SSB, r.m.s.',
      'CW, r.m.s.',
      'long carrier',
      'peak of a syllable',
      'short at the far end',
    ]);
    expectClose(found.loads[2]!.current, values.inputCurrentPep ?? 0, 1e-3);
    expect(found.loads[2]!.time).toBe(over);
    expectClose(found.loads[4]!.current, values.farFaultCurrent ?? 0, 1e-9);
  });

  it('the wire bears less time the more current, 5 s at its adiabatic limit, for ever below its ampacity', () => {
    const wire = conductorBySize('4 mm2');
    const bears = (current: number) => wireBears(wire, 343.15, 40, 150, current);
    expect(bears(39)).toBeNull();
    let last = Infinity;
    for (let current = 40.5; current < 2000; current *= 1.02) {
      const time = bears(current)!;
      expect(time).toBeLessThanOrEqual(last);
      last = time;
    }
    // k = 115 A √s/mm² for PVC from 70 °C (IEC 60364-5-54): 4 mm² at 914 A stands 0.25 s.
    expectClose(bears(914)!, 0.25, 0.02);
  });
});

describe('converter', () => {
  it('efficiency of a module and of parts agrees with the solve at PEP', () => {
    for (const design of [station, designed]) {
      const found = supplyCurves(design).converter;
      const { values } = solve(design);
      const curve = found?.curves.find(
        (one) => Math.abs(one.inputVoltage - (values.inputVoltagePep ?? 0)) < 1e-6,
      );
      const index = found!.railCurrent.findIndex((one) => one >= found!.pepCurrent);
      expectClose(curve!.efficiency[index]!, values.converterEfficiencyPep ?? 0, 2e-3);
    }
  });

  it('falls towards no load, and a higher input is the better one at PEP', () => {
    const found = supplyCurves(designed).converter!;
    const middle = Math.floor(found.railCurrent.length / 2);
    for (const { efficiency } of found.curves) expect(efficiency[0]).toBeLessThan(efficiency[middle]!);
    const atPep = found.curves.map((curve) => curve.efficiency[middle]!);
    expect([...atPep].sort((a, b) => a - b)).toEqual(atPep);
  });

  it('losses are sorted, positive and those of the solve', () => {
    const { losses } = supplyCurves(designed).converter!;
    const total = losses.reduce((sum, one) => sum + one.power, 0);
    expectClose(total, solve(designed).values.converterLossPep ?? 0, 1e-6);
    losses.forEach((one, i) => {
      expect(one.power).toBeGreaterThan(0);
      if (i > 0) expect(one.power).toBeLessThanOrEqual(losses[i - 1]!.power);
    });
  });

  it('only a converter from parts has waveforms', () => {
    expect(supplyCurves(station).converter?.waveforms).toBeNull();
    expect(supplyCurves(designed).converter?.waveforms?.time.length).toBeGreaterThan(20);
    expect(supplyCurves(exampleOf('pocket-beacon-10w')).converter).toBeNull();
  });
});

describe('noise on the band', () => {
  const noiseOf = (converter: Partial<Design['converter']>, band: Design['antenna']['band']) =>
    supplyCurves(change(designed, { converter, antenna: { band } })).noise!;

  it('a crystal clock is moved clear of a narrow band', () => {
    const found = noiseOf({ frequency: 145e3, clockTolerance: 0.0001 }, '30 m');
    // 70 times 145 kHz is 10.15 MHz, the upper edge of 30 m.
    expect(found.harmonics.map((one) => one.harmonic)).toEqual([70]);
    expect(found.suggestion?.clearance).toBeGreaterThan(10e3);
    const moved = noiseOf({ frequency: found.suggestion!.frequency, clockTolerance: 0.0001 }, '30 m');
    expect(moved.count).toBe(0);
    expect(moved.sentence).toMatch(/No harmonic/);
  });

  it('suggests nothing where a choice means nothing: a loose clock, or a band wider than the frequency', () => {
    const loose = noiseOf({ frequency: 145e3, clockTolerance: 0.1 }, '30 m');
    expect(loose.suggestion).toBeNull();
    expect(loose.sentence).toMatch(/places no more than 5 harmonics/);
    const wide = noiseOf({ frequency: 145e3, clockTolerance: 0.0001 }, '20 m');
    expect(wide.suggestion).toBeNull();
    expect(wide.sentence).toMatch(/wider than the switching frequency/);
    expect(wide.count).toBeGreaterThan(1);
  });

  it('the edges follow the region', () => {
    const first = noiseOf({ region: 'region1' }, '40 m');
    const second = noiseOf({ region: 'region2' }, '40 m');
    expect([first.to, second.to]).toEqual([7.2e6, 7.3e6]);
  });

  it('a filter choke has an attenuation, held at what stray parts allow', () => {
    expect(noiseOf({}, '40 m').attenuation).toBeNull();
    const found = noiseOf({ filterInductance: 10e-6, inputCapacitorResistance: 0.03 }, '40 m');
    expect(found.attenuation).toBeGreaterThan(30);
    expect(found.attenuation).toBeLessThanOrEqual(60);
  });

  it('a module without a frequency says nothing', () => {
    expect(supplyCurves(station).noise).toBeNull();
  });
});

it('never throws, whatever the design can do', () => {
  for (const { design } of examples) {
    for (const kind of ['none', 'module', 'designed'] as const) {
      expect(() => supplyCurves(change(design, { converter: { kind } }))).not.toThrow();
    }
  }
});
