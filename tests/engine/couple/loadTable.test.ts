import { describe, expect, it } from 'vitest';
import { services } from '../../../shared/solution.ts';
import { tabulatedLoads } from '../../../src/engine/couple/loadTable.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { serviceLoad } from '../../../src/engine/couple/serviceLoad.ts';
import { solve, sweep } from '../../../src/engine/index.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

const warm = change(referenceDesign, { amplifier: { onResistanceCoefficient: 0.006 } });
const beacon = exampleOf('pocket-beacon-10w');
/** Straight from the battery, so that a hot final only sags its rail. */
const direct = change(warm, { converter: { kind: 'none' }, source: { openVoltage: 14.2 } });

describe('loads tabulated over the temperature of the junctions', () => {
  it.each([
    ['class AB from its devices', warm],
    ['class E', beacon],
  ] as const)('%s: agree with the direct ones, and their balance holds', (_name, design) => {
    const { loads } = resultOf(prepare(design).electrics);
    const table = tabulatedLoads(loads);
    for (const service of services) {
      for (const junction of [301.7, 347.3, 366.6, 389.9]) {
        const direct = serviceLoad(loads, service, junction);
        const tabulated = table(service, junction);
        expect(tabulated.ok).toBe(direct.ok);
        if (!direct.ok || !tabulated.ok) continue;
        const { over } = tabulated.value;
        expectClose(over.deviceHeat, direct.value.over.deviceHeat, 2e-6);
        expectClose(over.dcPower + over.drive, over.rfPower + over.deviceHeat, 1e-12);
        expectClose(over.rfPower, over.antenna + over.networkHeat, 1e-12);
      }
    }
  });

  it('end where the devices are too hot for the power, without a jump', () => {
    const { loads } = resultOf(prepare(change(direct, { amplifier: { onResistance: 0.1 } })).electrics);
    const table = tabulatedLoads(loads);
    let before = resultOf(table('keyDown', 300)).over.deviceHeat;
    for (let junction = 301; junction < 700; junction += 1) {
      const { deviceHeat } = resultOf(table('keyDown', junction)).over;
      expect(Math.abs(deviceHeat - before)).toBeLessThan(6);
      before = deviceHeat;
    }
  });
});

describe('a final whose heat rises with its temperature, solved with its heat path', () => {
  it('settles where its own heat puts the junction, hotter than without the rise', () => {
    const cold = solve(referenceDesign).values['keyDown.junctionPeak']!;
    const hot = solve(warm).values['keyDown.junctionPeak']!;
    expect(hot).toBeGreaterThan(cold + 1);
    expect(hot).toBeLessThan(cold + 60);
  });

  it('runs away by name when the sink is too small, and says what cures it', () => {
    const small = change(direct, {
      amplifier: { onResistance: 0.11, onResistanceCoefficient: 0.008 },
      device: { junctionToCase: 2.5 },
      sink: { width: 0.08, length: 0.06, finCount: 6, finHeight: 0.015 },
      service: { transmitShare: 1 },
    });
    const { keyDown } = solve(small).services;
    expect(!keyDown.ok && keyDown.reason.key).toBe('runaway');
    expect(!keyDown.ok && keyDown.reason.sentence).toMatch(/larger sink|less on-resistance/);
    const curve = sweep(small, 'keyDown', 21);
    expect(curve.ok && curve.value.share.at(-1)).toBeLessThan(1);
  });
});
