import { gravity, standardPressure } from './constants.ts';

/** Dry air at one temperature and pressure, SI. */
export interface AirProperties {
  /** W/(m K) */
  readonly conductivity: number;
  /** Dynamic viscosity, Pa s. */
  readonly viscosity: number;
  /** J/(kg K), at constant pressure. */
  readonly specificHeat: number;
  /** kg/m³ */
  readonly density: number;
  /** m²/s */
  readonly kinematicViscosity: number;
  /** Thermal diffusivity, m²/s. */
  readonly diffusivity: number;
  readonly prandtl: number;
  /** g β/(ν α), 1/(K m³): times rise and length cubed it is the Rayleigh number. */
  readonly rayleighFactor: number;
}

/** Specific gas constant of dry air, J/(kg K) (U.S. Standard Atmosphere, 1976: 8314.32/28.9644, rounded as in ISO 2533). */
const gasConstant = 287.055;

// Sutherland's law, U.S. Standard Atmosphere 1976, eq. 51.
const sutherlandFactor = 1.458e-6;
const sutherlandTemperature = 110.4;

// Conductivity, U.S. Standard Atmosphere 1976, eq. 53.
const conductivityFactor = 2.64638e-3;
const conductivityTemperature = 245.4;
/** 10^(-12/T) written as exp(-12 ln 10/T). */
const conductivityExponent = -12 * Math.LN10;

// Specific heat: own least-squares fit to the printed table of Incropera (A.4), T in 1000 K.
const specificHeatConstant = 1035.86;
const specificHeatLinear = -226;
const specificHeatSquare = 428.57;

/**
 * Properties of dry air at the film temperature.
 *
 * μ = 1.458e-6 T^1.5/(T + 110.4); k = 2.64638e-3 T^1.5/(T + 245.4·10^(-12/T)); cp = 1035.86 - 226 t + 428.57 t²
 * with t = T/1000; ρ = p/(287.055 T); β = 1/T.
 *
 * @param filmTemperature K; fitted for 250 to 450 K, within 1 % of Incropera's table there. Smooth and positive outside.
 * @param pressure Pa
 * @param gravityShare part of gravity along a tilted surface (cosine of the tilt), in the Rayleigh factor alone
 *
 * Misprint to beware of: Incropera's table A.4 gives density and kinematic viscosity at 1 bar, not at 1 atm.
 *
 * Sources: U.S. Standard Atmosphere 1976, eq. 51 and 53 (viscosity, conductivity); specific heat fitted to Incropera,
 * Fundamentals of Heat and Mass Transfer, table A.4 (own computation).
 */
export function airProperties(filmTemperature: number, pressure: number, gravityShare = 1): AirProperties {
  const power = filmTemperature * Math.sqrt(filmTemperature);
  const viscosity = (sutherlandFactor * power) / (filmTemperature + sutherlandTemperature);
  const conductivity =
    (conductivityFactor * power) /
    (filmTemperature + conductivityTemperature * Math.exp(conductivityExponent / filmTemperature));
  const thousands = filmTemperature / 1000;
  const specificHeat =
    specificHeatConstant + (specificHeatLinear + specificHeatSquare * thousands) * thousands;
  const density = pressure / (gasConstant * filmTemperature);
  const kinematicViscosity = viscosity / density;
  const diffusivity = conductivity / (density * specificHeat);
  return {
    conductivity,
    viscosity,
    specificHeat,
    density,
    kinematicViscosity,
    diffusivity,
    prandtl: kinematicViscosity / diffusivity,
    rayleighFactor: (gravityShare * gravity) / (filmTemperature * kinematicViscosity * diffusivity),
  };
}

/**
 * Air pressure at an altitude in the standard atmosphere, Pa: p = 101325 (1 - 2.25577e-5 z)^5.25588.
 *
 * @param altitude m above sea level, -1000 to 11000.
 *
 * Source: ISO 2533, Standard Atmosphere (1975), geopotential form, from memory; within 0.02 % of the 1976 tables.
 */
export function pressureAtAltitude(altitude: number): number {
  return standardPressure * (1 - 2.25577e-5 * altitude) ** 5.25588;
}
