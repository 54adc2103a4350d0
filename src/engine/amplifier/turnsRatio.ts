import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type { LinearStage } from './linearStage.ts';

/** Resistance of the antenna side, ohms. */
const antennaResistance = 50;
const mostPrimaryTurns = 3;
const mostSecondaryTurns = 12;
/** A ratio this little below the wanted one still counts as reaching it; about 0.2 dB of power. */
const ratioSlack = 0.02;

/**
 * Drain-to-drain load of a push-pull pair through an output transformer: Rdd = 50/N^2, ohms; each device sees half of
 * it. With one device N is secondary over primary and the device sees all of it.
 *
 * @param turnsRatio N, secondary over the whole primary, above 0
 */
export function loadOfTurns(turnsRatio: number): number {
  return antennaResistance / (turnsRatio * turnsRatio);
}

/**
 * Greatest RF power at the drains of a push-pull pair through a transformer: 2 (Vdd - Vk)^2/Rdd, watts.
 *
 * @param rail volts
 * @param knee part of the rail that the swing cannot use, volts
 */
export function greatestPushPullPower(turnsRatio: number, rail: number, knee: number): number {
  const swing = Math.max(0, rail - knee);
  return (2 * swing * swing) / loadOfTurns(turnsRatio);
}

/**
 * Turns ratio at which a push-pull pair makes a power with its full swing: N = sqrt(50/Rdd), Rdd = 2 (Vdd - Vk)^2/P.
 *
 * @returns a reason if nothing of the rail is left for the swing
 */
export function neededTurnsRatio(power: number, rail: number, knee: number): Outcome<number> {
  const swing = rail - knee;
  if (!(swing > 0 && power > 0)) {
    return failure('no swing left', 'The knee voltage takes all of the rail: no transformer gives output.', {
      rail,
      knee,
    });
  }
  return success(Math.sqrt((antennaResistance * power) / (2 * swing * swing)));
}

export interface Turns {
  /** Whole primary, both halves together. */
  readonly primary: number;
  readonly secondary: number;
  /** Secondary over primary. */
  readonly ratio: number;
}

export interface TurnsChoice {
  /** Smallest ratio with whole turns that makes the power; null if none in the list does. */
  readonly reaching: Turns | null;
  /** Next smaller ratio, which does not make the power; null if there is none. */
  readonly falling: Turns | null;
}

/**
 * Whole-turn ratios around a wanted one, primaries of 1 to 3 turns, secondaries of 1 to 12. A larger ratio makes the
 * power with part of the swing, at a lower efficiency; a smaller one does not make it at all.
 *
 * @param wanted N from neededTurnsRatio
 */
export function buildableTurns(wanted: number): TurnsChoice {
  const floor = wanted * (1 - ratioSlack);
  let reaching: Turns | null = null;
  let falling: Turns | null = null;
  for (let primary = 1; primary <= mostPrimaryTurns; primary++) {
    for (let secondary = 1; secondary <= mostSecondaryTurns; secondary++) {
      const turns = { primary, secondary, ratio: secondary / primary };
      if (turns.ratio >= floor && turns.ratio < (reaching?.ratio ?? Number.POSITIVE_INFINITY))
        reaching = turns;
      if (turns.ratio < floor && turns.ratio > (falling?.ratio ?? 0)) falling = turns;
    }
  }
  return { reaching, falling };
}

/**
 * The same devices, bias and knee with another load: the swing at the rated rail stays, the power changes with it.
 *
 * @param loadPerDevice ohms, above 0
 */
export function reloadedStage(stage: LinearStage, loadPerDevice: number): LinearStage {
  const ratedPower = (stage.ratedPower * stage.loadPerDevice) / loadPerDevice;
  return { ...stage, loadPerDevice, ratedPower };
}

/**
 * Whether a push-pull pair makes a power through a transformer.
 *
 * @returns swing V1 = sqrt(P Rdd/2) over the available one; a reason if it is above 1
 */
export function swingUsed(power: number, turnsRatio: number, rail: number, knee: number): Outcome<number> {
  const greatest = greatestPushPullPower(turnsRatio, rail, knee);
  if (power > greatest * (1 + 1e-9) || greatest === 0) {
    return failure(
      'ratio cannot make the power',
      `This turns ratio cannot make ${round(power)} W: from ${round(rail)} V it ends at ${round(greatest)} W.`,
      { power, greatest },
    );
  }
  return success(Math.sqrt(power / greatest));
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
