import type { Severity } from '../../../shared/solution.ts';
import type { CautionBuilder } from './cautionFigures.ts';
import { joules, ohms, span, volts, watts } from './cautionWords.ts';
import { bleederFor, storedEnergy, storedEnergySeverity } from './storedEnergy.ts';
import { voltageSeverity } from './supplyCurrent.ts';

/** A converter that can give no more than this many times its setting has a cut-out worth the name. Own choice. */
const smallExcess = 1.15;

export const railVoltage: CautionBuilder = ({ railVoltage: voltage, fromConverter }) => {
  const severity = voltageSeverity(voltage);
  if (severity === null) return null;
  return {
    key: 'railVoltage',
    severity,
    title: 'Rail voltage',
    figure: volts(voltage),
    sentence: `The rail has ${volts(voltage)} DC; from 60 V it is no longer extra-low voltage, in wet or cramped places a shock counts sooner.`,
    action: fromConverter
      ? 'Cover live parts, and switch the converter off before you reach in.'
      : 'Cover live parts.',
    source: severity === 'note' ? 'guarding' : 'extraLowVoltage',
  };
};

export const converterHigh: CautionBuilder = ({ railVoltage: set, fromConverter, greatestRail }) => {
  if (!fromConverter) return null;
  if (greatestRail === null) {
    return {
      key: 'converterHigh',
      severity: 'caution',
      title: 'If the converter fails high',
      figure: `above ${volts(set)}`,
      sentence: `A step-up converter that loses its regulation lifts the ${volts(set)} rail until a capacitor or a transistor gives way. How far this one goes is not entered.`,
      action: 'Fit an over-voltage cut-out, and look up the top of its adjusting range.',
      source: 'converterHigh',
    };
  }
  if (greatestRail <= smallExcess * set) return null;
  return {
    key: 'converterHigh',
    severity: highSeverity(greatestRail),
    title: 'If the converter fails high',
    figure: volts(greatestRail),
    sentence: `A step-up converter that loses its regulation can put ${volts(greatestRail)} on the ${volts(set)} rail${greatestRail >= 60 ? ': no longer extra-low voltage' : ''}.`,
    action: `Fit an over-voltage cut-out below ${volts(smallExcess * set)}, or rate capacitors and transistors for ${volts(greatestRail)}.`,
    source: 'converterHigh',
  };
};

/** Never below a caution: capacitors burst at any voltage above their own. */
function highSeverity(voltage: number): Severity {
  const severity = voltageSeverity(voltage);
  return severity === null || severity === 'note' ? 'caution' : severity;
}

export const railEnergy: CautionBuilder = ({ railCapacitance, railVoltage: voltage, bleederTime }) => {
  const energy = storedEnergy(railCapacitance, voltage);
  const severity = storedEnergySeverity(energy);
  if (severity === null) return null;
  const bleeder = bleederFor(railCapacitance, voltage, bleederTime);
  const resistor = `${ohms(bleeder.resistance)}, ${watts(bleeder.power)} while the rail is on`;
  return {
    key: 'storedEnergy',
    severity,
    title: 'Charged capacitors',
    figure: joules(energy),
    sentence: `The capacitors on the rail hold ${joules(energy)} after switching off: a tool across them sparks and pits.`,
    action:
      severity === 'warning'
        ? `Fit a bleeder of ${resistor}, and wait ${span(bleederTime, Math.ceil)}; never short them with a tool.`
        : `Discharge them through a resistor before work, not with a tool. A bleeder of ${resistor}, does it in ${span(bleederTime, Math.ceil)}.`,
    source: 'storedEnergy',
  };
};
