import type { Severity } from '../../../shared/solution.ts';
import type { CautionBuilder, CautionFigures } from './cautionFigures.ts';
import { amperes, volts, watts } from './cautionWords.ts';
import { cautionFrom } from './contactCurrent.ts';
import { type ExposureDistance, exposureSentence } from './exposureDistance.ts';
import { forwardCurrent, forwardPeakVoltage } from './outputVoltage.ts';

/** Line into which voltage and current at the antenna connector are worked out, Ω. */
export const lineImpedance = 50;
/** From this power the caution at the output is a danger, W. Own choice. */
const outputDanger = 50;
/** From this distance on the exposure caution is a warning, m: beyond arm's reach and one step. Own choice. */
const exposureWarning = 2;
/** Within this many times the least distance people count as close. Own choice: the estimate is no better. */
export const exposureClose = 1.5;

export const outputBurn: CautionBuilder = ({ pep, swr, fingerLevel }) => {
  if (pep < cautionFrom) return null;
  const peak = volts(forwardPeakVoltage(pep, lineImpedance, swr));
  const current = forwardCurrent(pep, lineImpedance, swr);
  const mismatch = swr > 1 ? ` at a standing-wave ratio of ${Number(swr.toPrecision(3))}` : '';
  const compared =
    fingerLevel === null
      ? ''
      : `, ${Number((current / fingerLevel).toPrecision(2))} times the level for a touching finger on this band (${Math.floor(fingerLevel * 1000)} mA)`;
  return {
    key: 'outputBurn',
    severity: pep >= outputDanger ? 'danger' : 'warning',
    title: 'RF burns at the output',
    figure: `${peak} peak`,
    sentence: `The output carries up to ${peak} peak${mismatch} and ${amperes(current)}${compared}. The burn lies deep under the skin, and a light brush can arc. The end of a wire antenna carries many times that voltage.`,
    action: `Power on: touch no antenna, terminal, tank or matching part. Tune and test into a dummy load that takes ${watts(pep)} for as long as you key it.`,
    source: 'contactCurrent',
  };
};

export const exposure: CautionBuilder = (figures) => {
  const { exposure: found, nearestPerson } = figures;
  if (!found.ok) {
    return {
      key: 'exposure',
      severity: 'warning',
      title: 'People near the antenna',
      figure: 'no number',
      sentence: found.reason.sentence,
      action: 'Measure or model the field before people come near; until then low power only.',
      source: 'oet65',
    };
  }
  const { value } = found;
  const nearer = nearestPerson !== null && nearestPerson < value.distance;
  return {
    key: 'exposure',
    severity: exposureSeverity(value, nearestPerson),
    title: nearer ? 'People come too near the antenna' : 'People near the antenna',
    figure: `${value.shown} m`,
    sentence: `${exposureSentence(value, nearestPerson)}${exemptionSentence(figures, value)}`,
    action: `Keep people farther away than that while transmitting. ${whoCounts(value)}`,
    source: exposureSources[value.limit.set],
  };
};

function exposureSeverity({ distance, shown }: ExposureDistance, nearest: number | null): Severity {
  if (nearest === null) return shown >= exposureWarning ? 'warning' : 'caution';
  if (nearest < distance) return 'danger';
  return nearest < exposureClose * distance ? 'warning' : 'caution';
}

function exemptionSentence({ exemption, nearestPerson }: CautionFigures, found: ExposureDistance): string {
  if (exemption === null) return '';
  return ` US rule at ${nearestPerson ?? found.shown} m: ${exemption}; the limits hold in any case.`;
}

function whoCounts({ limit }: ExposureDistance): string {
  return limit.tier === 'controlled'
    ? 'This tier is for the licensee and trained members of the household only; for everybody else take the general population.'
    : 'Neighbours and visitors count: fence it, raise it, or use less power.';
}

const exposureSources: Readonly<Record<ExposureDistance['limit']['set'], string>> = {
  fcc: 'fcc1310',
  icnirp2020: 'icnirp2020',
  icnirp2020Local: 'icnirp2020',
  eu1999: 'eu1999',
};
