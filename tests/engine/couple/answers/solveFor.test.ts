import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnknownAnswer } from '../../../../shared/answers.ts';
import { withValue } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import type { Outcome } from '../../../../shared/outcome.ts';
import { doubtOf } from '../../../../src/engine/couple/answers/doubt.ts';
import { marginAt } from '../../../../src/engine/couple/answers/gauge.ts';
import { solveFor } from '../../../../src/engine/couple/answers/solveFor.ts';
import { loadDoubts } from '../../../../src/engine/couple/loadDoubts.ts';
import { band, solve } from '../../../../src/engine/index.ts';
import { change, exampleOf } from '../designs.ts';

const station = exampleOf('field-station-60w');
const dataFinal = exampleOf('data-final-100w');

function ask(design: Design, path: string, ...targets: readonly (readonly [string, number])[]) {
  return solveFor(design, { path, targets: targets.map(([quantity, value]) => ({ quantity, value })) });
}

function answerOf(outcome: Outcome<UnknownAnswer>): UnknownAnswer {
  if (!outcome.ok) throw new Error(outcome.reason.sentence);
  return outcome.value;
}

const reasonOf = (outcome: Outcome<UnknownAnswer>) => (outcome.ok ? 'found' : outcome.reason.key);

/** Design, unknown, quantity, target; the tolerance is that of a figure one would read. */
const questions: readonly [string, Design, string, string, number, number][] = [
  ['sink length for key-down at 50 % duty', station, 'sink.length', 'keyDown.safeDuty', 0.5, 1e-3],
  ['power for unlimited SSB', station, 'amplifier.pep', 'ssb.safeDuty', 1, 1e-3],
  ['power for a carrier at 45 %', station, 'amplifier.pep', 'keyDown.safeDuty', 0.45, 1e-3],
  ['ambient limit', station, 'surroundings.ambient', 'keyDown.safeDuty', 0.4, 1e-3],
  ['duty at the design limit', station, 'service.transmitShare', 'keyDown.junctionPeak', 398.15, 0.01],
  ['wire length for 3 % drop', station, 'wiring.length', 'pathDropShare', 0.03, 1e-5],
  [
    'plate thickness for a hold time of ten minutes',
    station,
    'sink.baseThickness',
    'keyDown.holdTime',
    600,
    1,
  ],
  ['voltage of the source for 12 V at the load', station, 'source.openVoltage', 'inputVoltagePep', 12, 0.02],
  ['room for people', station, 'antenna.gain', 'exposureDistance', 1, 0.05],
  ['fan flow', change(station, { sink: { fan: 'along' } }), 'sink.fanFlow', 'keyDown.safeDuty', 0.5, 1e-3],
];

