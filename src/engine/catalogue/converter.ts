import type { Dimension } from '../../../shared/design/fields.ts';
import type { QuantityEntry } from './types.ts';

type How = Pick<QuantityEntry, 'formula' | 'method' | 'source' | 'perService'>;

function entry(key: string, symbol: string, label: string, dimension: Dimension, how: How): QuantityEntry {
  return { key, symbol, label, dimension, station: 'converter', ...how };
}

const chosen = (rule: string): How => ({
  method: `Entered, or suggested: ${rule}`,
  source: 'boostRules',
});
const computed: How = {
  method:
    'From duty cycle and straight-line inductor current at PEP; continuous or discontinuous as it falls out.',
  source: 'boost',
};
const atLowest = (what: string): How => ({
  method: `${what} at the lowest input voltage and PEP.`,
  source: 'boost',
});

/** A converter designed from parts; all of these are absent for a bought module. */
export const converterQuantities: readonly QuantityEntry[] = [
  entry('phases', 'N', 'Phases', 'count', { method: 'Entered.' }),
  entry('switchingFrequency', 'f_s', 'Switching frequency', 'frequency', {
    method: 'Entered, or 150 kHz.',
  }),
  entry(
    'inductance',
    'L',
    'Inductance, each phase',
    'inductance',
    chosen('ripple of 30 % of the mean at the lowest input and PEP, next E12 value up.'),
  ),
  entry(
    'inductorResistance',
    'r_L',
    'Resistance of the inductor',
    'resistance',
    chosen('1 % of the power in copper at the lowest input, next E12 value down.'),
  ),
  entry(
    'currentLimit',
    'I_lim',
    'Peak current limit, each phase',
    'current',
    chosen('1.15 times the peak at the lowest input, next E24 value up.'),
  ),
  entry(
    'saturationCurrent',
    'I_sat',
    'Saturation current',
    'current',
    chosen('1.2 times the peak at the lowest input and not under the current limit, next E12 value up.'),
  ),
  entry(
    'switchResistanceCold',
    'R_25',
    'On-resistance of the switch, cold',
    'resistance',
    chosen('1 % of the power in the hot switch at the lowest input, next E12 value down.'),
  ),
  entry('switchResistanceHot', 'R_on', 'On-resistance of the switch, hot', 'resistance', {
    method: 'The cold one times the factor entered.',
    source: 'boost',
  }),
  entry(
    'outputCapacitorResistance',
    'r_C',
    'Series resistance of the output capacitors',
    'resistance',
    chosen('1 % of ripple, next E12 value down.'),
  ),
  entry('switchDuty', 'D', 'Switch duty cycle D at PEP', 'share', {
    method:
      'Volt-second and charge balance with the resistances and the rectifier drop, the larger root; in discontinuous conduction from the energy of each pulse.',
    source: 'boost',
  }),
  entry('conductionShare', 'D_c', 'Share of the period in which the inductor carries current', 'share', {
    method: 'D plus the share of the rectifier; below 100 % the stage runs discontinuously.',
    source: 'boost',
  }),
  entry('boundaryCurrent', 'I_b', 'Rail current below which it runs discontinuously', 'current', {
    method: 'Vo D (1 − D)²/(2 L fs) for each phase, without losses.',
    source: 'boost',
  }),
  entry('inductorMean', 'I_L', 'Mean inductor current, each phase', 'current', computed),
  entry('inductorRipple', 'dI_L', 'Inductor ripple, peak to peak', 'current', computed),
  entry('inductorPeak', 'I_Lp', 'Peak inductor current', 'current', computed),
  entry('inductorRms', 'I_Lr', 'RMS inductor current', 'current', computed),
  entry('switchRms', 'I_Q', 'RMS current of a switch', 'current', computed),
  entry('rectifierRms', 'I_D', 'RMS current of a rectifier', 'current', computed),
  entry('switchStress', 'V_Q', 'Voltage across the open switch', 'voltage', {
    method: 'Rail plus rectifier drop; ringing comes on top.',
    source: 'boost',
  }),
  entry('inputRipple', 'dI_in', 'Ripple of the input current, all phases', 'current', {
    method: 'Exact sum of the straight-line inductor currents, shifted by a part of the period each.',
    source: 'interleave',
  }),
  entry('inputCapacitorRms', 'I_Ci', 'RMS current of the input capacitors', 'current', {
    method: 'All of the ripple: the source is taken to give the mean only, the cautious case.',
    source: 'interleave',
  }),
  entry('outputCapacitorRms', 'I_Co', 'RMS current of the output capacitors', 'current', {
    method: 'Root mean square of the summed rectifier currents less the rail current.',
    source: 'interleave',
  }),
  entry('outputRipple', 'dV_o', 'Ripple of the rail, peak to peak', 'voltage', {
    method:
      'Charge of the output capacitors and their series resistance over one period, extremes inside it counted.',
    source: 'interleave',
  }),
  entry('saturationMargin', 'm_sat', 'Room below saturation', 'share', {
    formula: 'saturationCurrent / inductorPeak - 1',
  }),
  entry('lossInductor', 'P_L', 'Loss: inductor copper', 'power', {
    method: 'Direct-current resistance with the mean, resistance at the switching frequency with the ripple.',
    source: 'boost',
  }),
  entry('lossCore', 'P_Fe', 'Loss: core', 'power', {
    method:
      'Improved generalised Steinmetz equation on the flux triangle, without bias: a biased choke loses often 1.2 to 2 times as much.',
    source: 'coreLoss',
  }),
  entry('lossSwitch', 'P_on', 'Loss: switch conducting', 'power', {
    formula: 'phases * switchResistanceHot * switchRms^2',
    source: 'boost',
  }),
  entry('lossOverlap', 'P_ov', 'Loss: switch overlap', 'power', {
    method:
      'Half of voltage times current times overlap time, valley current turning on and peak current turning off. Real loss is often 20 to 50 % more.',
    source: 'switchOverlap',
  }),
  entry('lossCapacitance', 'P_Cs', 'Loss: switch capacitance', 'power', {
    method: 'Half of capacitance times the rail squared, every period.',
    source: 'switchOverlap',
  }),
  entry('lossGate', 'P_g', 'Loss: gate drive', 'power', {
    method: 'Gate charge times drive voltage, every period.',
    source: 'switchOverlap',
  }),
  entry('lossRectifier', 'P_rec', 'Loss: rectifier conducting', 'power', {
    method: 'Threshold times rail current plus resistance times the square of the RMS current.',
    source: 'boost',
  }),
  entry('lossRecovery', 'P_rr', 'Loss: recovery', 'power', {
    method: 'Recovery charge times the rail, every period.',
    source: 'switchOverlap',
  }),
  entry('lossDeadTime', 'P_dt', 'Loss: dead time', 'power', {
    method: 'Body diode of a second switch during both dead times.',
    source: 'switchOverlap',
  }),
  entry('lossCapacitors', 'P_C', 'Loss: capacitors', 'power', {
    method: 'Series resistances with the RMS currents of input and output capacitors.',
    source: 'boost',
  }),
  entry('lossFixed', 'P_0', 'Loss: controller', 'power', { method: 'Entered.' }),
  entry('switchVoltageRating', 'V_Qr', 'Switch, rated voltage', 'voltage', {
    method: '1.4 times the voltage it blocks, next usual rating.',
    source: 'boostRules',
  }),
  entry('rectifierVoltageRating', 'V_Dr', 'Rectifier, rated voltage', 'voltage', {
    method: '1.4 times the rail, next usual rating.',
    source: 'boostRules',
  }),
  entry('rectifierCurrentRating', 'I_Dr', 'Rectifier, rated mean current', 'current', {
    method: '1.5 times the rail current of one phase, next usual rating.',
    source: 'boostRules',
  }),
  entry('outputCapacitorVoltage', 'V_Cr', 'Output capacitors, rated voltage', 'voltage', {
    method: '1.25 times the rail, next usual rating.',
    source: 'boostRules',
  }),
  entry('inputCapacitorVoltage', 'V_Ci', 'Input capacitors, rated voltage', 'voltage', {
    method:
      '1.25 times the highest voltage of the source, next usual rating; see also the voltage after switching on.',
    source: 'boostRules',
  }),
  entry('converterFitError', 'e_f', 'Miss of the fitted loss curve, of the power at PEP', 'share', {
    method:
      'Greatest difference between loss budget and fitted curve from no load to PEP; at PEP there is none.',
    source: 'lossLaw',
  }),
  entry('lowestInput', 'V_low', 'Lowest input voltage', 'voltage', { method: 'Entered.' }),
  entry(
    'switchDutyLowest',
    'D_max',
    'Switch duty cycle at the lowest input',
    'share',
    atLowest('Duty cycle'),
  ),
  entry(
    'inductorPeakLowest',
    'I_Lm',
    'Peak inductor current at the lowest input',
    'current',
    atLowest('Peak current'),
  ),
  entry('efficiencyLowest', 'eta_low', 'Efficiency at the lowest input', 'share', atLowest('Efficiency')),
  entry('rightHalfPlaneZero', 'f_z', 'Right-half-plane zero at the lowest input', 'frequency', {
    formula: 'railVoltagePep * (1 - switchDutyLowest)^2 * phases / (2 * pi * inductance * railCurrentPep)',
    source: 'rightHalfPlaneZero',
  }),
  entry('crossover', 'f_c', 'Usable crossover of the control loop', 'frequency', {
    method: 'A fifth of the right-half-plane zero, at most a tenth of the switching frequency.',
    source: 'crossoverRule',
  }),
  entry('railDroop', 'dV_s', 'Dip of the rail for a full step of the envelope', 'voltage', {
    formula:
      '0.7 * railCurrentPep / (2 * pi * crossover * outputCapacitance) + outputCapacitorResistance * railCurrentPep',
    source: 'rightHalfPlaneZero',
  }),
  entry('switchJunction', 'T_Q', 'Junction of the converter’s switch', 'temperature', {
    perService: true,
    method: 'Sink under the mean heat of an over without end, junction over it under the heat at PEP.',
    source: 'boost',
  }),
  entry('rectifierJunction', 'T_D', 'Junction of the converter’s rectifier', 'temperature', {
    perService: true,
    method: 'Sink under the mean heat of an over without end, junction over it under the heat at PEP.',
    source: 'boost',
  }),
  entry(
    'syllableCapacitance',
    'C_syl',
    'Capacitance that would carry the rail through a syllable',
    'capacitance',
    {
      perService: true,
      formula: '(railCurrentPep - dcPowerOver / railVoltagePep) * 0.125 s / (0.05 * railVoltagePep)',
      source: 'syllable',
    },
  ),
  entry('syllableEnergy', 'W_syl', 'Energy stored in it', 'energy', {
    perService: true,
    formula: 'syllableCapacitance * railVoltagePep^2 / 2',
    source: 'syllable',
  }),
];
