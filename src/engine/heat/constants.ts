/** Standard acceleration of free fall, m/s² (conventional value, 3rd General Conference on Weights and Measures, 1901). */
export const gravity = 9.80665;

/** Stefan-Boltzmann constant, W/(m² K⁴) (CODATA 2018). */
export const stefanBoltzmann = 5.670374e-8;

/** Pressure of the standard atmosphere at sea level, Pa (ISO 2533). */
export const standardPressure = 101325;

/** σ(T⁴ - T_sur⁴), W/m²: net heat of a black face at T (K) to black surroundings. */
export function radiantHeat(temperature: number, surroundings: number): number {
  const a = temperature * temperature;
  const b = surroundings * surroundings;
  return stefanBoltzmann * (a + b) * (temperature + surroundings) * (temperature - surroundings);
}
