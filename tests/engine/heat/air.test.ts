import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import airTable from '../../../reference-data/airTable.json' with { type: 'json' };
import { airProperties, pressureAtAltitude } from '../../../src/engine/heat/air.ts';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { expectClose } from '../closeTo.ts';

describe('air properties', () => {
  // Incropera, Fundamentals of Heat and Mass Transfer, table A.4; density and kinematic viscosity at 1 bar.
  it.each(airTable.rows)('agree with Incropera at $temperature K', (row) => {
    const air = airProperties(row.temperature, airTable.pressure);
    expectClose(air.density, row.density, 0.002, 'density');
    expectClose(air.specificHeat, row.specificHeat, 0.001, 'specific heat');
    expectClose(air.viscosity, row.viscosity * 1e-7, 0.01, 'viscosity');
    expectClose(air.kinematicViscosity, row.kinematicViscosity * 1e-6, 0.01, 'kinematic viscosity');
    expectClose(air.conductivity, row.conductivity * 1e-3, 0.006, 'conductivity');
    expectClose(air.prandtl, row.prandtl, 0.006, 'Prandtl number');
  });

  // Cengel and Ghajar, table A-15, at 1 atm: the two textbooks differ by 2.5 % in conductivity.
  it.each(airTable.second.rows)('agree with Cengel at $temperature K', (row) => {
    const air = airProperties(row.temperature, airTable.second.pressure);
    expectClose(air.conductivity, row.conductivity, 0.03, 'conductivity');
    expectClose(air.kinematicViscosity, row.kinematicViscosity, 0.012, 'kinematic viscosity');
    expectClose(air.prandtl, row.prandtl, 0.035, 'Prandtl number');
  });

  // Own computation, an independent implementation of the same formulas.
  it('have the checked digits at 55 °C and 1 atm', () => {
    const air = airProperties(328.15, standardPressure);
    expectClose(air.viscosity, 1.97627e-5, 1e-5);
    expectClose(air.conductivity, 0.0284093, 1e-5);
    expectClose(air.specificHeat, 1007.85, 1e-5);
    expectClose(air.density, 1.07567, 1e-5);
    expectClose(air.kinematicViscosity, 1.83725e-5, 1e-5);
    expectClose(air.diffusivity, 2.62052e-5, 1e-5);
    expectClose(air.prandtl, 0.701102, 1e-5);
  });

  it('depend on pressure only where they should', () => {
    fc.assert(
      fc.property(fc.double({ min: 220, max: 700, noNaN: true }), (temperature) => {
        const low = airProperties(temperature, 50000);
        const high = airProperties(temperature, 100000);
        expectClose(high.density, 2 * low.density, 1e-12);
        expectClose(high.diffusivity, low.diffusivity / 2, 1e-12);
        expectClose(high.rayleighFactor, 4 * low.rayleighFactor, 1e-12);
        expect(high.conductivity).toBe(low.conductivity);
        expect(high.viscosity).toBe(low.viscosity);
      }),
    );
  });
});

describe('pressure at altitude', () => {
  // U.S. Standard Atmosphere 1976 tables, geometric altitude (from memory): 89876, 79501, 70121 Pa.
  it.each([
    [0, 101325],
    [1000, 89876],
    [2000, 79501],
    [3000, 70121],
  ])('agrees with the standard atmosphere at %i m', (altitude, pressure) => {
    expectClose(pressureAtAltitude(altitude), pressure, 3e-4);
  });
});
