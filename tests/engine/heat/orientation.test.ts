import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { finArrayHeat, prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import { gravityShare, jonesSmith, mountedFinHeat } from '../../../src/engine/heat/orientation.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between, finGeometries } from './geometries.ts';
import { geometryOf } from './referenceSinks.ts';

const plain = { pressure: standardPressure, filmFactor: 1, channelFactor: 1 };

describe('level fins on a level plate', () => {
  // Jones and Smith (1970), from memory: for wide gaps close to the plate's 0.54 Ra^(1/4).
  it('tends to a plate for wide gaps', () => {
    expectClose(jonesSmith(1e8) / 1e8 ** 0.25, 0.54, 0.03);
  });

  // Own computation: 8/25/100 mm and 10/25/127 mm at 50 K have 3.05 and 3.92 W/(m² K); Harahap and McManus (1967) 2.70
  // and 4.74, both from memory.
  it.each(cases.sinks)('agrees with the reference sink $name at $dT K over $T_amb K', (row) => {
    const prepared = prepareFinArray(geometryOf(row.geometry));
    const heat = (kind: 'finsUp' | 'finsDown' | 'crosswise') =>
      mountedFinHeat(prepared, { kind }, row.T_amb + row.dT, row.T_amb, row.T_amb, plain);
    expectClose(heat('finsUp').total, row.orient_up.Q, 1e-9);
    expectClose(heat('finsUp').convection, row.orient_up.Qc, 1e-9);
    expectClose(heat('finsDown').total, row.orient_down.Q, 1e-9);
    expectClose(heat('crosswise').convection, row.orient_cross.Qc, 1e-9);
    expectClose(heat('crosswise').radiation, row.orient_cross.Qr, 7e-3);
  });

  // Cengel and Ghajar, table 3-6: five black anodised sinks 76 mm long have 1.07 to 1.33 times the resistance lying.
  it.each(cases.sinks.filter((row) => row.name[0] !== 'D' && row.dT === 50))(
    'is worse lying than upright, not far from the catalogue ratios: $name',
    (row) => {
      const prepared = prepareFinArray(geometryOf(row.geometry));
      const plate = row.T_amb + row.dT;
      const up = mountedFinHeat(prepared, { kind: 'finsUp' }, plate, row.T_amb, row.T_amb, plain).total;
      const upright = finArrayHeat(prepared, plate, row.T_amb, row.T_amb, plain).total;
      expect(upright / up).toBeGreaterThan(1.05);
      expect(upright / up).toBeLessThan(1.6);
    },
  );

  it('cools more the hotter, less hanging than lying, nothing at air temperature', () => {
    const kinds = fc.constantFrom('finsUp' as const, 'finsDown' as const, 'crosswise' as const);
    fc.assert(
      fc.property(finGeometries, kinds, between(0.05, 300), (geometry, kind, rise) => {
        const prepared = prepareFinArray(geometry);
        const heat = (k: typeof kind, dT: number) =>
          mountedFinHeat(prepared, { kind: k }, 300 + dT, 300, 300, plain).total;
        expect(heat(kind, rise * 1.05)).toBeGreaterThan(heat(kind, rise));
        expect(heat(kind, -rise / 10)).toBeLessThan(0);
        expect(heat(kind, 0)).toBe(0);
        const noBack = prepareFinArray({ ...geometry, backExposed: false });
        const of = (k: typeof kind) => mountedFinHeat(noBack, { kind: k }, 300 + rise, 300, 300, plain).total;
        expect(of('finsDown')).toBeLessThan(of('finsUp'));
      }),
    );
  });
});

describe('tilted sink', () => {
  it('has the part of gravity along it, not below that at 60°', () => {
    expect(gravityShare({ kind: 'upright' })).toBe(1);
    expectClose(gravityShare({ kind: 'tilted', tilt: Math.PI / 4 }), Math.SQRT1_2, 1e-12);
    expectClose(gravityShare({ kind: 'tilted', tilt: 1.5 }), 0.5, 1e-12);
  });

  it('cools less the more it leans', () => {
    const prepared = prepareFinArray(geometryOf(cases.sinks[0]!.geometry));
    const heat = (share: number) =>
      finArrayHeat(prepared, 348, 298, 298, { ...plain, gravityShare: share }).convection;
    expect(heat(0.7)).toBeLessThan(heat(1));
    // Near single plates convection goes with g^(1/4), in tight channels with g.
    expect(heat(0.5) / heat(1)).toBeGreaterThan(0.5);
    expect(heat(0.5) / heat(1)).toBeLessThan(0.5 ** 0.25);
  });
});
