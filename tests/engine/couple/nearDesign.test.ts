import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { services } from '../../../shared/solution.ts';
import { amplifierCurves, solve, sweep, warmUp } from '../../../src/engine/index.ts';
import { nearDesign } from './designArbitrary.ts';

function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => notFinite(child, `${path}.${key}`));
}

describe('examples with a few fields changed to anything', () => {
  it('have finite figures and curves, close their energy, and name what cannot be computed', () => {
    let answered = 0;
    fc.assert(
      fc.property(nearDesign, (design) => {
        const solution = solve(design);
        expect(notFinite(solution)).toEqual([]);
        expect(notFinite(amplifierCurves(design))).toEqual([]);
        for (const service of services) {
          const result = solution.services[service];
          if (!result.ok) {
            expect(result.reason.sentence.length).toBeGreaterThan(15);
            continue;
          }
          answered += 1;
          const v = (key: string) => solution.values[`${service}.${key}`] ?? Number.NaN;
          const heat = v('dcPowerOver') - v('rfPowerOver') + v('drivePowerOver');
          expect(Math.abs(v('deviceHeatOver') - heat)).toBeLessThan(1e-9 * (v('dcPowerOver') + 1e-6));
          expect(v('deviceHeatOver')).toBeGreaterThanOrEqual(-1e-9 * (v('dcPowerOver') + 1));
          expect(Math.abs(v('rfPowerOver') - v('antennaPowerOver') - v('networkHeatOver'))).toBeLessThan(
            1e-9 * (v('rfPowerOver') + 1e-6),
          );
          expect(notFinite(sweep(design, service, 4))).toEqual([]);
        }
        expect(notFinite(warmUp(design, 'keyDown'))).toEqual([]);
      }),
      { numRuns: 120, seed: 11 },
    );
    expect(answered).toBeGreaterThan(100);
  });
});
