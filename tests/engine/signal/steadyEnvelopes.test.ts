import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classAEnd, stageCurrent } from '../../../src/engine/amplifier/linearStage.ts';
import { type EnvelopeTable, meanOver } from '../../../src/engine/signal/envelopeTable.ts';
import {
  amplitudeModulationEnvelope,
  carrierEnvelope,
  phaseShiftEnvelope,
  twoToneEnvelope,
} from '../../../src/engine/signal/steadyEnvelopes.ts';
import { referenceStage } from '../amplifier/referenceStage.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

const pep = 110;
const kink = [classAEnd(referenceStage, pep)];

function railPower(envelope: EnvelopeTable): number {
  return meanOver(envelope, (r) => 13.8 * stageCurrent(referenceStage, r * r * pep));
}

/** Efficiency of ideal class B: (pi/4) E[r^2]/E[r]. */
function idealEfficiency(envelope: EnvelopeTable): number {
  return ((Math.PI / 4) * envelope.averageToPeak) / envelope.meanAmplitude;
}

describe('steady envelopes', () => {
  it('has the exact moments', () => {
    expect([carrierEnvelope().averageToPeak, carrierEnvelope().meanAmplitude]).toEqual([1, 1]);
    expectClose(twoToneEnvelope().meanAmplitude, 2 / Math.PI, 1e-12);
    expectClose(twoToneEnvelope().averageToPeak, 0.5, 1e-12);
    expectClose(amplitudeModulationEnvelope(1).averageToPeak, 0.375, 1e-12);
    expectClose(phaseShiftEnvelope(1).averageToPeak, 0.5, 1e-12);
    expectClose(phaseShiftEnvelope(0.5).averageToPeak, 0.75, 1e-12);
    expectClose(phaseShiftEnvelope(0.5).meanAmplitude, 0.8183, 1e-4);
    expectClose(phaseShiftEnvelope(0).averageToPeak, 1, 1e-12);
  });

  // Class B with two tones: 61.7 % in the literature (from memory), pi^2/16 exactly.
  it('gives ideal class B its two-tone efficiency', () => {
    expectClose(idealEfficiency(twoToneEnvelope()), Math.PI ** 2 / 16, 1e-10);
    expectClose(idealEfficiency(twoToneEnvelope()), 0.617, 3e-4);
  });

  // RF amplifier maker's note on PEP: 100 % modulation raises the mean power by 1.76 dB and PEP is 4 times the carrier;
  // two equal carriers have a PEP 3 dB above the mean.
  it('has the published power ratios', () => {
    const ratio = amplitudeModulationEnvelope(1).averageToPeak / amplitudeModulationEnvelope(0).averageToPeak;
    expectClose(10 * Math.log10(ratio), 1.76, 1e-3);
    expectClose(1 / amplitudeModulationEnvelope(0).averageToPeak, 4, 1e-12);
    expectClose(-10 * Math.log10(twoToneEnvelope().averageToPeak), 3.01, 1e-3);
  });

  it('agrees with an independent computation', () => {
    const [twoTone, carrier, half, full] = cases.groups.signals;
    expectClose(idealEfficiency(twoToneEnvelope()), twoTone!.expected.eta!, 1e-6);
    for (const one of [carrier!, half!]) {
      const envelope = amplitudeModulationEnvelope(one.inputs.m!, kink);
      expectClose(railPower(envelope), one.expected.Pdc!, one.relativeTolerance);
      expectClose(envelope.averageToPeak * pep, one.expected.Prf!, 1e-9);
    }
    expectClose(idealEfficiency(amplitudeModulationEnvelope(1)), full!.expected.eta!, 1e-6);
  });

  // Own computation for the reference amplifier, watts.
  it.each([
    ['carrier', carrierEnvelope(), 164.73, 110],
    ['two tones', twoToneEnvelope(kink), 105.78, 55],
    ['PSK31 with half reversals', phaseShiftEnvelope(0.5, kink), 135.26, 82.5],
    ['AM carrier', amplitudeModulationEnvelope(0), 83.12, 27.5],
    ['AM with a 100 % tone', amplitudeModulationEnvelope(1, kink), 84.66, 41.25],
  ])('gives the tabulated rail power of the reference amplifier: %s', (_, envelope, dc, rf) => {
    expect(Math.abs(railPower(envelope) - dc)).toBeLessThan(0.006);
    expectClose(envelope.averageToPeak * pep, rf, 1e-9);
  });

  it('keeps weights and amplitudes within bounds for any depth and panel ends', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.array(share, { maxLength: 3 }), (depth, breaks) => {
        for (const envelope of [
          amplitudeModulationEnvelope(depth, breaks),
          phaseShiftEnvelope(depth, breaks),
        ]) {
          expectClose(
            meanOver(envelope, () => 1),
            1,
            1e-13,
          );
          expect(envelope.amplitude.every((r) => r >= 0 && r <= 1)).toBe(true);
        }
        expectClose(
          amplitudeModulationEnvelope(depth, breaks).averageToPeak,
          0.25 * (1 + depth ** 2 / 2),
          1e-9,
        );
      }),
    );
  });
});
