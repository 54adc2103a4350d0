import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  farFieldDensity,
  farFieldDistance,
  freeSpaceImpedance,
  lightSpeed,
  loopAxisDistance,
  loopAxisField,
  smallAntennaDistance,
  smallAntennaFields,
} from '../../../src/engine/hazard/exposureFields.ts';
import { exposureLimit, type LimitSet, type Tier } from '../../../src/engine/hazard/exposureLimits.ts';
import cases from '../cases/exposure.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const limitAt = (set: LimitSet, tier: Tier, megahertz: number) =>
  resultOf(exposureLimit(set, tier, megahertz * 1e6));
const dipole = 1.64;
const feet = 0.3048;

/**
 * r.m.s. fields of a thin half-wave dipole with sinusoidal current in free space, by its closed form. Written here
 * apart from the engine, to judge how far its far-field distance may be used close to a wire.
 */
function halfWaveFields(power: number, frequency: number, rho: number, z: number) {
  const k = (2 * Math.PI * frequency) / lightSpeed;
  const half = lightSpeed / frequency / 4;
  const current = Math.sqrt(power / 73.13);
  const upper = Math.hypot(rho, z - half);
  const lower = Math.hypot(rho, z + half);
  const re = (r: number) => Math.cos(k * r);
  const im = (r: number) => -Math.sin(k * r);
  const along = Math.hypot(re(upper) / upper + re(lower) / lower, im(upper) / upper + im(lower) / lower);
  const a = (z - half) / upper;
  const b = (z + half) / lower;
  const across = Math.hypot(a * re(upper) + b * re(lower), a * im(upper) + b * im(lower)) / rho;
  const around = Math.hypot(re(upper) + re(lower), im(upper) + im(lower)) / rho;
  const scale = (freeSpaceImpedance * current) / (4 * Math.PI);
  return { electric: scale * Math.hypot(along, across), magnetic: (current / (4 * Math.PI)) * around };
}

/** Distance from the nearest part of a half-wave dipole at which a limit is met, by marching its outline outwards. */
function halfWaveDistance(
  power: number,
  frequency: number,
  factor: number,
  limit: ReturnType<typeof limitAt>,
): number {
  const half = lightSpeed / frequency / 4;
  const over = (distance: number) => {
    let worst = 0;
    const look = (rho: number, z: number) => {
      const fields = halfWaveFields(power, frequency, rho, z);
      worst = Math.max(
        worst,
        (factor * fields.electric) / limit.electric,
        (factor * fields.magnetic) / limit.magnetic,
      );
    };
    for (let step = 0; step <= 60; step++) look(distance, (half * step) / 60);
    for (let step = 1; step <= 30; step++) {
      const angle = (step / 30) * (Math.PI / 2 - 1e-4);
      look(distance * Math.cos(angle), half + distance * Math.sin(angle));
    }
    return worst > 1;
  };
  let low = 0.01;
  let high = 100;
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    if (over(middle)) low = middle;
    else high = middle;
  }
  return high;
}

