import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inrush, neededMeltingIntegral, pulseShare } from '../../../src/engine/supply/inrush.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

/** Small-step integration of the charging, apart from the closed forms. */
function charged(voltage: number, resistance: number, capacitance: number, inductance: number) {
  let current = 0;
  let across = 0;
  let integral = 0;
  let peakCurrent = 0;
  let peakVoltage = 0;
  const step = Math.sqrt(inductance * capacitance) / 4000;
  const end = 40 * resistance * capacitance + 200 * Math.sqrt(inductance * capacitance);
  for (
    let time = 0;
    time < Math.min(end, 60 * (inductance / resistance) + 30 * resistance * capacitance);
    time += step
  ) {
    // Symplectic: the current first, then the capacitor with the new current.
    current += (step * (voltage - resistance * current - across)) / inductance;
    across += (step * current) / capacitance;
    integral += step * current * current;
    peakCurrent = Math.max(peakCurrent, current);
    peakVoltage = Math.max(peakVoltage, across);
  }
  return { integral, peakCurrent, peakVoltage };
}

describe('charging a capacitor through R and L', () => {
  it.each(cases.inrush.map((row) => [row.C, row.L, row] as const))(
    '%f F, %f H (independent implementation)',
    (_, inductance, row) => {
      const bare = inrush(row.V, row.R, row.C);
      expectClose(bare.peakCurrent, row.RC.Ipk, 1e-12);
      expectClose(bare.timeConstant, row.RC.tau, 1e-12);
      expectClose(bare.meltingIntegral, row.RC.I2t, 1e-12);
      const found = inrush(row.V, row.R, row.C, inductance);
      expectClose(found.peakCurrent, row.RLC.Ipk, 2e-4);
      expectClose(found.meltingIntegral, row.RLC.I2t, 1e-6);
      expectClose(found.peakVoltage, row.RLC.Vpk, 1e-4);
    },
  );

  it.each([
    [13.8, 0.02, 1000e-6, 2.5e-6],
    [13.8, 0.06, 2200e-6, 1.5e-6],
    [12, 0.1, 1000e-6, 2.5e-6],
  ])('%f V, %f Ω, %f F, %f H by stepping in time', (voltage, resistance, capacitance, inductance) => {
    const found = inrush(voltage, resistance, capacitance, inductance);
    const stepped = charged(voltage, resistance, capacitance, inductance);
    expectClose(found.peakCurrent, stepped.peakCurrent, 1e-3);
    expectClose(found.meltingIntegral, stepped.integral, 2e-3);
    expectClose(found.peakVoltage, Math.max(voltage, stepped.peakVoltage), 1e-3);
  });

  it('inductance lowers the peak and never the melting integral; the capacitor stays under twice the source', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 1, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
        fc.double({ min: 1e-8, max: 1e-4, noNaN: true }),
        (resistance, capacitance, inductance) => {
          const bare = inrush(12, resistance, capacitance);
          const found = inrush(12, resistance, capacitance, inductance);
          return (
            found.peakCurrent <= bare.peakCurrent * (1 + 1e-9) &&
            found.peakCurrent > 0 &&
            found.meltingIntegral === bare.meltingIntegral &&
            found.peakVoltage >= 12 &&
            found.peakVoltage < 24
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('passes smoothly through critical damping', () => {
    const critical = 2 * Math.sqrt(1e-6 / 1e-3);
    const at = (factor: number) => inrush(12, critical * factor, 1e-3, 1e-6).peakCurrent;
    expectClose(at(1), (2 * 12) / (critical * Math.E), 1e-6);
    expectClose(at(0.9999), at(1), 1e-3);
    expectClose(at(1.0001), at(1), 1e-3);
  });
});

describe('pulses a fuse stands (fuse selection guide, chart 2)', () => {
  it.each([
    [100, 0.48],
    [1000, 0.38],
    [10_000, 0.29],
    [100_000, 0.22],
    [10, 0.48],
    [1e7, 0.22],
  ])('%i pulses: %f of the melting integral', (pulses, share) => {
    expectClose(pulseShare(pulses), share, 1e-12);
  });

  it('needs more melting integral the more often it comes', () => {
    expect(neededMeltingIntegral(3.5, 5000)).toBeGreaterThan(neededMeltingIntegral(3.5, 500));
    expectClose(neededMeltingIntegral(3.5, 1000), 3.5 / 0.38, 1e-12);
  });
});
