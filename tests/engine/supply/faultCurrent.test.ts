import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FaultInput, faultCurrent } from '../../../src/engine/supply/faultCurrent.ts';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const battery = (openVoltage: number, internalResistance: number, pathResistance: number): FaultInput => ({
  kind: 'leadAcid',
  openVoltage,
  internalResistance,
  pathResistance,
  continuousCurrent: null,
  peakCurrent: null,
});

describe('prospective fault current', () => {
  it.each(cases.fault.map((row) => [row.bat, row.Voc, row.Ri, row.Rpath, row.Isc] as const))(
    '%s: %f V, %f + %f Ω gives %f A (independent implementation)',
    (_, voltage, internal, path, current) => {
      expectClose(resultOf(faultCurrent(battery(voltage, internal, path))).current, current, 1e-12);
    },
  );

  it.each([
    [12.8, 0.005, 0, 2560],
    [12.8, 0.005, 0.01, 853.3],
    [13.2, 0.015, 0.01, 528],
    [12.8, 0.004, 0, 3200],
  ])('%f V behind %f + %f Ω: %f A', (voltage, internal, path, current) => {
    expectClose(resultOf(faultCurrent(battery(voltage, internal, path))).current, current, 1e-4);
  });

  it('of a mains supply is held near its limit, that of a battery is not held by its protection', () => {
    const supply = { ...battery(13.8, 0.01, 0.01), continuousCurrent: 20 };
    expect(resultOf(faultCurrent({ ...supply, kind: 'mainsSupply' }))).toMatchObject({
      current: 26,
      limitedBy: 'supply',
    });
    expect(resultOf(faultCurrent({ ...supply, kind: 'lithiumIronPhosphate' })).limitedBy).toBe('resistance');
  });

  it('is finite for a source entered without resistance, and says what was assumed', () => {
    const found = faultCurrent(battery(13.8, 0, 0));
    expect(found.ok && found.notes.map((one) => one.key)).toEqual(['faultResistanceAssumed']);
    expect(resultOf(found).current).toBeCloseTo(13800, 6);
  });

  it('never rises with resistance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (internal, path) => {
          const short = resultOf(faultCurrent(battery(12.8, internal, path))).current;
          return resultOf(faultCurrent(battery(12.8, internal, path + 0.01))).current <= short;
        },
      ),
    );
  });
});
