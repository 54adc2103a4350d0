import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import awg from '../../../reference-data/awg.json';
import class5 from '../../../reference-data/iec60228Class5.json';
import type { WireSize } from '../../../shared/design/supplyChoices.ts';
import {
  conductorBySize,
  copperFactor,
  copperResistivity,
  gaugeArea,
  gaugeDiameter,
  gaugeResistance,
  loopResistance,
  wireSizesByArea,
} from '../../../src/engine/supply/conductor.ts';
import { expectClose } from '../closeTo.ts';

const metresPerThousandFeet = 304.8;
const metric = wireSizesByArea.filter((size) => !size.startsWith('AWG'));
const gauge = wireSizesByArea.filter((size) => size.startsWith('AWG'));

describe('American wire gauge (ASTM B258)', () => {
  it('defines 36 gauge as 0.005 in and 4/0 as 0.46 in', () => {
    expectClose(gaugeDiameter(36), 0.005 * 0.0254, 1e-12);
    expectClose(gaugeDiameter(-3), 0.46 * 0.0254, 1e-9);
  });

  it.each(Object.entries(awg.ohmPerThousandFeet))(
    'AWG %s has the published %f Ω per 1000 ft at 20 °C',
    (number, ohm) => {
      expectClose(gaugeResistance(Number(number)) * metresPerThousandFeet, ohm, 4e-4);
    },
  );

  it.each(Object.entries(awg.areas))('AWG %s has the area %f mm² of a cable-maker table', (number, area) => {
    expectClose(gaugeArea(Number(number)) * 1e6, area, 1e-3);
  });
});

describe('IEC 60228 class 5', () => {
  it.each(metric)('%s has the greatest resistance of table 3, plain and tinned', (size) => {
    const row = class5.rows.find((entry) => `${entry.area} mm2` === size);
    expect(row).toBeDefined();
    expectClose(conductorBySize(size).resistancePerLength * 1000, row?.plain ?? 0, 1e-12);
    expectClose(conductorBySize(size, 'tinned').resistancePerLength * 1000, row?.tinned ?? 0, 1e-12);
  });

  it('lies 11 to 16 % above ideal copper of the nominal area', () => {
    for (const size of metric) {
      const wire = conductorBySize(size);
      const ratio = (wire.resistancePerLength * wire.area) / copperResistivity;
      expect(ratio).toBeGreaterThan(1.105);
      expect(ratio).toBeLessThan(1.165);
    }
  });
});

describe('copper', () => {
  it('is 1/58 Ω mm²/m at 20 °C (IEC 60028)', () => {
    expectClose(copperResistivity, 1e-6 / 58, 1e-12);
  });

  // IEC 60364-5-54 writes the same law as (234.5 + T)/254.5.
  it.each([-20, 0, 20, 60, 105])('at %f °C follows (234.5 + T)/254.5', (celsius) => {
    expectClose(copperFactor(celsius + 273.15), (234.5 + celsius) / 254.5, 3e-4);
  });

  it('never has a negative or zero resistance', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1500, noNaN: true }), (kelvin) => copperFactor(kelvin) > 0),
    );
  });
});

describe('sizes of the wire table', () => {
  it('stand thinnest first and are all there', () => {
    const areas = wireSizesByArea.map((size) => conductorBySize(size).area);
    expect(areas).toEqual([...areas].sort((first, second) => first - second));
    expect(wireSizesByArea).toHaveLength(21);
  });

  it.each([
    ['gauge', gauge],
    ['metric', metric],
  ] as const)('%s: resistance falls and outside grows with area', (_, sizes) => {
    for (let index = 1; index < sizes.length; index++) {
      const thin = conductorBySize(sizes[index - 1] as WireSize);
      const thick = conductorBySize(sizes[index] as WireSize);
      expect(thick.resistancePerLength).toBeLessThan(thin.resistancePerLength);
      expect(thick.outsideDiameter).toBeGreaterThan(thin.outsideDiameter);
      expect(thick.strandedDiameter).toBeLessThan(thick.outsideDiameter);
    }
  });

  it('tin costs a little resistance', () => {
    for (const size of wireSizesByArea) {
      const ratio =
        conductorBySize(size, 'tinned').resistancePerLength / conductorBySize(size).resistancePerLength;
      expect(ratio).toBeGreaterThan(1.01);
      expect(ratio).toBeLessThan(1.04);
    }
  });

  it('the loop counts both wires and the temperature of the copper', () => {
    const wire = conductorBySize('2.5 mm2');
    expectClose(loopResistance(wire, 3, 293.15), 6 * 7.98e-3, 1e-12);
    expectClose(loopResistance(wire, 3, 313.15), 6 * 7.98e-3 * 1.0786, 1e-12);
  });
});
