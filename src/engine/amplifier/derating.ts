/** Boltzmann's constant over the elementary charge, eV/K; exact since the SI of 2019. */
const boltzmann = 8.617333262e-5;
/** From memory; usual for silicon. Hot-carrier wear of lateral RF parts lies at 0.7 to 1.0, electromigration at 0.7 to 0.9. */
const usualActivationEnergy = 0.7;
/** The same over Boltzmann's constant, kelvin. */
export const activationTemperature = usualActivationEnergy / boltzmann;
const handbookKelvin = 273;
const handbookReference = 298;

export interface DeviceRating {
  /** Greatest dissipation of the data sheet at a 25 degC case, watts; Infinity if it states none. */
  readonly maximumPower: number;
  /** Kelvin. */
  readonly maximumJunction: number;
  /** K/W. */
  readonly junctionToCase: number;
}

/**
 * Steady dissipation a data sheet allows at a case temperature: min(Pmax, (Tjmax - Tc)/Rjc), watts; 0 above Tjmax.
 *
 * @param caseTemperature kelvin
 */
export function allowedDissipation(rating: DeviceRating, caseTemperature: number): number {
  const derated = (rating.maximumJunction - caseTemperature) / rating.junctionToCase;
  return Math.max(0, Math.min(rating.maximumPower, derated));
}

/**
 * How many times faster a wear process with an activation energy runs at one junction temperature than at another:
 * exp((Ea/k)(1/T1 - 1/T2)). A factor between two temperatures only, never a life: extrapolation beyond the tested
 * range misleads (F. Jensen, 1985).
 *
 * @param from T1, kelvin
 * @param to T2, kelvin
 * @param activationEnergy electron volts
 * @see JEDEC dictionary, acceleration factor (temperature), which refers to JEP122E
 */
export function arrheniusFactor(from: number, to: number, activationEnergy = usualActivationEnergy): number {
  return Math.exp((activationEnergy / boltzmann) * (1 / from - 1 / to));
}

/** Constants B of the temperature factor. */
const handbookConstant = { bipolar: 2114, fieldEffect: 1925 } as const;

/**
 * Temperature factor of MIL-HDBK-217F relative to 25 degC: exp(-B (1/(Tj + 273) - 1/298)), Tj in degC. Far gentler than
 * Arrhenius' law with 0.7 eV; a relative rate only. High-frequency power bipolar devices have a steeper law of their own,
 * left out.
 *
 * @param junctionTemperature kelvin
 * @see MIL-HDBK-217F (1991), section 6.3 for low-frequency bipolar; the section for field-effect devices from memory;
 *   constants from secondary copies
 */
export function handbookTemperatureFactor(
  junctionTemperature: number,
  device: keyof typeof handbookConstant,
): number {
  // The handbook counts kelvin from 273, not 273.15.
  const temperature = junctionTemperature - 273.15 + handbookKelvin;
  return Math.exp(-handbookConstant[device] * (1 / temperature - 1 / handbookReference));
}