describe('a given value turned into the unknown', () => {
  it.each(questions)(
    '%s: put in, it gives the target',
    (_name, design, path, quantity, target, tolerance) => {
      const answer = answerOf(ask(design, path, [quantity, target]));
      expect(answer.found.length).toBeGreaterThan(0);
      for (const found of answer.found) {
        const reached = solve(withValue(design, path, found.value)).values[quantity]!;
        expect(Math.abs(reached - target)).toBeLessThanOrEqual(tolerance);
        expect(found.edit).toEqual({ path, value: found.value });
        expect(found.verdicts).toHaveLength(5);
      }
    },
  );

  it('takes a wire size as the thinnest that keeps the drop', () => {
    const answer = answerOf(ask(station, 'wiring.size', ['pathDropShare', 0.03]));
    expect(answer.found).toHaveLength(1);
    const dropWith = (size: unknown) => solve(withValue(station, 'wiring.size', size)).values.pathDropShare!;
    expect(answer.found[0]!.value).toBe('AWG 14');
    expect(dropWith('AWG 14')).toBeLessThanOrEqual(0.03);
    expect(dropWith('AWG 16')).toBeGreaterThan(0.03);
  });

  it('takes a number of devices as the least that does it', () => {
    const count = answerOf(ask(station, 'device.count', ['keyDown.safeDuty', 1])).found[0]!.value as number;
    const dutyWith = (devices: number) =>
      solve(withValue(station, 'device.count', devices)).values['keyDown.safeDuty']!;
    expect(dutyWith(count)).toBeGreaterThan(0.999);
    expect(dutyWith(count - 1)).toBeLessThan(0.999);
  });

  it('finds every choice that does it where choices have no order', () => {
    const answer = answerOf(ask(station, 'device.pad', ['keyDown.safeDuty', 0.45]));
    for (const { value } of answer.found) {
      expect(solve(withValue(station, 'device.pad', value)).values['keyDown.safeDuty']!).toBeGreaterThan(
        0.449,
      );
    }
    expect(answer.found.map(({ value }) => value)).toContain('grease');
    expect(answer.found.map(({ value }) => value)).not.toContain('bare');
  });

  it('shows both solutions where the quantity rises and falls again', () => {
    const answer = answerOf(ask(dataFinal, 'sink.length', ['keyDown.safeDuty', 0.15]));
    expect(answer.found).toHaveLength(2);
    expect(answer.found[1]!.value as number).toBeGreaterThan((answer.found[0]!.value as number) * 1.1);
    expect(answer.sentence).toMatch(/There are 2 values/);
    for (const { value } of answer.found) {
      const reached = solve(withValue(dataFinal, 'sink.length', value)).values['keyDown.safeDuty']!;
      expect(reached).toBeCloseTo(0.15, 3);
    }
  });

  it('gives a curve of the quantity over the range', () => {
    const { curve } = answerOf(ask(station, 'sink.length', ['keyDown.safeDuty', 0.5]));
    expect(curve.length).toBeGreaterThan(20);
    expect(curve[0]!.value).toBe(0.01);
    expect(curve.at(-1)!.value).toBe(1);
  });

  it('holds for any target that the range can give', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.95, noNaN: true }), (share) => {
        const outcome = ask(station, 'sink.width', ['keyDown.safeDuty', share]);
        if (!outcome.ok) {
          expect(outcome.reason.key).toBe('outOfReach');
          return;
        }
        for (const { value } of outcome.value.found) {
          const reached = solve(withValue(station, 'sink.width', value)).values['keyDown.safeDuty']!;
          expect(reached).toBeCloseTo(share, 3);
        }
      }),
      { numRuns: 12, seed: 3 },
    );
  });
});

describe('at the pessimistic edge', () => {
  it('asks for a larger sink, and the edge of that design stands at the limit', { timeout: 60_000 }, () => {
    const question = { path: 'sink.length', targets: [{ quantity: 'keyDown.safeDuty', value: 0.42 }] };
    const nominal = answerOf(solveFor(station, question)).found[0]!.value as number;
    const answer = answerOf(solveFor(station, question, 'pessimistic'));
    const careful = answer.found[0]!.value as number;
    expect(answer.edge).toBe('pessimistic');
    expect(careful).toBeGreaterThan(nominal);
    const found = withValue(station, 'sink.length', careful);
    expect(Math.abs(marginAt(found, 'keyDown', doubtOf(found), 0.42)!)).toBeLessThan(1);
  });
});