describe('far-field form (OET Bulletin 65)', () => {
  // Supplement B, page 14: 144 MHz, gain 24 dBi, ground factor 1.6, in feet.
  it.each([
    ['controlled', 500, 166],
    ['general', 500, 371],
    ['controlled', 1500, 287],
    ['general', 1500, 642],
  ] as const)('%s, %i W into 24 dBi at 144 MHz: %i ft', (tier, power, distance) => {
    const limit = { ...limitAt('fcc', tier, 144), electric: 1e9, magnetic: 1e9 };
    expectClose(farFieldDistance(power * 10 ** 2.4, 1.6, limit) / feet, distance, 2.5e-3);
  });

  // Equation 9: S = 33.4 ERP/R² in µW/cm², ERP 44.25 W at 19.6 m; 1 µW/cm² is 0.01 W/m².
  it('44.25 W ERP at 19.6 m give 3.85 µW/cm²', () => {
    expectClose(farFieldDensity(44.25 * dipole, 1.6, 19.6) * 100, 3.85, 1.5e-3);
  });

  it.each(cases.distances.map((row) => [row.band, row] as const))(
    '%s: 100 W to a dipole (independent implementation)',
    (_, row) => {
      const of = (set: LimitSet, tier: Tier) =>
        farFieldDistance(100 * dipole, 1.6, limitAt(set, tier, row.f_MHz));
      expect(Math.abs(of('fcc', 'general') - row.farfield_fcc_gp)).toBeLessThan(0.012);
      expect(Math.abs(of('icnirp2020', 'general') - row.farfield_icnirp2020_gp)).toBeLessThan(0.012);
      expect(Math.abs(of('eu1999', 'general') - row.farfield_icnirp1998_gp_eu1999)).toBeLessThan(0.012);
    },
  );

  it.each(cases.byBand.map((row) => [row.band, row] as const))(
    '%s at its top edge, three ground factors',
    (_, row) => {
      const general = limitAt('fcc', 'general', row.f_MHz);
      const controlled = limitAt('fcc', 'controlled', row.f_MHz);
      for (const [factor, key] of [
        [1, 'k1'],
        [1.6, 'k2.56'],
        [2, 'k4'],
      ] as const) {
        expectClose(farFieldDistance(100 * dipole, factor, general), row.R_gp_m[key], 5e-3);
        expectClose(farFieldDistance(100 * dipole, factor, controlled), row.R_occ_m[key], 5e-3);
      }
    },
  );

  it('half the average power needs 0.71 of the distance (Supplement B, table 32)', () => {
    const limit = limitAt('fcc', 'general', 14);
    const ratio = farFieldDistance(50, 1.6, limit) / farFieldDistance(100, 1.6, limit);
    expect(ratio.toFixed(2)).toBe('0.71');
  });
});

describe('half-wave dipole, near field by its closed form', () => {
  it.each(cases.halfWaveDipole.map((row) => [row.f, row.rho, row.z, row] as const))(
    '%f MHz, %f m beside, %f m along (independent implementation)',
    (megahertz, rho, z, row) => {
      const fields = halfWaveFields(row.P, megahertz * 1e6, rho, z);
      expectClose(fields.electric, row.E, 1e-4);
      expectClose(fields.magnetic, row.H, 1e-4);
    },
  );

  it('is the far field 100 m away', () => {
    const fields = halfWaveFields(100, 14.2e6, 100, 0);
    expectClose((fields.electric * 100) / Math.sqrt(30 * dipole * 100), 1, 5e-3);
  });

  it.each(cases.distances.map((row) => [row.band, row.f_MHz, row.dipole_fcc_gp] as const))(
    '%s: the far-field distance for the FCC general limit holds within 2 % all along the wire',
    (_, megahertz, published) => {
      const limit = limitAt('fcc', 'general', megahertz);
      const near = halfWaveDistance(100, megahertz * 1e6, 1.6, limit);
      expectClose(near, published, 0.03);
      expectClose(farFieldDistance(100 * dipole, 1.6, limit), near, 0.02);
    },
  );

  it.each(cases.distances.map((row) => [row.band, row.f_MHz] as const))(
    '%s: against ICNIRP and EU levels the far-field distance is never short by more than 1 %',
    (_, megahertz) => {
      for (const set of ['icnirp2020', 'eu1999'] as const) {
        const limit = limitAt(set, 'general', megahertz);
        const near = halfWaveDistance(100, megahertz * 1e6, 1.6, limit);
        expect(farFieldDistance(100 * dipole, 1.6, limit)).toBeGreaterThan(near * 0.99);
      }
    },
  );
});

