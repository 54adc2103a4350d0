import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import type { Service } from '../../../shared/solution.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { serviceLoad } from '../../../src/engine/couple/serviceLoad.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

type Edits = Partial<Design['service']>;

function loadOf(design: Design, service: Service) {
  return serviceLoad(resultOf(prepare(design).electrics).loads, service, 350);
}

const overOf = (edits: Edits, service: Service, amplifier: Partial<Design['amplifier']> = {}) =>
  resultOf(loadOf(change(referenceDesign, { service: edits, amplifier }), service));

describe('what an over of each service takes and heats', () => {
  // Own computation: the mode table of the reference amplifier, W into the final and W of heat in the devices.
  const table: readonly [string, Service, Edits, number, number][] = [
    ['carrier', 'keyDown', { keyDownMode: 'carrier' }, 164.73, 54.73],
    ['FM', 'keyDown', { keyDownMode: 'fm' }, 164.73, 54.73],
    ['RTTY', 'keyDown', { keyDownMode: 'rtty' }, 164.73, 54.73],
    ['slow-scan', 'keyDown', { keyDownMode: 'sstv' }, 164.73, 54.73],
    ['CW PARIS, bias held', 'cw', {}, 80.21, 31.81],
    ['two tones', 'ssb', { speechKind: 'twoTone' }, 105.78, 50.78],
    ['phase-shift idle', 'keyDown', { keyDownMode: 'phaseShiftIdle' }, 105.78, 50.78],
    ['phase-shift text', 'keyDown', { keyDownMode: 'phaseShift' }, 135.26, 52.76],
    ['AM carrier', 'keyDown', { keyDownMode: 'am', modulationDepth: 0 }, 83.12, 55.62],
    ['AM, whole depth', 'keyDown', { keyDownMode: 'am', modulationDepth: 1 }, 84.66, 43.41],
    ['SSB relaxed', 'ssb', { speechKind: 'relaxed' }, 39.167, 30.367],
    ['SSB unprocessed', 'ssb', { speechKind: 'unprocessed' }, 61.493, 39.493],
    ['SSB compressed', 'ssb', { speechKind: 'compressed' }, 76.895, 43.895],
    ['SSB heavily processed', 'ssb', { speechKind: 'heavy' }, 104.378, 49.378],
    [
      'SSB 20 % in 80 % of the over',
      'ssb',
      { speechKind: 'unprocessed', speechActivity: 0.8 },
      58.282,
      36.282,
    ],
  ];

  it.each(table)('%s', (_name, service, edits, dcPower, heat) => {
    const { over } = overOf(edits, service);
    expectClose(over.dcPower, dcPower, 2e-4);
    expectClose(over.deviceHeat, heat, 2e-4);
  });

  it('CW with the bias keyed', () => {
    const { over } = overOf({}, 'cw', { biasKeyed: true });
    expectClose(over.dcPower, 72.48, 2e-4);
    expectClose(over.deviceHeat, 24.08, 3e-4);
  });

  // Counted: PARIS 22 of 50 units, CODEX 31 of 60; weight 60 % adds 14 marks of 0.2 units.
  it.each([
    ['PARIS', 0.5, 22 / 50],
    ['codex', 0.5, 31 / 60],
    ['PARIS', 0.6, 24.8 / 50],
  ])('CW text %s with weight %f has the key down %f of the time', (keyingText, keyingWeight, share) => {
    expectClose(overOf({ keyingText, keyingWeight }, 'cw').averageRatio, share, 1e-12);
  });

  // QEX 2020 (from memory): 79 symbols of 0.160 s in 15 s, 105 of 0.048 s in 7.5 s; WSPR 110.6 s of 120 s.
  it.each([
    ['FT8', 12.64 / 15],
    ['FT4', 5.04 / 7.5],
    ['WSPR', 110.6 / 120],
  ] as const)('%s is on the air %f of the over and listens between', (keyDownMode, share) => {
    const load = overOf({ keyDownMode }, 'keyDown');
    expectClose(load.averageRatio, share, 1e-12);
    expectClose(load.over.deviceHeat, share * 54.7343, 1e-5);
    expect(load.keyUpHeat).toBe(0);
    expect(overOf({ keyDownMode }, 'keyDown', { biasInReceive: true }).keyUpHeat).toBeCloseTo(13.8, 9);
  });
});

describe('what a class cannot carry', () => {
  const beacon = exampleOf('pocket-beacon-10w');
  it.each([
    ['ssb', {}, /SSB/],
    ['ssb', { speechKind: 'twoTone' }, /two-tone/],
    ['keyDown', { keyDownMode: 'am' }, /AM/],
    ['keyDown', { keyDownMode: 'phaseShift' }, /phase-shift/],
  ] as const)('class E refuses %s %o by name', (service, edits, word) => {
    const refused = loadOf(change(beacon, { service: edits }), service);
    expect(!refused.ok && refused.reason.key).toBe('notLinear');
    expect(!refused.ok && refused.reason.sentence).toMatch(word);
  });

  it.each(['carrier', 'fm', 'rtty', 'sstv', 'FT8', 'FT4', 'WSPR'] as const)('class E carries %s', (mode) => {
    expect(loadOf(change(beacon, { service: { keyDownMode: mode } }), 'keyDown').ok).toBe(true);
  });

  it('a text without Morse code ends CW alone', () => {
    const odd = change(referenceDesign, { service: { keyingText: 'QTH €' } });
    const cw = loadOf(odd, 'cw');
    expect(!cw.ok && cw.reason.key).toBe('no morse code');
    expect(loadOf(odd, 'ssb').ok).toBe(true);
  });
});