describe('the pessimistic edge of every quantity that has a doubt', () => {
  const careful = (path: string, quantity: string, value: number, design = station) =>
    answerOf(solveFor(design, { path, targets: [{ quantity, value }] }, 'pessimistic'));
  const edgesOf = (design: Design) => {
    const found = band(design, { samples: 128 });
    if (!found.ok) throw new Error(found.reason.sentence);
    return found.value.edges;
  };

  it('hold time: nine of ten designs as found hold at least as long', { timeout: 60_000 }, () => {
    const answer = careful('sink.baseThickness', 'keyDown.holdTime', 600);
    expect(answer.figures[0]).toMatch(/pessimistic edge of its band/);
    const found = withValue(station, 'sink.baseThickness', answer.found[0]!.value);
    expect(solve(found).values['keyDown.holdTime']!).toBeGreaterThan(620);
    expect(Math.abs(edgesOf(found)['keyDown.holdTime']!.low / 600 - 1)).toBeLessThan(0.03);
  });

  it('temperature of the plate: the upper edge stands at the target', { timeout: 60_000 }, () => {
    const answer = careful('sink.length', 'keyDown.platePeak', 358.15);
    const found = withValue(station, 'sink.length', answer.found.at(-1)!.value);
    expect(edgesOf(found)['keyDown.platePeak']!.high!).toBeCloseTo(358.15, 0);
  });

  it('metal a hand touches: as the verdict for people with its band', { timeout: 60_000 }, () => {
    const answer = careful('service.transmitShare', 'touchTemperature', 341.15);
    const found = withValue(station, 'service.transmitShare', answer.found[0]!.value);
    const sure = band(found, { samples: 128 });
    const people = sure.ok ? sure.value.verdicts.find(({ key }) => key === 'people')! : null;
    expect(people?.headline).toMatch(/metal up to 6[89]/);
    expect(answer.figures[0]).toMatch(/pessimistic edge of the metal/);
    expect(answer.found[0]!.verdicts.find(({ key }) => key === 'people')!.state).toBe(people?.state);
  });

  it('current and drop of the 12 V side: by the efficiency of final and converter', {
    timeout: 60_000,
  }, () => {
    const nominal = answerOf(ask(station, 'wiring.length', ['pathDropShare', 0.03])).found[0]!
      .value as number;
    const answer = careful('wiring.length', 'pathDropShare', 0.03);
    expect(answer.figures[0]).toMatch(/efficiency of the final and of the converter at the pessimistic edge/);
    const length = answer.found[0]!.value as number;
    expect(length).toBeLessThan(nominal);
    const { amplifier } = withValue(station, 'wiring.length', length);
    const worse = change(withValue(station, 'wiring.length', length), {
      amplifier: { efficiency: amplifier.efficiency - loadDoubts(station).efficiency },
    });
    // The final alone at its edge comes near the target but not beyond it: the converter has its share.
    const drop = solve(worse).values.pathDropShare!;
    expect(drop).toBeLessThan(0.03);
    expect(drop).toBeGreaterThan(0.0285);
  });

  it('says in words where no doubt is known', { timeout: 60_000 }, () => {
    const answer = careful('antenna.gain', 'exposureDistance', 1);
    expect(answer.figures[0]).toMatch(/nominal figure: the sheet knows no doubt of it/);
  });
});

