import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ladderPeriodic } from '../../../src/engine/heat/deviceLadder.ts';
import { dotTime, keyingPattern } from '../../../src/engine/signal/keying.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

describe('Morse keying', () => {
  // Published element lengths: 240 ms at 5 WPM, 92.31 ms at 13 WPM.
  it.each([
    [5, 0.24],
    [13, 0.09231],
    [20, 0.06],
  ])('has the published dot at %i words per minute', (speed, seconds) => {
    expectClose(dotTime(speed), seconds, 5e-5);
  });

  // PARIS: 14 + 8 + 10 + 6 + 12 = 50 units (published), 22 of them with the key down; CODEX 31 of 60 (counted).
  it.each([
    ['PARIS', 22, 50],
    ['codex', 31, 60],
    ['E', 1, 8],
    ['PARIS PARIS', 44, 100],
  ])('counts the units of %s', (text, down, total) => {
    const pattern = resultOf(keyingPattern(1.2, { text }));
    expectClose(pattern.period, total, 1e-12);
    expectClose(pattern.keyedShare, down / total, 1e-12);
  });

  it('has a keyed share of 44 % by default', () => {
    expectClose(resultOf(keyingPattern(18)).keyedShare, 0.44, 1e-12);
  });

  it.each([
    [0.45, 0.412],
    [0.5, 0.44],
    [0.55, 0.468],
    [0.6, 0.496],
  ])('follows the weight %f', (weight, share) => {
    expectClose(resultOf(keyingPattern(20, { weight })).keyedShare, share, 1e-12);
  });

  it('writes A as dot, gap, dash, word space', () => {
    expect(resultOf(keyingPattern(1.2, { text: 'A' })).segments).toEqual([
      { on: true, duration: 1 },
      { on: false, duration: 1 },
      { on: true, duration: 3 },
      { on: false, duration: 7 },
    ]);
  });

  it('alternates marks and spaces that fill the period', () => {
    const text = fc.stringMatching(/^[A-Z0-9 ]*[A-Z0-9]$/);
    const speed = fc.double({ min: 3, max: 60, noNaN: true });
    fc.assert(
      fc.property(text, speed, fc.double({ min: 0.4, max: 0.6, noNaN: true }), (word, wpm, weight) => {
        const pattern = resultOf(keyingPattern(wpm, { text: word, weight }));
        const total = pattern.segments.reduce((sum, { duration }) => sum + duration, 0);
        expectClose(total, pattern.period, 1e-9);
        expect(pattern.segments.every(({ on, duration }, i) => on === (i % 2 === 0) && duration > 0)).toBe(
          true,
        );
        expect(pattern.segments.length % 2).toBe(0);
        expect(pattern.keyedShare).toBeGreaterThan(0);
        expect(pattern.keyedShare).toBeLessThan(0.85);
      }),
    );
  });

  it.each([
    [20, { text: '  ' }, 'no text to key'],
    [20, { text: 'A#' }, 'no morse code'],
    [0, {}, 'keying speed out of range'],
    [20, { weight: 0.9 }, 'keying weight out of range'],
  ])('gives a reason: speed %f, %o', (speed, options, key) => {
    const outcome = keyingPattern(speed, options);
    expect(outcome.ok ? '' : outcome.reason.key).toBe(key);
  });

  it('makes the ripple of an independent computation in a device with two time constants', () => {
    const [{ inputs, expected, relativeTolerance }] = cases.groups.service as [
      (typeof cases.groups.service)[number],
    ];
    const stages = inputs.R.map((resistance, i) => ({ resistance, timeConstant: inputs.tau[i]! }));
    const { segments } = resultOf(keyingPattern(inputs.wpm, { text: inputs.word }));
    const heat = segments.map(({ on, duration }) => ({ power: on ? inputs.Pdown : inputs.Pup, duration }));
    const period = ladderPeriodic(stages, heat);
    expectClose(period.highest, expected.max, relativeTolerance);
    expectClose(Math.min(period.start, ...period.ends), expected.min, relativeTolerance);
    expectClose(period.mean, expected.mean, relativeTolerance);
  });
});
