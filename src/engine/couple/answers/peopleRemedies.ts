import { exposureClose } from '../../hazard/cautionsRadio.ts';
import { type Offers, said, single } from './offer.ts';

/** Whole decimetres up. */
const up = (distance: number) => Math.ceil(distance * 10 - 1e-9) / 10;

/** A guard, and distance from the antenna. */
export const peopleRemedies: Offers = ({ design, solution }) => {
  const { touchTemperature, touchThreshold, exposureDistance, nearestPerson } = solution.values;
  const burns =
    touchTemperature !== undefined && touchThreshold !== undefined && touchTemperature > touchThreshold;
  const near =
    exposureDistance !== undefined &&
    nearestPerson !== undefined &&
    nearestPerson < exposureClose * exposureDistance;
  return [
    ...(burns && design.limits.touchedBy !== 'nobody'
      ? [
          single('guard', 'metalwork', {
            title: 'Put a guard around the sink so that nobody can touch it',
            edits: [{ path: 'limits.touchedBy', value: 'nobody' }],
            sideEffects: ['Perforated sheet with room for the air; the metal under it is as hot as before.'],
          }),
        ]
      : []),
    ...(near
      ? [
          single('distance', 'metalwork', {
            title: `Put the antenna where people stay ${said(up(exposureClose * exposureDistance), 'length', 'm')} away`,
            edits: [{ path: 'antenna.nearestPerson', value: up(exposureClose * exposureDistance) }],
            sideEffects: ['An estimate for planning; local rules decide.'],
          }),
        ]
      : []),
  ];
};