describe('what cannot be answered says why', () => {
  const refused: readonly [string, Design, string, readonly (readonly [string, number])[], RegExp][] = [
    ['outOfReach', dataFinal, 'sink.length', [['keyDown.safeDuty', 0.5]], /nearest is 1\d\.\d\u202f%/],
    ['outOfReach', station, 'wiring.length', [['pathDropShare', 0.9]], /0 m to 50 m|0\u202fm to 50\u202fm/],
    ['fixedByAnother', station, 'sink.emissivity', [['keyDown.safeDuty', 0.5]], /own emissivity/],
    ['fixedByAnother', station, 'sink.fanFlow', [['keyDown.safeDuty', 0.5]], /blows along the fins/],
    ['fixedByAnother', station, 'device.padResistance', [['keyDown.safeDuty', 0.5]], /own value in K\/W/],
    ['noInfluence', station, 'antenna.gain', [['keyDown.safeDuty', 0.5]], /does not change/],
    [
      'contradictoryTargets',
      station,
      'sink.length',
      [
        ['keyDown.safeDuty', 0.5],
        ['sinkMass', 0.3],
      ],
      /contradict/,
    ],
    ['quantityIsGiven', station, 'sink.length', [['ambient', 300]], /entered, not found/],
    ['noSuchQuantity', station, 'sink.length', [['nonsense', 1]], /nonsense/],
    ['noSuchField', station, 'sink.nonsense', [['keyDown.safeDuty', 0.5]], /sink\.nonsense/],
    ['notAnUnknown', station, 'name', [['keyDown.safeDuty', 0.5]], /Design name/],
    ['noTarget', station, 'sink.length', [], /result should be/],
  ];
  it.each(refused)('%s: %#', (key, design, path, targets, words) => {
    const outcome = ask(design, path, ...targets);
    expect(reasonOf(outcome)).toBe(key);
    if (!outcome.ok) expect(outcome.reason.sentence).toMatch(words);
  });

  it('stays at the present value, and says so, where no value of the range does notably more', {
    timeout: 60_000,
  }, () => {
    const short = change(dataFinal, { amplifier: { pep: 300 }, sink: { length: 0.075 } });
    const question = { path: 'sink.length', targets: [{ quantity: 'keyDown.safeDuty', value: 0.9 }] };
    const outcome = solveFor(short, question, 'pessimistic');
    const words = outcome.ok ? '' : outcome.reason.sentence.replace(/\s+/g, ' ');
    expect(reasonOf(outcome)).toBe('outOfReach');
    expect(words).toMatch(/None comes notably nearer than the present 75\.0 mm, which gives [\d.]{1,5} %\./);
    expect(words).toMatch(
      /“Length along the fins” hardly matters here; something else limits\. The junction limit/,
    );
    expect(words).toMatch(
      /Of \d+ K from junction to air \d+ K lie between “plate, mean” and “air at the fins”/,
    );
  });

  it('gives the nearest value in three figures, and does not say that it hardly matters where it does', () => {
    const outcome = ask(dataFinal, 'sink.length', ['keyDown.safeDuty', 0.5]);
    const words = outcome.ok ? '' : outcome.reason.sentence;
    expect(words).toMatch(/ at \d{3}\u202fmm\./);
    expect(words).not.toMatch(/hardly matters/);
  });

  it('two targets that agree are no contradiction', () => {
    const length = answerOf(ask(station, 'sink.length', ['keyDown.safeDuty', 0.5])).found[0]!.value as number;
    const mass = solve(withValue(station, 'sink.length', length)).values.sinkMass!;
    const answer = answerOf(ask(station, 'sink.length', ['keyDown.safeDuty', 0.5], ['sinkMass', mass]));
    expect(answer.found).toHaveLength(1);
  });

  it('meets one of two targets and keeps the other: the one that asks for more decides', () => {
    const alone = (quantity: string, value: number) =>
      answerOf(ask(station, 'sink.length', [quantity, value])).found[0]!.value as number;
    const duty = alone('keyDown.safeDuty', 0.5);
    const mean = alone('ssb.platePeak', 345);
    for (const targets of [
      [['keyDown.safeDuty', 0.5] as const, ['ssb.platePeak', 345] as const],
      [['ssb.platePeak', 345] as const, ['keyDown.safeDuty', 0.5] as const],
    ]) {
      const answer = answerOf(ask(station, 'sink.length', ...targets));
      expect(answer.found[0]!.value).toBeCloseTo(Math.max(duty, mean), 6);
      expect(answer.found[0]!.others).toHaveLength(1);
      const { values } = solve(withValue(station, 'sink.length', answer.found[0]!.value));
      expect(values['keyDown.safeDuty']!).toBeGreaterThan(0.499);
      expect(values['ssb.platePeak']!).toBeLessThan(345.1);
    }
  });

  it('a target that every value keeps stands in no other one’s way', () => {
    const alone = answerOf(ask(station, 'sink.length', ['keyDown.safeDuty', 0.5]));
    const both = answerOf(ask(station, 'sink.length', ['keyDown.safeDuty', 0.5], ['exposureDistance', 900]));
    expect(both.found.map(({ value }) => value)).toEqual(alone.found.map(({ value }) => value));
    const easy = ask(station, 'sink.length', ['sinkMass', 900], ['exposureDistance', 900]);
    expect(!easy.ok && easy.reason.sentence).toMatch(/keeps all of the targets/);
  });
});
