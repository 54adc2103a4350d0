import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  converterModule,
  exhaustionPower,
  moduleCurrent,
} from '../../../src/engine/supply/converterModule.ts';
import {
  directOperatingPoint,
  directVoltage,
  moduleOperatingPoint,
  moduleVoltage,
  noVoltage,
  type OperatingPoint,
  type SupplyPath,
} from '../../../src/engine/supply/sourceOperatingPoint.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const module = converterModule({
  outputVoltage: 60,
  points: [
    { inputVoltage: 12, inputCurrent: 3, efficiency: 0.95 },
    { inputVoltage: 12, inputCurrent: 12, efficiency: 0.91 },
  ],
  noLoadPower: 0.6,
  minimumInput: 8,
  inputCurrentLimit: 15,
  outputCurrentLimit: null,
  powerLimit: null,
  powerShare: 1,
});
const path: SupplyPath = {
  openVoltage: 12.8,
  internalResistance: 0.02,
  pathResistance: 0.023,
  seriesDrop: 0.1,
};

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPath = fc.record({
  openVoltage: double(6, 55),
  internalResistance: double(0, 0.4),
  pathResistance: double(0, 0.4),
  seriesDrop: double(0, 1),
});

/** Upper root by scanning down from the open voltage and halving: slow, and independent of the method under test. */
function scannedVoltage(drive: number, resistance: number, current: (voltage: number) => number): number {
  const excess = (voltage: number) => {
    const drawn = current(voltage);
    return drawn < 0 ? -1 : drive - voltage - resistance * drawn;
  };
  const steps = 20000;
  for (let step = 0; step < steps; step++) {
    let low = drive * (1 - (step + 1) / steps);
    let high = drive * (1 - step / steps);
    if (!(low > 0) || excess(low) < 0) continue;
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      if (excess(middle) >= 0) low = middle;
      else high = middle;
    }
    return low;
  }
  return noVoltage;
}

function energyGap(point: OperatingPoint, supply: SupplyPath, railPower: number, boards: number): number {
  const out = point.sourceHeat + point.pathHeat + point.diodeHeat + point.converterHeat + railPower + boards;
  return Math.abs(supply.openVoltage * point.current - out) / (supply.openVoltage * point.current);
}

describe('a source feeding a module and other boards', () => {
  it.each([
    [0, 0],
    [60, 5],
    [120, 5],
    [250, 0],
    [250, 40],
  ])('%f W on the rail and %f W of boards: the root that scanning finds', (rail, boards) => {
    const drive = path.openVoltage - path.seriesDrop;
    const current = (voltage: number) => {
      const main = moduleCurrent(module.loss, voltage, rail);
      return main < 0 ? -1 : main + boards / voltage;
    };
    const found = moduleVoltage(drive, 0.043, module.loss, rail, boards);
    expectClose(found, scannedVoltage(drive, 0.043, current), 1e-9);
  });

  it('closes energy wherever there is a point', () => {
    let points = 0;
    fc.assert(
      fc.property(anyPath, double(0, 400), double(0, 100), (supply, rail, boards) => {
        const found = moduleOperatingPoint(supply, module, rail, boards);
        if (!found.ok) return true;
        points += 1;
        const { value } = found;
        const resistance = supply.internalResistance + supply.pathResistance;
        const kirchhoff =
          supply.openVoltage - supply.seriesDrop - value.current * resistance - value.loadVoltage;
        return (
          energyGap(value, supply, rail, boards) < 1e-9 && Math.abs(kirchhoff) < 1e-9 * supply.openVoltage
        );
      }),
      { numRuns: 400 },
    );
    expect(points).toBeGreaterThan(50);
  });

  it('finds a point exactly where scanning finds one', () => {
    fc.assert(
      fc.property(double(0.01, 0.6), double(0, 400), double(0, 80), (resistance, rail, boards) => {
        const current = (voltage: number) => {
          const main = moduleCurrent(module.loss, voltage, rail);
          return main < 0 ? -1 : main + boards / voltage;
        };
        const scanned = scannedVoltage(12, resistance, current);
        const found = moduleVoltage(12, resistance, module.loss, rail, boards);
        if (scanned === noVoltage) {
          // A pair of roots closer than the scan's step may be missed by the scan, not by the method.
          return found === noVoltage || Math.abs(12 - found - resistance * current(found)) < 1e-9;
        }
        return Math.abs(found - scanned) < 1e-6;
      }),
      { numRuns: 60 },
    );
  });

  it('sags more with more power and with more resistance', () => {
    fc.assert(
      fc.property(double(5, 120), double(0.005, 0.08), (rail, resistance) => {
        const base = moduleVoltage(12.8, resistance, module.loss, rail, 5);
        return (
          moduleVoltage(12.8, resistance, module.loss, rail + 2, 5) < base &&
          moduleVoltage(12.8, resistance + 0.002, module.loss, rail, 5) < base
        );
      }),
    );
  });

  it('without resistance holds the open voltage', () => {
    expect(moduleVoltage(12.8, 0, module.loss, 150, 10)).toBe(12.8);
  });

  it.each([
    ['collapse', { ...path, internalResistance: 0.3 }, 200],
    ['moduleExhausted', path, exhaustionPower(module.loss, 12.7) * 1.01],
    ['inputTooLow', { ...path, openVoltage: 8.2 }, 60],
    ['railBelowInput', { ...path, openVoltage: 60.1 }, 60],
    ['noDrive', { ...path, openVoltage: 3, seriesDrop: 3 }, 60],
  ] as const)('names the failure: %s', (key, supply, rail) => {
    const found = moduleOperatingPoint(supply, module, rail, 5);
    expect(found.ok ? '' : found.reason.key).toBe(key);
  });

  it('names a passed rating without hiding the point', () => {
    const found = moduleOperatingPoint(path, module, 250, 5);
    expect(found.ok && found.notes.map((one) => one.key)).toEqual(['converterInputCurrent']);
  });

  it('is never NaN or infinite within the ranges of the design', () => {
    fc.assert(
      fc.property(
        double(3, 60),
        double(0, 3),
        double(0, 5),
        double(0, 5000),
        double(0, 500),
        (drive, drop, resistance, rail, boards) =>
          Number.isFinite(moduleVoltage(drive - drop, resistance, module.loss, rail, boards)) &&
          Number.isFinite(directVoltage(drive - drop, resistance, rail / 20, boards)),
      ),
      { numRuns: 500 },
    );
  });
});

describe('a source feeding the amplifier directly', () => {
  it('without other boards is the open voltage less the drop', () => {
    const found = resultOf(directOperatingPoint(path, 20, 0));
    expectClose(found.loadVoltage, 12.8 - 0.1 - 20 * 0.043, 1e-12);
    expect(found.current).toBe(20);
  });

  it('closes energy with boards', () => {
    fc.assert(
      fc.property(anyPath, double(0, 20), double(0, 20), (supply, current, boards) => {
        const found = directOperatingPoint(supply, current, boards);
        if (!found.ok) return found.reason.key === 'collapse' || found.reason.key === 'noDrive';
        if (found.value.current < 1e-9) return true;
        return energyGap(found.value, supply, found.value.loadVoltage * current, boards) < 1e-9;
      }),
    );
  });

  it('takes the upper of the two voltages', () => {
    const voltage = directVoltage(12, 0.1, 10, 50);
    expectClose(voltage, (11 + Math.sqrt(121 - 20)) / 2, 1e-12);
  });

  it('collapses by name', () => {
    const found = directOperatingPoint(path, 400, 0);
    expect(found.ok ? '' : found.reason.key).toBe('collapse');
  });
});
