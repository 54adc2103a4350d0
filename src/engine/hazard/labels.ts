import type { Label } from '../../../shared/solution.ts';
import type { CautionFigures } from './cautionFigures.ts';
import { mayContainBeryllia } from './cautionsParts.ts';
import { lineImpedance } from './cautionsRadio.ts';
import { amperes, degrees, joules, span, supplyVolts, volts } from './cautionWords.ts';
import { cautionFrom } from './contactCurrent.ts';
import { forwardCurrent, forwardPeakVoltage } from './outputVoltage.ts';
import { dischargeFrom, storedEnergy } from './storedEnergy.ts';
import { noteVoltage } from './supplyCurrent.ts';
import { touchLevel } from './touch.ts';

type LabelBuilder = (figures: CautionFigures) => Label | null;

/** The labels that belong on this box, chosen by its figures, in the order supply, heat, radio, inside. */
export function labelsOf(figures: CautionFigures): readonly Label[] {
  return builders.flatMap((build) => build(figures) ?? []);
}

const supply: LabelBuilder = ({ openVoltage, inputCurrent }) => ({
  key: 'supply',
  place: 'beside the supply leads',
  heading: `${supplyVolts(openVoltage)} DC`,
  lines: [
    ...(inputCurrent === null || !(inputCurrent > 0) ? [] : [`up to ${upwards(inputCurrent)} A`]),
    '+ red, − black: check before you connect',
    'Rings and watches off',
  ],
});

const fuse: LabelBuilder = ({ fuseRating, fuseName }) => {
  if (fuseRating === null) return null;
  return {
    key: 'fuse',
    place: 'at the fuse holder',
    heading: `Fuse ${Number(fuseRating.toPrecision(3))} A`,
    lines: [fuseName, 'Replace only with the same kind and rating'],
  };
};

const hotSurface: LabelBuilder = ({ touchTemperature, surface, coolingTime }) => {
  if (touchTemperature === null) return null;
  const { severity, words } = touchLevel(touchTemperature, surface);
  if (severity === null || severity === 'note') return null;
  return {
    key: 'hotSurface',
    place: 'on the sink',
    heading: 'Hot surface',
    lines: [
      `up to ${degrees(touchTemperature)}: ${words}`,
      ...(coolingTime ? [`stays hot for ${span(coolingTime, Math.ceil)} after switching off`] : []),
    ],
  };
};

const radio: LabelBuilder = ({ pep, swr }) => {
  if (pep < cautionFrom) return null;
  return {
    key: 'radio',
    place: 'beside the antenna connector',
    heading: 'RF burns',
    lines: [
      `${volts(forwardPeakVoltage(pep, lineImpedance, swr))} peak, ${amperes(forwardCurrent(pep, lineImpedance, swr))}`,
      'Transmitting: do not touch antenna, line or connector',
    ],
  };
};

const antenna: LabelBuilder = ({ exposure }) => {
  if (!exposure.ok) return null;
  const { shown, limit } = exposure.value;
  return {
    key: 'antenna',
    place: 'at the antenna',
    heading: 'Transmitting antenna',
    lines: [
      `Keep at least ${shown} m away`,
      `Estimate: ${limit.setName}, ${limit.tierName}, averaged over ${Math.round(limit.averaging / 60)} min`,
    ],
  };
};

const capacitors: LabelBuilder = ({ railVoltage, railCapacitance }) => {
  const energy = storedEnergy(railCapacitance, railVoltage);
  if (energy < dischargeFrom && railVoltage < noteVoltage) return null;
  return {
    key: 'capacitors',
    place: 'inside the lid',
    heading: `${volts(railVoltage)} DC inside`,
    lines: [
      ...(energy >= dischargeFrom ? [`Capacitors hold ${joules(energy)} after switching off`] : []),
      'Discharge through a resistor and measure before work',
    ],
  };
};

const beryllia: LabelBuilder = ({ package: body, pad }) => {
  if (!mayContainBeryllia(body, pad)) return null;
  return {
    key: 'beryllia',
    place: 'inside, at the devices',
    heading: pad === 'beryllia' ? 'Beryllia inside' : 'May contain beryllia',
    lines: ['Toxic dust: do not open, file, grind, drill or break', 'Not into the bin'],
  };
};

const fan: LabelBuilder = ({ fan: fitted }) =>
  fitted ? { key: 'fan', place: 'beside the fan', heading: 'Fan', lines: ['Starts by itself'] } : null;

const builders: readonly LabelBuilder[] = [
  supply,
  fuse,
  hotSurface,
  radio,
  antenna,
  capacitors,
  beryllia,
  fan,
];

/** A current rounded up to two figures: what the lead must bear. */
function upwards(current: number): number {
  const step = 10 ** (Math.floor(Math.log10(current)) - 1);
  return Number((Math.ceil(current / step - 1e-9) * step).toPrecision(2));
}
