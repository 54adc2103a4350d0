import type { Caution } from '../../../shared/solution.ts';
import type { CautionBuilder, CautionFigures } from './cautionFigures.ts';
import { amperes, degrees, magnitude, supplyVolts, watts } from './cautionWords.ts';
import { redHeatRise, ringBurnTime, ringSection } from './ringHeating.ts';
import { shortSeverity } from './supplyCurrent.ts';
import { touchLevel } from './touch.ts';

/** Along the wire, m: 33 CFR 183.455(b). */
const fusePlace = 0.178;
/** Longer than this a ring is off before it glows; heat given off is not counted any more either, s. Own choice. */
const ringInTime = 30;

export const supplyShort: CautionBuilder = ({ faultCurrent, openVoltage }) => {
  if (faultCurrent === null) return null;
  const power = openVoltage * faultCurrent;
  return {
    key: 'supplyShort',
    severity: shortSeverity(faultCurrent),
    title: 'A short across the supply',
    figure: amperes(faultCurrent),
    sentence: `A short behind the fuse place draws about ${amperes(faultCurrent)} (${watts(power)}) at ${supplyVolts(openVoltage)}, which gives no shock and no warning. ${ringWords(faultCurrent)}`,
    action:
      'Take off rings, watches and chains. Insulated tools, covers on the terminals, connect the source last.',
    source: 'batteryShort',
  };
};

function ringWords(faultCurrent: number): string {
  const red = ringBurnTime('goldAlloy', faultCurrent, ringSection, redHeatRise);
  if (red > ringInTime) return 'A ring or strap across it burns the skin; a tool sparks and pits.';
  return `A ring across it is red-hot within ${magnitude(red)}, before it is off; a spanner welds itself on.`;
}

export const fuseBreaking: CautionBuilder = ({ faultCurrent, breakingCapacity }) => {
  if (faultCurrent === null || breakingCapacity === null || faultCurrent <= breakingCapacity) return null;
  return {
    key: 'fuseBreakingCapacity',
    severity: 'danger',
    title: 'The fuse cannot break this source',
    figure: `${amperes(faultCurrent)} > ${amperes(breakingCapacity)}`,
    sentence: `A short can draw ${amperes(faultCurrent)}; this kind of fuse breaks ${amperes(breakingCapacity)} at most and may burst or go on arcing.`,
    action:
      'Put a bolted fuse with a DC breaking capacity above that at the source, the small fuse after it.',
    source: 'batteryShort',
  };
};

export const fuseFar: CautionBuilder = ({ fuseDistance, source }) => {
  if (fuseDistance <= fusePlace * (1 + 1e-9)) return null;
  const millimetres = `${Math.round(fuseDistance * 1000)} mm`;
  return {
    key: 'fusePlace',
    severity: source === 'mainsSupply' ? 'caution' : 'warning',
    title: 'Wire before the fuse',
    figure: millimetres,
    sentence: `${millimetres} of wire lie before the fuse: if they chafe through, nothing opens.`,
    action: 'Move the fuse within 178 mm of the terminal, both leads where the return has another path.',
    source: 'fusePlace',
  };
};

export const hotWire: CautionBuilder = ({ wireTemperature, insulationLimit }) => {
  if (wireTemperature === null) return null;
  const figure = degrees(wireTemperature);
  if (wireTemperature > insulationLimit) {
    return {
      key: 'hotWire',
      severity: 'danger',
      title: 'The supply wire gets too hot',
      figure,
      sentence: `The wire reaches about ${figure}, its insulation bears ${degrees(insulationLimit)}.`,
      action: 'Take a thicker wire from the wire table, or less current.',
      source: 'pvcLimit',
    };
  }
  const level = touchLevel(wireTemperature);
  if (level.severity === null || level.severity === 'note') return null;
  return {
    key: 'hotWire',
    severity: 'note',
    title: 'The supply wire gets warm',
    figure,
    sentence: `The wire reaches about ${figure} under a long carrier.`,
    action: 'Keep it in free air, not under a carpet or in a coil; a thicker wire stays cooler.',
    source: 'pvcLimit',
  };
};

export function charging({ source }: CautionFigures): Caution | null {
  if (source === 'leadAcid' || source === 'vehicle') {
    return {
      key: 'hydrogen',
      severity: 'caution',
      title: 'Hydrogen from the battery',
      figure: '4.1 % explodes',
      sentence:
        'A lead-acid battery gives off hydrogen while it is charged; from 4.1 % in air it explodes, and 1 % is the most to allow.',
      action:
        'Charge it in moving air, no flame or spark, eye protection on. Make the last connection away from the battery.',
      source: 'hydrogen',
    };
  }
  if (source !== 'lithiumIronPhosphate') return null;
  return {
    key: 'lithium',
    severity: 'caution',
    title: 'Charging lithium cells',
    figure: 'not below 0 °C',
    sentence: 'Lithium cells vent or burn when overcharged, charged below 0 °C, punctured or shorted.',
    action:
      'Use a management board and a charger made for this chemistry; do not leave it charging unattended.',
    source: 'lithium',
  };
}

export const reversedLeads: CautionBuilder = ({ reverseProtected, fuseRating, openVoltage }) => {
  if (reverseProtected) return null;
  const fuse = fuseRating === null ? 'the fuse' : `the ${Number(fuseRating.toPrecision(3))} A fuse`;
  return {
    key: 'reversedLeads',
    severity: 'note',
    title: 'Reversed leads',
    figure: `−${supplyVolts(openVoltage)}`,
    sentence: `Nothing stops a reversed source: its current flows through the converter or the devices until ${fuse} opens. Electrolytic capacitors can burst.`,
    action: 'Use a plug that fits one way only, or fit a series diode or transistor.',
    source: 'batteryShort',
  };
};
