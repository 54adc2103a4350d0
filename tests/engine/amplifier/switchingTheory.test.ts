import { describe, expect, it } from 'vitest';
import {
  type CurrentHarmonics,
  classDHalfBridge,
  classDPushPullPower,
  classE,
  classEEfficiency,
  classFEfficiency,
  classFMaximallyFlat,
  type VoltageHarmonics,
} from '../../../src/engine/amplifier/switchingTheory.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

describe('class E', () => {
  // Printed values of the optimum class E stage: 3.56, 0.5768, 0.1836 and "3.6 times the rail"; A. Mediano and
  // N. O. Sokal, IEEE Transactions on Power Electronics 28 (2013), N. O. and A. D. Sokal (1975).
  it.each([
    ['power', classE.power, 0.5768, 1e-4],
    ['shunt susceptance', classE.shuntSusceptance, 0.1836, 1e-4],
    ['peak voltage', classE.peakVoltage, 3.56, 1e-3],
    // F. H. Raab and N. O. Sokal (1978), from memory.
    ['on-resistance loss', classE.conductionFactor, 1.365, 2e-4],
  ])('has the published %s', (_, value, printed, tolerance) => {
    expectClose(value, printed, tolerance);
  });

  // Own computation by integrating the circuit.
  it.each([
    [classE.power, 0.5768],
    [classE.peakVoltage, 3.562],
    [classE.peakCurrent, 2.8621],
    [classE.shuntSusceptance, 0.1836],
    [classE.dcResistance, 1.7337],
    [classE.switchRmsOverMean, 1.53846],
    [classE.conductionFactor, 1.3652],
  ])('agrees with an independent computation (%f)', (value, expected) => {
    expectClose(value, expected, 2e-5);
  });

  it('follows from its own waveforms', () => {
    // Switch current over the mean while on; it starts at zero and, on average, is 1. The capacitor takes it while off.
    const a = 0.5 * Math.sqrt(Math.PI ** 2 + 4);
    const psi = -Math.atan(2 / Math.PI);
    const wave = (x: number) => 1 + a * Math.sin(x + psi);
    expect(Math.abs(wave(0))).toBeLessThan(1e-12);
    expectClose(integrate(wave, 0, Math.PI, 40) / (2 * Math.PI), 1, 1e-12);
    expect(Math.abs(integrate(wave, Math.PI, 2 * Math.PI, 40))).toBeLessThan(1e-12);
    expectClose(
      Math.sqrt(integrate((x) => wave(x) ** 2, 0, Math.PI, 40) / (2 * Math.PI)),
      classE.switchRmsOverMean,
      1e-12,
    );
    // The mean of the capacitor voltage is the rail: w C1 Vdd/Idc.
    const charge = (x: number) => integrate(wave, Math.PI, x, 24);
    const meanVoltage = Math.abs(integrate(charge, Math.PI, 2 * Math.PI, 40)) / (2 * Math.PI);
    expectClose(meanVoltage, classE.shuntSusceptance * classE.dcResistance, 1e-12);
  });

  // Published design: 10 W, load 45.2 ohms; it belongs to a rail of 28 V.
  it('has the published load of a 10 W stage', () => {
    expectClose((classE.power * 28 * 28) / 10, 45.2, 1e-3);
  });

  it('loses efficiency with on-resistance', () => {
    expectClose(classEEfficiency(0, 5), 1, 1e-15);
    expectClose(classEEfficiency(0.1, 5), 1 / (1 + 1.3652 * 0.02), 1e-5);
  });
});

describe('class D', () => {
  const [one] = cases.groups.switching.filter((c) => c.id === 'classD_halfbridge');

  it('agrees with an independent computation', () => {
    const { Vdd, R, Ron, Coss, f } = one!.inputs;
    const powers = classDHalfBridge({
      rail: Vdd!,
      load: R!,
      onResistance: Ron!,
      outputCapacitance: Coss!,
      frequency: f!,
    });
    expectClose(powers.rfPower, one!.expected.Pout!, 1e-9);
    expectClose(powers.conductionLoss, one!.expected.Pcond!, 1e-9);
    expectClose(powers.capacitanceLoss, one!.expected.Pcap!, 1e-9);
    expectClose(powers.efficiency, one!.expected.eta as number, 1e-9);
    expect(powers.overlapLoss).toBe(0);
  });

  it('takes the fundamental of a square wave in push-pull', () => {
    // 2 Vdd swing per drain: a square wave of amplitude Vdd about Vdd.
    const fundamental = (2 / Math.PI) * integrate((x) => 12 * Math.sin(x), 0, Math.PI, 30);
    expectClose(classDPushPullPower(12, 3), fundamental ** 2 / (2 * 3), 1e-12);
  });

  it('loses a sixth of rail, current and time at each overlap', () => {
    const bridge = { rail: 12, load: 5, onResistance: 0, outputCapacitance: 0, frequency: 7e6 };
    const current = (2 / Math.PI) * (12 / 5);
    expectClose(
      classDHalfBridge({ ...bridge, overlapTime: 6e-9 }).overlapLoss,
      12 * current * 1e-9 * 7e6,
      1e-12,
    );
  });
});

describe('class F', () => {
  const table = cases.groups.switching.find((c) => c.id === 'classF_table')!.expected.eta as Record<
    string,
    number
  >;
  const voltage: [string, VoltageHarmonics][] = [
    ['1', 'fundamental'],
    ['1,3', 'to third'],
    ['1,3,5', 'to fifth'],
    ['inf', 'all'],
  ];
  const current: [string, CurrentHarmonics][] = [
    ['1', 'fundamental'],
    ['1,2', 'to second'],
    ['1,2,4', 'to fourth'],
    ['inf', 'all'],
  ];
  const pairs = voltage.flatMap(([v, vHarmonics]) =>
    current.map(([i, iHarmonics]) => ({ key: `V:${v} I:${i}`, vHarmonics, iHarmonics })),
  );

  it.each(pairs)(
    'has the efficiency found by linear programming: $key',
    ({ key, vHarmonics, iHarmonics }) => {
      expectClose(classFEfficiency(vHarmonics, iHarmonics), table[key]!, 1e-6);
    },
  );

  // F. H. Raab, IEEE Transactions on Microwave Theory and Techniques 49 (2001): 88.4 % with a maximally flat third harmonic.
  it('has the published efficiency of the maximally flat third harmonic', () => {
    expectClose(classFMaximallyFlat, 0.884, 6e-4);
  });
});
