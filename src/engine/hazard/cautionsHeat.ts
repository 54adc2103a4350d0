import type { Severity } from '../../../shared/solution.ts';
import type { CautionBuilder, CautionFigures } from './cautionFigures.ts';
import { degrees, nearestDegree, span } from './cautionWords.ts';
import { type TouchMaterial, timeToBurn, touchLevel } from './touch.ts';

/** A stop stands this close to the greatest junction temperature, K. */
const junctionMargin = 10;

const surfaceWords: Readonly<Record<TouchMaterial, string>> = {
  metal: 'metal',
  glass: 'glass or ceramic',
  plastic: 'plastic',
  wood: 'wood',
};

export const hotMetal: CautionBuilder = (figures) => {
  const { touchTemperature, touchedBy, surface, coolingTime } = figures;
  if (touchTemperature === null) return null;
  const level = touchLevel(touchTemperature, surface);
  if (level.severity === null) return null;
  const time = timeToBurn(surface, touchTemperature);
  const after =
    time === null ? '' : time <= 1 ? ' within a second' : ` after about ${span(time, Math.floor)} of contact`;
  const cooling = coolingTime
    ? ` It needs about ${span(coolingTime, Math.ceil)} to cool below 48 °C after switching off.`
    : '';
  const guarded = touchedBy === 'nobody';
  const grave = level.severity === 'danger' || level.severity === 'warning';
  return {
    key: 'hotMetal',
    severity: guarded && grave ? 'caution' : level.severity,
    title: `Hot ${surfaceWords[surface]}: ${level.words}`,
    figure: degrees(touchTemperature),
    sentence: `The hottest place a hand can reach may come to ${degrees(touchTemperature)}: ${surfaceWords[surface]} burns${after}.${cooling}`,
    action: guarded
      ? 'Keep the guard on and write “hot surface” beside it.'
      : hotMetalActions[level.severity],
    source: 'touch',
  };
};

const hotMetalActions: Readonly<Record<Severity, string>> = {
  danger: 'Guard it or put it out of reach; a label alone is not enough.',
  warning: 'Guard it, or write “hot surface” on it.',
  caution: 'Do not hold it; keep children away. A larger sink or less duty cools it.',
  note: 'Do not rest a hand on it.',
};

export const hotJunction: CautionBuilder = (figures) => {
  const { junctionPeak, junctionEdge, hottestService, maximumJunction } = figures;
  const stop = maximumJunction - junctionMargin;
  if (junctionPeak === null) return null;
  if (junctionPeak <= stop) return hotAtEdge(figures, junctionPeak, junctionEdge ?? junctionPeak, stop);
  const reached = nearestDegree(junctionPeak);
  const end = nearestDegree(maximumJunction);
  return {
    key: 'hotJunction',
    severity: 'danger',
    title: `Stop: the transistors ${junctionPeak > maximumJunction ? 'would' : 'may'} fail`,
    figure: reached,
    sentence: `The junction would reach ${reached} in ${hottestService} at the planned duty, nominally. Stop is at ${nearestDegree(stop)}, ${junctionMargin} K short of the data sheet’s end at ${end}. A part that fails this way can burst.`,
    action: 'Do not key this design. Take less power or duty, or a better sink.',
    source: 'deviceLimit',
  };
};

/** Nominally in order, but the figures are not known well enough to rule a failure out. */
function hotAtEdge(
  { hottestService, maximumJunction }: CautionFigures,
  nominal: number,
  edge: number,
  stop: number,
): ReturnType<CautionBuilder> {
  if (edge <= stop) return null;
  const end = nearestDegree(maximumJunction);
  const reached = edge > maximumJunction ? `more than ${end}` : nearestDegree(edge);
  return {
    key: 'hotJunction',
    severity: 'danger',
    title: 'Stop: the transistors may fail',
    figure: reached,
    sentence: `The junction would reach ${nearestDegree(nominal)} in ${hottestService} at the planned duty nominally, but ${reached} at the pessimistic edge. Stop is at ${nearestDegree(stop)}, ${junctionMargin} K short of the data sheet’s end at ${end}. A part that fails this way can burst.`,
    action:
      'Do not key this design before its doubt is smaller: log a bench run of the sink, measure what is guessed. Or take less power or duty.',
    source: 'deviceLimit',
  };
}
