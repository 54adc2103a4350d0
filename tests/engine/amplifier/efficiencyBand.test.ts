import { describe, expect, it } from 'vitest';
import { type AmplifierClass, efficiencyBand } from '../../../src/engine/amplifier/efficiencyBand.ts';
import { calibrateLinearStage, type LinearClass } from '../../../src/engine/amplifier/linearStage.ts';
import { referenceMeasurement } from './referenceStage.ts';

describe('efficiency bands', () => {
  it.each(['A', 'AB', 'B', 'C', 'D', 'E', 'F'] as AmplifierClass[])(
    'of class %s lie in order below the ideal',
    (one) => {
      const { ideal, low, high, start, halfWidth } = efficiencyBand(one);
      expect(low).toBeLessThan(start);
      expect(start).toBeLessThan(high);
      expect(high).toBeLessThan(ideal);
      expect(start + halfWidth).toBeLessThan(ideal);
    },
  );

  it.each(['A', 'AB', 'B', 'C'] as LinearClass[])(
    'of class %s can be calibrated over its whole width',
    (one) => {
      const { low, high } = efficiencyBand(one);
      for (const efficiency of [low, high]) {
        const conductionAngle = (2 * Math.PI) / 3;
        expect(
          calibrateLinearStage({ ...referenceMeasurement, class: one, efficiency, conductionAngle }).ok,
        ).toBe(true);
      }
    },
  );
});
