import { type AirProperties, airProperties } from './air.ts';
import type { PreparedFinArray } from './finArray.ts';
import { finEfficiency } from './finEfficiency.ts';

/** Range of the modified Reynolds number of the correlation. */
export const forcedRange = { lowest: 0.26, highest: 175 } as const;

/** Reynolds number on the hydraulic diameter above which the flow is no longer laminar. */
export const laminarReynolds = 2300;

/** Standard deviation of ln(film coefficient) for a real sink with a real fan (own choice). */
export const forcedUncertainty = 0.15;

/**
 * Mean Nusselt number on the gap of parallel plates with air blown through, developing flow:
 * Nu = {(Re* Pr/2)^-3 + [0.664 Re*^(1/2) Pr^(1/3) (1 + 3.65/Re*^(1/2))^(1/2)]^-3}^(-1/3), Re* = (V s/ν)(s/L).
 *
 * The film coefficient is on wall minus inlet temperature: the first term is the heat balance of the air, so nothing
 * more is to be taken off for air that warms up on its way.
 *
 * @param reynolds Re*, 0.26 to 175
 *
 * Source: Teertstra, Yovanovich and Culham, J. Electronics Manufacturing 10 (2000), as quoted from Culham and Muzychka,
 * IEEE Trans. Components and Packaging Technologies 24 (2001) 159.
 */
export function teertstra(reynolds: number, prandtl: number): number {
  if (reynolds <= 0) return 0;
  const root = Math.sqrt(reynolds);
  const developed = (reynolds * prandtl) / 2;
  const developing = 0.664 * root * Math.cbrt(prandtl) * Math.sqrt(1 + 3.65 / root);
  return 1 / Math.cbrt(1 / developed ** 3 + 1 / developing ** 3);
}

export interface ForcedHeat {
  /** W */
  readonly heat: number;
  /** Plate over inlet air, K/W. */
  readonly resistance: number;
  /** On wall minus inlet temperature, W/(m² K). */
  readonly filmCoefficient: number;
  readonly finEfficiency: number;
  /** Re* of the correlation. */
  readonly reynolds: number;
}

/**
 * Heat taken off by air blown along the fins, W. Only the channels count; outer faces and radiation come on top in truth
 * (cautious).
 *
 * @param velocity mean, in the channels, m/s
 * @param plate mean plate temperature, K
 * @param inlet temperature of the air that enters, K
 * @param factor on the film coefficient, from a measurement; 1 before
 */
export function forcedHeat(
  prepared: PreparedFinArray,
  velocity: number,
  plate: number,
  inlet: number,
  pressure: number,
  factor = 1,
): ForcedHeat {
  const { geometry, gap } = prepared;
  const air = airProperties((plate + inlet) / 2, pressure);
  const reynolds = (velocity * gap * gap) / (air.kinematicViscosity * geometry.length);
  const h = (teertstra(reynolds, air.prandtl) * air.conductivity * factor) / gap;
  const eta = finEfficiency(h, geometry.conductivity, prepared.efficiencyThickness, prepared.correctedHeight);
  const conductance = h * (prepared.channelBaseArea + prepared.channelFinArea * eta);
  return {
    heat: conductance * (plate - inlet),
    resistance: conductance > 0 ? 1 / conductance : Number.MAX_VALUE,
    filmCoefficient: h,
    finEfficiency: eta,
    reynolds,
  };
}

export interface PressureDrop {
  /** Pa */
  readonly drop: number;
  /** On the hydraulic diameter. */
  readonly reynolds: number;
  /** Apparent friction factor (Fanning). */
  readonly friction: number;
}

/** Friction constant f Re of developed laminar flow in a rectangular duct by its aspect (Shah and London, from memory). */
export function developedFriction(aspect: number): number {
  const a = aspect;
  return 24 * (1 + a * (-1.3553 + a * (1.9467 + a * (-1.7012 + a * (0.9564 - 0.2537 * a)))));
}

/**
 * Pressure drop of a sink whose channels are closed by a duct, Pa: Δp = (4 f L/D + Kc + Ke) ρ V²/2, with
 * f Re = {(3.44/L*^(1/2))² + (f Re)²}^(1/2), L* = L/(D Re), D = 2 s H/(s + H), Kc = 0.42 (1 - σ²), Ke = (1 - σ)².
 *
 * Laminar; above a Reynolds number of 2300 an extrapolation. Ke is the Borda-Carnot value; Culham and Muzychka (2001)
 * use (1 - σ²)², which gives a little more.
 *
 * Source: entrance and developed friction joined after Muzychka and Yovanovich; constants from memory.
 */
export function pressureDrop(prepared: PreparedFinArray, velocity: number, air: AirProperties): PressureDrop {
  const { geometry, gap } = prepared;
  if (velocity <= 0) return { drop: 0, reynolds: 0, friction: 0 };
  const { finHeight, length, width, finCount } = geometry;
  const diameter = (2 * gap * finHeight) / (gap + finHeight);
  const reynolds = (velocity * diameter) / air.kinematicViscosity;
  const entrance = 3.44 / Math.sqrt(length / (diameter * reynolds));
  const developed = developedFriction(Math.min(gap, finHeight) / Math.max(gap, finHeight));
  const friction = Math.hypot(entrance, developed) / reynolds;
  const open = ((finCount - 1) * gap) / width;
  const losses = 0.42 * (1 - open * open) + (1 - open) ** 2;
  const drop = (((4 * friction * length) / diameter + losses) * air.density * velocity * velocity) / 2;
  return { drop, reynolds, friction };
}

/** Free section of the channels on all finned sides, m². */
export function channelSection(prepared: PreparedFinArray): number {
  return prepared.channelCount * prepared.gap * prepared.geometry.finHeight;
}
