import { describe, expect, it } from 'vitest';
import type { WireSize } from '../../../shared/design/supplyChoices.ts';
import { conductorBySize, copperFactor } from '../../../src/engine/supply/conductor.ts';
import { heatLostPerLength, wireTemperature } from '../../../src/engine/supply/wireTemperature.ts';
import { wireHeatCapacity, wireTimeConstant } from '../../../src/engine/supply/wireTimeConstant.ts';
import boost from '../cases/boost.json';
import cases from '../cases/supply.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

describe('time constant of a wire', () => {
  it.each(cases.wire_temp.map((row) => [row.mm2, row.I, row.tau_s] as const))(
    '%f mm² at %f A: %f s (independent implementation)',
    (mm2, current, seconds) => {
      const wire = conductorBySize(`${mm2} mm2` as WireSize);
      const { surface } = resultOf(wireTemperature(wire, current, { ambient: 298.15 }));
      expectClose(wireTimeConstant(wire, current, surface, 298.15) ?? 0, seconds, 0.01);
    },
  );

  it('2.5 mm² at 20 A: the warm-up stepped in time reaches 63 % after about 108 s', () => {
    const wire = conductorBySize('2.5 mm2');
    const { I: current, t63_ode: known, C_J_per_mK: capacity } = boost.wire_tau_check;
    expectClose(wireHeatCapacity(wire), capacity, 1e-6);
    const steady = resultOf(wireTemperature(wire, current, { ambient: 298.15 })).conductor;
    let temperature = 298.15;
    let time = 0;
    const resistance = Math.log(wire.outsideDiameter / wire.strandedDiameter) / (2 * Math.PI * 0.2);
    while (temperature < 298.15 + (1 - Math.exp(-1)) * (steady - 298.15) && time < 1000) {
      let lost = 0;
      for (let round = 0; round < 8; round++) {
        lost = heatLostPerLength(wire.outsideDiameter, temperature - lost * resistance, 298.15);
      }
      const made = current * current * wire.resistancePerLength * copperFactor(temperature);
      temperature += (0.1 * (made - lost)) / wireHeatCapacity(wire);
      time += 0.1;
    }
    expectClose(time, known, 0.01);
    expectClose(wireTimeConstant(wire, current, steady, 298.15) ?? 0, time, 0.15);
  });

  it('is long against speech and short against a contact', () => {
    const wire = conductorBySize('2.5 mm2');
    const tau = wireTimeConstant(wire, 20, 315, 298.15) ?? 0;
    expect(tau).toBeGreaterThan(10);
    expect(tau).toBeLessThan(600);
  });
});
