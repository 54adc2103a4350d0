import type { Design } from '../../../shared/design/schema.ts';
import { efficiencyBand } from '../amplifier/efficiencyBand.ts';
import { speechHeatDoubt } from '../signal/envelopeSpread.ts';
import { speechRatio } from './serviceSignal.ts';

/** How far the load of a design is not known; every figure is a 90 % half-width. */
export interface LoadDoubts {
  /** Of the drain efficiency at full output, in points as a share of 1. */
  readonly efficiency: number;
  /** Of the mean heat of speech, as a share of it; 0 for two tones, which are known. */
  readonly speechHeat: number;
}

/** The same final at the edges of its efficiency: less makes more heat. */
export interface EfficiencyEdges {
  readonly lessEfficient: Design;
  readonly moreEfficient: Design;
}

/** Own choice: an amateur's power meter reads to 5 % of the power, the ammeter to better. */
const meterDoubt = 0.05;
/** Own choice: half-width of an efficiency computed from the data of switching devices, as the model says of itself. */
const switchingEstimateDoubt = 0.05;
/** An efficiency is asked for between these; the edges of a band stay inside. */
const leastEfficiency = 0.05;
const greatestEfficiency = 0.99;
/** A series resistance doubled or left out is the edge of what is known from data sheets; own choice. */
const deviceSpread = 0.5;

type Edge = -1 | 1;

function efficiencyHalfWidth({ amplifier }: Design): number {
  const band = efficiencyBand(amplifier.class).halfWidth;
  if (amplifier.calibration === 'readings') return meterDoubt * amplifier.efficiency;
  if (amplifier.calibration === 'devices') {
    return ['D', 'E', 'F'].includes(amplifier.class) ? switchingEstimateDoubt : band;
  }
  return amplifier.efficiencyMeasured ? meterDoubt * amplifier.efficiency : band;
}

/** What makes the efficiency of the final better known. An entered one counts as a guess until it is ticked as measured. */
export function efficiencyAdvice({ amplifier }: Design): string {
  const measure = 'Measure supply current and output at full power.';
  const guessed = amplifier.calibration === 'efficiency' && !amplifier.efficiencyMeasured;
  return guessed ? `${measure} Tick “This efficiency is measured” if it is.` : measure;
}

/** The design with its efficiency moved to an edge: by the efficiency, the currents read, or the devices' resistance. */
function atEdge(design: Design, halfWidth: number, edge: Edge): Design {
  const { amplifier } = design;
  const changedTo = (changes: Partial<Design['amplifier']>): Design => ({
    ...design,
    amplifier: { ...amplifier, ...changes },
  });
  if (amplifier.calibration === 'readings') {
    const factor = 1 - edge * meterDoubt;
    return changedTo({
      readings: amplifier.readings.map(({ power, current }) => ({ power, current: current * factor })),
    });
  }
  if (amplifier.calibration === 'devices') {
    const factor = 1 - edge * deviceSpread;
    return changedTo({
      onResistance: amplifier.onResistance * factor,
      saturationVoltage: amplifier.saturationVoltage * factor,
      otherLoss: Math.min(0.5, amplifier.otherLoss * factor),
    });
  }
  const moved = amplifier.efficiency + edge * halfWidth;
  return changedTo({ efficiency: Math.min(greatestEfficiency, Math.max(leastEfficiency, moved)) });
}

/**
 * Doubts of the load for the band of the results: efficiency by class (a guess) or by the meters (measured), and the
 * spread between laws of speech with the same average.
 * The spread of speech is a factor on the mean heat of its over; it is
 * an own choice that does not cover every law: log-uniform speech of 50 % average lies 25 % above.
 */
export function loadDoubts(design: Design): LoadDoubts {
  const efficiency = efficiencyHalfWidth(design);
  const spoken = design.service.speechKind !== 'twoTone';
  return {
    efficiency,
    speechHeat: spoken ? speechHeatDoubt(speechRatio(design.service)) : 0,
  };
}

/**
 * Designs to be solved in place of the design itself. An edge can be refused (more efficient than its class allows),
 * which bounds the band there.
 */
export function efficiencyEdges(design: Design): EfficiencyEdges {
  const halfWidth = efficiencyHalfWidth(design);
  return { lessEfficient: atEdge(design, halfWidth, -1), moreEfficient: atEdge(design, halfWidth, 1) };
}
