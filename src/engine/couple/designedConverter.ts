import type { Design } from '../../../shared/design/schema.ts';
import { type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { type PhasedParts, type PhasedPoint, phasedPoint } from '../supply/boostPhases.ts';
import { type BoostSuggestion, suggestParts } from '../supply/boostSuggestion.ts';
import { collapse, greatestPower, noDrive } from '../supply/constantPower.ts';
import { type ConverterModule, railBelowInput } from '../supply/converterModule.ts';
import { coreMaterial } from '../supply/coreLoss.ts';
import { fitLossLaw } from '../supply/lossLaw.ts';
import type { SupplyPath } from '../supply/sourceOperatingPoint.ts';
import { leastCapacitance } from './supplyFilter.ts';
import { highestVoltage } from './supplyVoltage.ts';

/** Switching frequency when none is given, Hz. Own choice, a usual one. */
export const usualFrequency = 150e3;

/** A converter designed from parts, fitted for the inner loops. */
export interface DesignedConverter {
  readonly parts: PhasedParts;
  /** Peak limit of the controller and saturation of the inductor, one phase, A. */
  readonly currentLimit: number;
  readonly saturationCurrent: number;
  readonly suggestion: BoostSuggestion;
  readonly module: ConverterModule;
  /** Greatest miss of the fitted loss over the input power at PEP. */
  readonly fitError: number;
  /** At PEP, at the voltage that the source leaves then. */
  readonly pep: PhasedPoint;
  readonly inputVoltage: number;
  readonly outputCurrent: number;
  /** Part of the loss at PEP that arises in switches and rectifiers. */
  readonly siliconShare: number;
  /** One switch and one rectifier at PEP, W. */
  readonly switchLoss: number;
  readonly rectifierLoss: number;
}

/** Rail powers at which the loss is computed, share of that at PEP; the last must be 1. */
const samples = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
/** Enough where only the peak is asked for. */
const peakSamples = [0, 0.5, 1];
/** Rounds of voltage and current, and the share of the voltage at which they end. */
const mostRounds = 60;
const settled = 1e-11;

/** Chosen and suggested values as the formulas take them. */
function partsOf(design: Design, suggestion: BoostSuggestion, frequency: number): PhasedParts {
  const { converter } = design;
  const { parts } = converter;
  const used = suggestion.parts;
  const synchronous = parts.rectifier === 'synchronous';
  return {
    phases: parts.phases,
    inductance: used.inductance,
    inductorResistance: used.inductorResistance,
    inductorAcResistance: used.inductorResistance * parts.alternatingFactor,
    switchResistance: used.switchResistance * parts.hotFactor,
    rectifierDrop: synchronous ? 0 : parts.rectifierDrop,
    rectifierResistance: parts.rectifierResistance,
    synchronous,
    capacitance: used.outputCapacitance,
    capacitorResistance: used.outputCapacitorResistance,
    frequency,
    turnOnTime: parts.turnOnTime,
    turnOffTime: parts.turnOffTime,
    switchCapacitance: parts.switchCapacitance,
    gateCharge: parts.gateCharge,
    gateVoltage: parts.gateVoltage,
    recoveryCharge: synchronous ? parts.recoveryCharge : 0,
    deadTimeOn: synchronous ? parts.deadTime : 0,
    deadTimeOff: synchronous ? parts.deadTime : 0,
    bodyDrop: parts.bodyDrop,
    inputCapacitorResistance: converter.inputCapacitorResistance,
    fixedPower: parts.fixedPower,
    core:
      parts.core === 'none'
        ? null
        : {
            coefficients: coreMaterial(parts.core),
            turns: parts.coreTurns,
            area: parts.coreArea,
            volume: parts.coreArea * parts.coreLength,
          },
  };
}

/** Chosen values with what the rules suggest for the rest, laid out for the lowest input voltage. */
export function layOut(
  design: Design,
  path: SupplyPath,
  outputCurrent: number,
): Outcome<{ readonly suggestion: BoostSuggestion; readonly parts: PhasedParts }> {
  const { converter } = design;
  const { parts } = converter;
  const frequency = converter.frequency ?? usualFrequency;
  const suggestion = suggestParts(
    {
      inputVoltage: converter.minimumInput,
      outputVoltage: converter.outputVoltage,
      outputCurrent,
      phases: parts.phases,
      frequency,
      hotFactor: parts.hotFactor,
      rectifierDrop: parts.rectifier === 'diode' ? parts.rectifierDrop : 0,
      stableCapacitance:
        leastCapacitance(design, path, converter.minimumInput, converter.outputVoltage * outputCurrent) ?? 0,
      highestInput: highestVoltage(design),
    },
    {
      ...parts,
      inputCapacitance: converter.inputCapacitance,
      outputCapacitance: converter.outputCapacitance,
    },
  );
  if (!suggestion.ok) return suggestion;
  return success({ suggestion: suggestion.value, parts: partsOf(design, suggestion.value, frequency) });
}

/**
 * A converter from parts at the source and path of a design, with a loss curve fitted along the line on which source
 * and path let its input move.
 *
 * outputCurrent: rail current at PEP, A; peakOnly: the curve is wanted at PEP alone. Errors: `noDrive`, `railBelowInput`, `ratioNotReachable`, `collapse`.
 */
export function designedConverter(
  design: Design,
  path: SupplyPath,
  outputCurrent: number,
  peakOnly = false,
): Outcome<DesignedConverter> {
  const { converter } = design;
  const drive = path.openVoltage - path.seriesDrop;
  if (drive <= 0) return noDrive(path.openVoltage, path.seriesDrop);
  if (drive >= converter.outputVoltage) return railBelowInput(drive, converter.outputVoltage);
  const laid = layOut(design, path, outputCurrent);
  if (!laid.ok) return laid;
  const { parts, suggestion } = laid.value;
  const line = { drive, resistance: path.internalResistance + path.pathResistance };
  const boards = design.boards.transmitPower;
  const found: { current: number; loss: number }[] = [];
  let pep: PhasedPoint | null = null;
  let voltage = drive;
  for (const share of peakOnly ? peakSamples : samples) {
    const point = settle(parts, line, converter.outputVoltage, share * outputCurrent, boards, voltage);
    if (!point.ok) return point;
    voltage = point.value.voltage;
    pep = point.value.point;
    found.push({ current: pep.inputCurrent, loss: pep.total });
  }
  const law = fitLossLaw(found);
  const last = pep!;
  const power = voltage * last.inputCurrent;
  const { terms } = last;
  const inSwitches = terms.switchConduction + terms.switchOverlap + terms.switchCapacitance;
  const inRectifiers = terms.rectifier + terms.recovery + terms.deadTime;
  const fitError = power > 0 ? law.error / power : 0;
  return success({
    parts,
    currentLimit: suggestion.parts.currentLimit,
    saturationCurrent: suggestion.parts.saturationCurrent,
    suggestion,
    module: {
      outputVoltage: converter.outputVoltage,
      points: [],
      noLoadPower: found[0]!.loss,
      minimumInput: converter.minimumInput,
      inputCurrentLimit: null,
      outputCurrentLimit: null,
      powerLimit: null,
      powerShare: 1,
      loss: law.loss,
      lowestPointVoltage: 0,
      largestPointCurrent: last.inputCurrent,
      notes: fitNotes(fitError),
    },
    fitError,
    pep: last,
    inputVoltage: voltage,
    outputCurrent,
    siliconShare: last.total > 0 ? (inSwitches + inRectifiers) / last.total : 0,
    switchLoss: inSwitches / parts.phases,
    rectifierLoss: inRectifiers / parts.phases,
  });
}

/** A fit this close to the budget needs no word, share of the input power. */
const quietError = 0.005;

function fitNotes(error: number): readonly Note[] {
  if (error <= quietError) return [];
  return [
    note(
      'assumed',
      'converterFit',
      `Below the peak the converter’s loss follows a fitted curve that misses the loss budget by up to ${(100 * error).toPrecision(2)} % of the power at PEP.`,
      { error },
    ),
  ];
}

interface SupplyLine {
  /** V */
  readonly drive: number;
  /** Ω */
  readonly resistance: number;
}

/**
 * Voltage and working point at which source, path and converter agree, by the secant method from above.
 *
 * V − V0 + R I(V) bends one way only: coming down from a higher voltage the slope is the sign of a root still to come;
 * when it turns there is none, and the supply collapses.
 */
function settle(
  parts: PhasedParts,
  { drive, resistance }: SupplyLine,
  outputVoltage: number,
  outputCurrent: number,
  boards: number,
  start: number,
): Outcome<{ readonly voltage: number; readonly point: PhasedPoint }> {
  const power = outputVoltage * outputCurrent + boards;
  const gone = () => collapse(power, greatestPower(drive, resistance) ?? 0);
  let before: { voltage: number; excess: number } | null = null;
  let voltage = start;
  for (let round = 0; round < mostRounds; round += 1) {
    const point = phasedPoint(parts, voltage, outputVoltage, outputCurrent);
    // A voltage on its way down to a collapse reaches ratios that no parts reach.
    if (!point.ok) return round > 0 ? gone() : point;
    const excess = drive - resistance * (point.value.inputCurrent + boards / voltage) - voltage;
    if (Math.abs(excess) <= settled * drive) return success({ voltage, point: point.value });
    const slope: number = before ? (excess - before.excess) / (voltage - before.voltage) : -1;
    if (!(slope < 0)) return gone();
    before = { voltage, excess };
    const next = voltage - excess / slope;
    if (next === voltage) return success({ voltage, point: point.value });
    if (!(next > 0)) return gone();
    voltage = Math.min(next, drive);
  }
  return gone();
}
