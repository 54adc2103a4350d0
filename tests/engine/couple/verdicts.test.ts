import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import type { Solution } from '../../../shared/solution.ts';
import { band, solve } from '../../../src/engine/index.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

const field = exampleOf('field-station-60w');
const plain = (text: string) => text.replaceAll('\u202f', ' ');
const line = (verdicts: Solution['verdicts'], key: string) => {
  const found = verdicts.find((verdict) => verdict.key === key);
  if (!found) throw new Error(`no line ${key}`);
  return { ...found, headline: plain(found.headline), sentence: plain(found.sentence) };
};
/** Nominal, and with the band. */
const both = (design: Design) => [
  solve(design).verdicts,
  resultOf(band(design, { samples: 32, seed: 1 })).verdicts,
];

describe('the line of the 12 V side', () => {
  it.each([
    ['4 mm2', ' mm²'],
    ['AWG 10', 'AWG '],
  ] as const)('suggests the wire the table marks, in the system of a fitted %s', (size, system) => {
    const solution = solve(change(field, { wiring: { size } }));
    const gauge = size.startsWith('AWG');
    const row = solution.wires.find((one) => one.size.startsWith('AWG') === gauge && one.fails.length === 0);
    const said = line(solution.verdicts, 'supply').sentence.match(
      /thinnest wire that passes everything is (.*)\.$/,
    )?.[1];
    expect(said).toContain(system);
    expect(said).toBe(row!.size.replace('mm2', 'mm²'));
  });
});

describe('the current at the peak', () => {
  it('is said to be that of hot devices where a mean over cooler ones is higher, and only there', () => {
    const beacon = solve(exampleOf('pocket-beacon-10w'));
    expect(beacon.values['keyDown.inputCurrentMean']).toBeGreaterThan(beacon.values.inputCurrentPep!);
    expect(line(beacon.verdicts, 'supply').sentence).toContain('cooler ones draw a little more');
    expect(line(solve(field).verdicts, 'supply').sentence).not.toContain('cooler ones');
  });
});

describe('what cannot be known', () => {
  const noFins = change(field, { sink: { finCount: 200 } });

  it('is never fine: metal whose temperature cannot be found', () => {
    const people = line(solve(noFins).verdicts, 'people');
    expect(people.headline).toContain('metal temperature unknown');
    expect(people.state).toBe('over');
    expect(people.sentence).toContain('Touch cannot be judged');
  });

  it('is left out: no mean current where no service has one', () => {
    const supply = line(solve(noFins).verdicts, 'supply');
    expect(supply.sentence).not.toContain('Mean while transmitting');
    expect(supply.sentence).toMatch(/^Power from the source at the peak: \d/);
    expect(line(solve(field).verdicts, 'supply').sentence).toMatch(/^Mean while transmitting: \d/);
  });

  it('is never fine: an antenna no distance can be given for', () => {
    const people = line(solve(change(field, { antenna: { kind: 'other' } })).verdicts, 'people');
    expect(people.headline).toContain('no distance can be given');
    expect(people.state).toBe('over');
  });
});

describe('less than half of the power wanted', () => {
  const starved = change(field, { converter: { kind: 'none' } });

  it('is over on the 12 V side and at best close in every service, which says what it stands for', () => {
    const reached = solve(starved).values.pep!;
    expect(reached).toBeLessThan(field.amplifier.pep / 2);
    for (const verdicts of both(starved)) {
      expect(line(verdicts, 'supply').state).toBe('over');
      for (const key of ['ssb', 'cw', 'keyDown']) {
        const service = line(verdicts, key);
        expect(service.state, key).not.toBe('fine');
        expect(service.headline, key).toMatch(/, at \d[\d.]* m?W, not 60(\.0)? W$/);
      }
    }
  });

  it('is another thing than a little less: the 12 V side is close, and the services say nothing of it', () => {
    const nearly = change(field, { converter: { outputVoltage: 34 } as Partial<Design['converter']> });
    const reached = solve(nearly).values.pep!;
    expect(reached).toBeLessThan(field.amplifier.pep);
    expect(reached).toBeGreaterThan(field.amplifier.pep / 2);
    for (const verdicts of both(nearly)) {
      expect(line(verdicts, 'ssb').headline).not.toContain(', not ');
      expect(line(verdicts, 'supply').state).toBe('close');
    }
  });

  it('a mismatch that folds the final back by more than 1 dB is told beside every duty', () => {
    const folded = change(field, { amplifier: { swr: 2.5, foldbackSwr: 1.3 } });
    const reached = solve(folded).values.pep!;
    expect(reached).toBeLessThan(0.8 * field.amplifier.pep);
    for (const verdicts of both(folded)) {
      expect(line(verdicts, 'keyDown').headline).toMatch(/, at \d[\d.]* W, not 60(\.0)? W$/);
    }
  });
});