describe('electrically small antennas', () => {
  it.each(cases.smallAntenna.map((row) => [row.kind, row.f, row.r, row] as const))(
    '%s, %f MHz, %f m (independent implementation)',
    (kind, megahertz, distance, row) => {
      const fields = smallAntennaFields(kind as 'dipole' | 'loop', row.P, megahertz * 1e6, distance);
      expectClose(fields.electric, row.E, 1e-5);
      expectClose(fields.magnetic, row.H, 1e-5);
    },
  );

  it('far away have gain 1.5, near by more than the far field', () => {
    const far = smallAntennaFields('dipole', 100, 7.1e6, 1000);
    expectClose(far.electric, Math.sqrt(1.5 * 100 * 30) / 1000, 5e-3);
    const reach = lightSpeed / 7.1e6 / (2 * Math.PI);
    expect(smallAntennaFields('dipole', 100, 7.1e6, reach).electric).toBeGreaterThan(
      Math.sqrt(1.5 * 100 * 30) / reach,
    );
  });

  it.each(cases.distances.map((row) => [row.band, row] as const))(
    '%s: distances (independent implementation)',
    (_, row) => {
      const of = (kind: 'dipole' | 'loop', set: LimitSet) =>
        smallAntennaDistance(kind, 100, row.f_MHz * 1e6, 1.6, limitAt(set, 'general', row.f_MHz));
      expect(Math.abs(of('dipole', 'fcc') - row.small_dipole_fcc_gp)).toBeLessThan(0.011);
      expect(Math.abs(of('loop', 'fcc') - row.small_loop_fcc_gp)).toBeLessThan(0.011);
      expect(Math.abs(of('dipole', 'icnirp2020') - row.small_dipole_icnirp2020_gp)).toBeLessThan(0.011);
      expect(Math.abs(of('loop', 'icnirp2020') - row.small_loop_icnirp2020_gp)).toBeLessThan(0.011);
      expect(Math.abs(of('dipole', 'eu1999') - row.small_dipole_icnirp1998_gp_eu1999)).toBeLessThan(0.011);
      expect(Math.abs(of('loop', 'eu1999') - row.small_loop_icnirp1998_gp_eu1999)).toBeLessThan(0.011);
    },
  );

  it('no direction is worse than the two looked at', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (distance, degrees) => {
          const { electric } = smallAntennaFields('dipole', 100, 7.1e6, distance);
          const theta = (degrees * Math.PI) / 180;
          const kr = (2 * Math.PI * distance * 7.1e6) / lightSpeed;
          const moment = (lightSpeed / 7.1e6) * Math.sqrt(100 / (((2 * Math.PI) / 3) * freeSpaceImpedance));
          const k = (2 * Math.PI * 7.1e6) / lightSpeed;
          const across =
            ((freeSpaceImpedance * moment * k) / (4 * Math.PI * distance)) *
            Math.hypot(1 - 1 / kr ** 2, 1 / kr) *
            Math.sin(theta);
          const along =
            ((freeSpaceImpedance * moment) / (2 * Math.PI * distance ** 2)) *
            Math.hypot(1, 1 / kr) *
            Math.cos(theta);
          return Math.hypot(across, along) <= electric * (1 + 1e-9);
        },
      ),
    );
  });
});

describe('a loop of known radius and resistance', () => {
  it('100 W, 0.1 Ω, radius 0.5 m: 2.83 A/m at 1 m', () => {
    expectClose(loopAxisField(100, 0.1, 0.5, 1), 2.83, 2e-3);
  });

  it('meets the FCC general level at 14.2 MHz at 2.9 m, 3.4 m with the ground factor', () => {
    const limit = limitAt('fcc', 'general', 14.2);
    expectClose(loopAxisDistance(100, 0.1, 0.5, 1, limit), 2.9, 0.01);
    expectClose(loopAxisDistance(100, 0.1, 0.5, 1.6, limit), 3.4, 0.01);
    expectClose(
      loopAxisField(100, 0.1, 0.5, loopAxisDistance(100, 0.1, 0.5, 1, limit)),
      limit.magnetic,
      1e-9,
    );
    expect(loopAxisDistance(0.001, 10, 0.5, 1, limit)).toBe(0);
  });
});
