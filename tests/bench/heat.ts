import { examples } from '../../shared/design/examples.ts';
import type { Design } from '../../shared/design/schema.ts';
import { prepare } from '../../src/engine/couple/prepare.ts';
import { cycleAt } from '../../src/engine/couple/serviceCycle.ts';
import { ladderPeriodic } from '../../src/engine/heat/deviceLadder.ts';
import { plateMap, suggestedPlaces } from '../../src/engine/index.ts';
import { keyingPattern } from '../../src/engine/signal/keying.ts';
import { type Figure, timed } from './figures.ts';

/** Parts follow the pointer: the map is drawn again in every frame or two. */
const mapTarget = 20;
/** Asked for by a button. */
const placesTarget = 500;
/** Every dot and dash of an hour through the ladder of a device, and the state of the sink. */
const hourTarget = 30;

/** Three parts: two devices, and the converter on the same plate. */
function threeParts(design: Design): Design {
  return { ...design, converter: { ...design.converter, kind: 'module', heatTo: 'amplifierSink' } };
}

function hourOfKeying(design: Design): () => void {
  const { coupled } = prepare(design);
  const pattern = keyingPattern(design.service.keyingSpeed);
  if (!coupled.ok || !pattern.ok) return () => {};
  const { segments } = pattern.value;
  const word = segments.reduce((sum, segment) => sum + segment.duration, 0);
  const hour = Array.from({ length: Math.round(3600 / word) }, () => segments)
    .flat()
    .map(({ on, duration }) => ({ power: on ? 30 : 2, duration }));
  return () => {
    cycleAt(coupled.value, 'cw', 0.5);
    ladderPeriodic(coupled.value.path.stages, hour);
  };
}

/** How long the map of the plate, the search for places and an hour of keying take. */
export function heatFigures(): Figure[] {
  const [first] = examples;
  if (!first) return [];
  const three = threeParts(first.design);
  return [
    {
      name: 'plate map of 3 parts, 160 x 100 cells',
      unit: 'ms',
      runs: timed(() => void plateMap(three, 'keyDown')),
      target: mapTarget,
    },
    {
      name: 'places suggested for 3 parts',
      unit: 'ms',
      runs: timed(() => void suggestedPlaces(three, 'keyDown')),
      target: placesTarget,
    },
    {
      name: 'an hour of keying, every element, until it repeats',
      unit: 'ms',
      runs: timed(hourOfKeying(first.design)),
      target: hourTarget,
    },
  ];
}
