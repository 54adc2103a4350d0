/**
 * Loss between the plane of the drains and the antenna connector: transformer, filter, relay, meter.
 * The loss in decibels is that of the matched network.
 */

/**
 * Power at the drains for a power at the antenna connector: P_D = P_A 10^(L/10), watts.
 *
 * @param powerAtAntenna watts
 * @param outputLoss decibels, not negative
 */
export function drainPower(powerAtAntenna: number, outputLoss: number): number {
  return powerAtAntenna * 10 ** (outputLoss / 10);
}

/** Power at the antenna connector for a power at the drains: P_A = P_D 10^(-L/10), watts. */
export function antennaPower(powerAtDrains: number, outputLoss: number): number {
  return powerAtDrains * 10 ** (-outputLoss / 10);
}

/** Share of the power at the drains that heats the network: 1 - 10^(-L/10). */
export function lossShare(outputLoss: number): number {
  return -Math.expm1((-outputLoss * Math.LN10) / 10);
}

/** Heat of the network for a power at the antenna connector into a matched load: P_D - P_A, watts. */
export function networkHeat(powerAtAntenna: number, outputLoss: number): number {
  return powerAtAntenna * Math.expm1((outputLoss * Math.LN10) / 10);
}
