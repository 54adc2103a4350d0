import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { services } from '../../../shared/solution.ts';
import { bandSampler } from '../../../src/engine/couple/bandSampler.ts';
import { safeShare } from '../../../src/engine/couple/duty.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { dutyCourse, sampleDuty } from '../../../src/engine/couple/sampleDuty.ts';
import { cycleAt } from '../../../src/engine/couple/serviceCycle.ts';
import { dutyLimits } from '../../../src/engine/couple/solve.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

const field = exampleOf('field-station-60w');
/** Its heat feeds on itself: from four fifths of the time on there is no steady state. */
const runsAway = {
  ...change(exampleOf('pocket-beacon-10w'), {
    amplifier: { pep: 30, ratedPep: 30, onResistance: 0.1, onResistanceCoefficient: 0.01, efficiency: 0.7 },
    device: { junctionToCase: 30 },
  }),
  bench: [],
};
const samples = 40;

const designs: readonly (readonly [string, Design])[] = [
  ...examples.map(({ key, design }) => [key, design] as const),
  ['planned at no duty', change(field, { service: { transmitShare: 0 } })],
  ['planned without a pause', change(field, { service: { transmitShare: 1 } })],
  ['runs away at much duty', runsAway],
  ['touch governs', change(field, { limits: { touchGoverns: true } })],
  ['bias left on in receive', change(field, { amplifier: { biasInReceive: true, quiescentCurrent: 2 } })],
];

describe('safe duty of a sample', () => {
  it.each(designs)('%s: as the search of the design itself finds it', (_, design) => {
    const prepared = prepare(design);
    const coupled = resultOf(prepared.coupled);
    const limits = dutyLimits(prepared);
    const sampler = resultOf(bandSampler(prepared, 1));
    const places = new Float64Array(sampler.unknowns.length);
    let compared = 0;
    for (const service of services) {
      const nominal = sampler.nominal[service];
      if (!nominal) continue;
      const course = dutyCourse(coupled, service, limits, nominal);
      for (let n = 0; n < samples; n += 1) {
        const sample = sampler.draw(n, places);
        const state = cycleAt(sample, service, design.service.transmitShare, nominal.guess);
        const found = sampleDuty(sample, service, limits, course, state.ok ? state.value : null);
        const searched = safeShare((share) => cycleAt(sample, service, share, nominal.guess), limits, false);
        // The tolerance of the search and what the loosely settled cycle adds to it.
        if (searched.ok) expect(Math.abs(found! - searched.value.share)).toBeLessThan(2e-3);
        compared += searched.ok ? 1 : 0;
      }
    }
    expect(compared).toBeGreaterThan(samples / 2);
  });
});
