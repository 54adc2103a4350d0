import { failure, type Outcome, success } from '../../../shared/outcome.ts';

/** k/q times 300 K, volts. */
const thermalVoltage = 0.0259;
/** Fall of the base-emitter voltage per kelvin at constant current, the usual figure, volts. */
const usualBaseDrift = 0.002;
/** Exponent of the fall of mobility with temperature, from memory. */
const mobilityExponent = 1.5;
const roomTemperature = 300;
const referenceTemperature = 298.15;

export interface BipolarBias {
  /** Standing current of one device, amperes. */
  readonly current: number;
  /** In series with the emitter, ohms. */
  readonly emitterResistance: number;
  /** Fall of the base-emitter voltage, volts per kelvin; 0.002 if left out. */
  readonly baseDrift?: number;
}

/**
 * Rise of the standing current of a bipolar device at a fixed base voltage, amperes per kelvin:
 * dI/dT = g_m d/(1 + g_m R_E), g_m = I/(25.9 mV). About 7.7 %/K without an emitter resistor.
 */
export function bipolarDrift({
  current,
  emitterResistance,
  baseDrift = usualBaseDrift,
}: BipolarBias): number {
  const transconductance = current / thermalVoltage;
  return (transconductance * baseDrift) / (1 + transconductance * emitterResistance);
}

export interface MosfetBias {
  /** Standing current of one device, amperes. */
  readonly current: number;
  /** At that current, siemens. */
  readonly transconductance: number;
  /** In series with the source, ohms. */
  readonly sourceResistance: number;
  /** Fall of the threshold, volts per kelvin: 0.002 to 0.004 for lateral RF parts, 0.003 to 0.006 for vertical ones (the latter from memory). */
  readonly thresholdDrift: number;
  /** Kelvin; 300 if left out. */
  readonly temperature?: number;
}

/**
 * Rise of the standing current of a MOSFET at a fixed gate voltage, amperes per kelvin:
 * dI/dT = (g_m a - m I/T)/(1 + g_m R_S). Negative above the zero-drift point; a linear amplifier idles below it.
 */
export function mosfetDrift(bias: MosfetBias): number {
  const { current, transconductance, sourceResistance, thresholdDrift, temperature = roomTemperature } = bias;
  const change = transconductance * thresholdDrift - (mobilityExponent * current) / temperature;
  return change / (1 + transconductance * sourceResistance);
}

/**
 * Gate voltage above threshold at which a square-law MOSFET does not drift: 2 a T/m, volts.
 *
 * @param thresholdDrift a, volts per kelvin
 * @param temperature kelvin
 */
export function zeroDriftOverdrive(thresholdDrift: number, temperature = roomTemperature): number {
  return (2 * thresholdDrift * temperature) / mobilityExponent;
}

/**
 * Loop gain of standing current and temperature, S = Vdd (dI/dT) Rth. Below 1 the stage is stable, the design limit is
 * 0.5. It says nothing of hot spots inside a die: switching MOSFETs used as linear amplifiers need a further margin.
 *
 * @param rail volts
 * @param drift of one device, amperes per kelvin
 * @param thermalResistance from the junction to the point whose temperature the bias follows, K/W; the whole path if it
 *   follows none
 * @see NASA/TM-2010-216684 (J. L. Shue and H. Leidecker, 2010) for hot spots
 */
export function biasLoopGain(rail: number, drift: number, thermalResistance: number): number {
  return rail * drift * thermalResistance;
}

/** Largest loop gain to design for; own choice. */
export const designLoopGain = 0.5;

/**
 * Factor by which the loop multiplies a rise of the standing current: 1/(1 - S).
 *
 * @param loopGain S from biasLoopGain
 * @returns a reason at S = 1 and above: the current runs away
 */
export function driftMultiplier(loopGain: number): Outcome<number> {
  if (!(loopGain < 1)) {
    return failure(
      'bias runs away',
      'The standing current heats the device faster than the heat leaves: it runs away. Let the bias follow the temperature of the device, or add emitter or source resistance.',
      { loopGain },
    );
  }
  return success(1 / (1 - loopGain));
}

/**
 * On-resistance at a temperature: R25 (1 + alpha (T - 25 degC)), ohms.
 *
 * @param onResistance at 25 degC, ohms
 * @param coefficient per kelvin; 0.004 to 0.008 for silicon, from general references
 * @param junctionTemperature kelvin
 */
export function onResistanceAt(
  onResistance: number,
  coefficient: number,
  junctionTemperature: number,
): number {
  return onResistance * Math.max(0, 1 + coefficient * (junctionTemperature - referenceTemperature));
}

export interface HeatBalance {
  /** Kelvin. */
  readonly junctionTemperature: number;
  /** Heat of one device there, watts. */
  readonly heat: number;
}

const balanceTolerance = 1e-9;
const maxSteps = 200;

/**
 * Temperature at which the heat of a device and the heat its path carries balance: T = Tcase + Rth P(T), the coolest
 * solution, approached from the case temperature.
 *
 * @param heatAt heat of one device at a junction temperature, watts; it must rise with temperature or stay
 * @param caseTemperature kelvin
 * @param thermalResistance junction to case, per device, K/W
 * @param ceiling temperature above which the search ends, kelvin
 * @returns a reason if a power is not reachable on the way or no balance lies below the ceiling (thermal runaway)
 */
export function heatBalance(
  heatAt: (junctionTemperature: number) => Outcome<number>,
  caseTemperature: number,
  thermalResistance: number,
  ceiling = 773.15,
): Outcome<HeatBalance> {
  // Steffensen's method on the fixed point; plain steps while it would leave the interval.
  let temperature = caseTemperature;
  for (let step = 0; step < maxSteps; step++) {
    const first = heatAt(temperature);
    if (!first.ok) return first;
    const once = caseTemperature + thermalResistance * first.value;
    if (once > ceiling) break;
    if (Math.abs(once - temperature) < balanceTolerance) {
      return success({ junctionTemperature: once, heat: first.value });
    }
    const second = heatAt(once);
    if (!second.ok) return second;
    const twice = caseTemperature + thermalResistance * second.value;
    const bend = twice - 2 * once + temperature;
    const leap = bend === 0 ? twice : temperature - (once - temperature) ** 2 / bend;
    // The heat curve is convex, so a leap falls short of the balance; one that goes back is not trusted.
    temperature = leap > twice && leap < ceiling ? leap : twice;
  }
  return failure(
    'no heat balance',
    'The heat of the device rises faster with its temperature than its path carries away: there is no steady temperature.',
    { caseTemperature, thermalResistance },
  );
}
