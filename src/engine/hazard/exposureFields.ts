import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import type { ExposureLimit } from './exposureLimits.ts';

/** Impedance of free space, Ω. */
export const freeSpaceImpedance = 376.73;
/** m/s */
export const lightSpeed = 299792458;

/** No distance below this is spoken of, m: there contact and burns decide. Own choice. */
const searchFrom = 0.01;
const searchTo = 1e4;

/** r.m.s. fields at one place. */
export interface Fields {
  /** V/m */
  readonly electric: number;
  /** A/m */
  readonly magnetic: number;
}

/**
 * Distance at which the far field of an antenna meets every level of a limit, m.
 *
 * R = g √(30 EIRP)/E_lim, g √(EIRP/(4 π 376.73))/H_lim, g √(EIRP/(4 π S_lim)): the largest of those that the limit has.
 * eirp: average, W; fieldFactor g: 1 free space, 1.6 usual ground, 2 full reflection.
 * Valid in the far field; for a half-wave or longer wire also inside, measured from the nearest part of the wire.
 * Source: FCC OET Bulletin 65 (1997), equations 3, 6 and 7.
 */
export function farFieldDistance(eirp: number, fieldFactor: number, limit: ExposureLimit): number {
  const sphere = Math.sqrt(eirp / (4 * Math.PI));
  const byElectric = Math.sqrt(30 * eirp) / limit.electric;
  const byMagnetic = sphere / Math.sqrt(freeSpaceImpedance) / limit.magnetic;
  const byDensity = limit.density === null ? 0 : sphere / Math.sqrt(limit.density);
  return fieldFactor * Math.max(byElectric, byMagnetic, byDensity);
}

/** Far-field power density, W/m²: g² EIRP/(4 π R²). OET Bulletin 65, equations 3 and 6. */
export function farFieldDensity(eirp: number, fieldFactor: number, distance: number): number {
  return (fieldFactor * fieldFactor * eirp) / (4 * Math.PI * distance * distance);
}

/**
 * Largest r.m.s. fields around an electrically small dipole or loop at a distance, over all directions, free space.
 *
 * Exact field of the infinitesimal dipole; E² = Eθ² sin²θ + Er² cos²θ is largest at one of its ends, so E is the larger
 * of the two amplitudes. For the loop the roles change: H = E/η, E = η H.
 * power: radiated, W; frequency: Hz; distance: m, larger than the antenna itself. Source: Balanis, Antenna Theory.
 */
export function smallAntennaFields(
  kind: 'dipole' | 'loop',
  power: number,
  frequency: number,
  distance: number,
): Fields {
  const wavelength = lightSpeed / frequency;
  const k = (2 * Math.PI) / wavelength;
  const kr = k * distance;
  const moment = wavelength * Math.sqrt(power / (((2 * Math.PI) / 3) * freeSpaceImpedance));
  const inverse = 1 / kr;
  const near = Math.hypot(1, inverse);
  const transverse = Math.hypot(1 - inverse * inverse, inverse);
  const magnetic = ((moment * k) / (4 * Math.PI * distance)) * near;
  const across = ((freeSpaceImpedance * moment * k) / (4 * Math.PI * distance)) * transverse;
  const along = ((freeSpaceImpedance * moment) / (2 * Math.PI * distance * distance)) * near;
  const electric = Math.max(across, along);
  if (kind === 'dipole') return { electric, magnetic };
  return { electric: freeSpaceImpedance * magnetic, magnetic: electric / freeSpaceImpedance };
}

/**
 * Distance at which the fields of a small antenna meet the electric and magnetic levels, m.
 *
 * power: average radiated, W; with no efficiency known it is all the power at the antenna.
 * Valid where the distance is larger than the antenna. Source: `smallAntennaFields`.
 */
export function smallAntennaDistance(
  kind: 'dipole' | 'loop',
  power: number,
  frequency: number,
  fieldFactor: number,
  limit: ExposureLimit,
): number {
  return distanceWhere((distance) => {
    const fields = smallAntennaFields(kind, power, frequency, distance);
    return fieldFactor * Math.max(fields.electric / limit.electric, fields.magnetic / limit.magnetic);
  });
}

/**
 * Radiation resistance of a small single-turn loop, Ω: 320 π⁴ (A/λ²)², A = π a².
 *
 * radius a: m; frequency: Hz. Valid for a circumference below a quarter of the wavelength. Source: Balanis, Antenna
 * Theory, small circular loop (from memory).
 */
export function loopRadiationResistance(radius: number, frequency: number): number {
  const wavelength = lightSpeed / frequency;
  const turnArea = (Math.PI * radius * radius) / (wavelength * wavelength);
  return 320 * Math.PI ** 4 * turnArea * turnArea;
}

/** Radiated over accepted power of a loop: R_rad/(R_rad + R_loss). lossResistance: Ω, >= 0. */
export function loopEfficiency(radius: number, lossResistance: number, frequency: number): number {
  const radiation = loopRadiationResistance(radius, frequency);
  return radiation / (radiation + lossResistance);
}

/**
 * Magnetic field on the axis of a transmitting loop, A/m r.m.s.: I a²/(2 (a² + r²)^1.5), I = √(P/R).
 *
 * Without retardation: beyond about λ/2π the field is stronger, which `smallAntennaFields` covers.
 *
 * power: average into the loop, W; resistance: total of the loop, Ω; radius a and distance r: m.
 */
export function loopAxisField(power: number, resistance: number, radius: number, distance: number): number {
  const current = Math.sqrt(power / resistance);
  const square = radius * radius;
  return (current * square) / (2 * (square + distance * distance) ** 1.5);
}

/** Distance on the axis of a known loop at which the magnetic level is met, m; 0 when it is nowhere reached. */
export function loopAxisDistance(
  power: number,
  resistance: number,
  radius: number,
  fieldFactor: number,
  limit: ExposureLimit,
): number {
  const current = Math.sqrt(power / resistance);
  const reach =
    ((fieldFactor * current * radius * radius) / (2 * limit.magnetic)) ** (2 / 3) - radius * radius;
  return reach > 0 ? Math.sqrt(reach) : 0;
}

/** Distance at which a falling ratio of field to level passes 1; searched over the logarithm of distance. */
function distanceWhere(ratio: (distance: number) => number): number {
  if (ratio(searchFrom) <= 1) return searchFrom;
  if (ratio(searchTo) >= 1) return searchTo;
  const found = bracketedRoot(
    (logarithm) => Math.log(ratio(Math.exp(logarithm))),
    Math.log(searchFrom),
    Math.log(searchTo),
    { tolerance: 1e-9 },
  );
  return found.ok ? Math.exp(found.value.root) : searchTo;
}
