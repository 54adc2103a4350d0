/** How figures are written in cautions and labels: two figures at most; temperatures are rounded up. */

const zeroCelsius = 273.15;

/** A temperature in whole degrees, rounded up. */
export function degrees(temperature: number): string {
  return `${Math.ceil(temperature - zeroCelsius - 1e-9)} °C`;
}

/** A temperature in whole degrees as the verdicts write it. */
export function nearestDegree(temperature: number): string {
  return `${Math.round(temperature - zeroCelsius)} °C`;
}

export function amperes(current: number): string {
  return `${two(current)} A`;
}

/** A supply voltage, to three figures. */
export function supplyVolts(voltage: number): string {
  return `${Number(voltage.toPrecision(3))} V`;
}

export function volts(voltage: number): string {
  return voltage >= 1000 ? `${two(voltage / 1000)} kV` : `${two(voltage)} V`;
}

export function watts(power: number): string {
  return power >= 1000 ? `${two(power / 1000)} kW` : `${two(power)} W`;
}

export function ohms(resistance: number): string {
  return resistance >= 1000 ? `${two(resistance / 1000)} kΩ` : `${two(resistance)} Ω`;
}

export function joules(energy: number): string {
  return energy >= 1000 ? `${two(energy / 1000)} kJ` : `${two(energy)} J`;
}

export function kilograms(mass: number): string {
  return `${two(mass)} kg`;
}

function two(value: number): number {
  return Number(value.toPrecision(2));
}

/** A time as people say it: rounded down where it runs out, up where one must wait. */
export function span(seconds: number, round: (value: number) => number): string {
  if (seconds <= 1) return 'a second or less';
  if (seconds < 90) return `${round(seconds)} s`;
  if (seconds < 5400) return `${round(seconds / 60)} min`;
  return `${round(seconds / 3600)} h`;
}

/** A time by its order of magnitude, for what is no better known. */
export function magnitude(seconds: number): string {
  if (seconds < 0.1) return 'less than a tenth of a second';
  if (seconds < 1) return 'tenths of a second';
  if (seconds < 10) return 'seconds';
  return seconds < 60 ? 'tens of seconds' : 'minutes';
}
