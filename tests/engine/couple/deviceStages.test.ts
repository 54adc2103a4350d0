import { describe, expect, it } from 'vitest';
import type { DeviceInput } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { deviceStages } from '../../../src/engine/couple/deviceStages.ts';
import { ladderImpedance, ladderResistance } from '../../../src/engine/heat/deviceLadder.ts';
import { cauerOf } from '../../../src/engine/heat/fosterCauer.ts';
import { resultOf } from '../resultOf.ts';

const stagesOf = (edits: Partial<DeviceInput>) => resultOf(deviceStages({ ...startDesign.device, ...edits }));
const times = [1e-4, 1e-3, 1e-2, 0.1, 1, 10];

const fosterStages = [
  { resistance: 0.3, timeConstant: 0.001 },
  { resistance: 0.5, timeConstant: 0.03 },
  { resistance: 0.4, timeConstant: 0.5 },
];

describe('junction to case, known in four ways', () => {
  it('is one stage for one value', () => {
    expect(stagesOf({ ladder: 'value', junctionToCase: 1.2, junctionTime: 0.05 })).toEqual([
      { resistance: 1.2, timeConstant: 0.05 },
    ]);
  });

  it('answers alike for a curve-fit ladder and the physical ladder of the same curve', () => {
    const physical = stagesOf({ ladder: 'cauer', cauerStages: resultOf(cauerOf(fosterStages)) });
    for (const time of times) {
      expect(ladderImpedance(physical, time)).toBeCloseTo(ladderImpedance(fosterStages, time), 9);
    }
  });

  it('follows points read off such a curve within 3 % and ends at the stated resistance', () => {
    const impedancePoints = [3e-4, 1e-3, 3e-3, 0.01, 0.03, 0.1, 0.3, 1].map((time) => ({
      time,
      impedance: ladderImpedance(fosterStages, time),
    }));
    const fitted = stagesOf({ ladder: 'points', junctionToCase: 1.2, impedancePoints });
    expect(ladderResistance(fitted)).toBeCloseTo(1.2, 9);
    for (const { time, impedance } of impedancePoints) {
      expect(Math.abs(ladderImpedance(fitted, time) / impedance - 1)).toBeLessThan(0.03);
    }
  });

  it('takes the points in any order and names points that are no such curve', () => {
    const points = [
      { time: 0.1, impedance: 1 },
      { time: 0.001, impedance: 0.3 },
    ];
    expect(deviceStages({ ...startDesign.device, ladder: 'points', impedancePoints: points }).ok).toBe(true);
    const above = deviceStages({
      ...startDesign.device,
      ladder: 'points',
      junctionToCase: 0.5,
      impedancePoints: points,
    });
    expect(above.ok ? 'computed' : above.reason.key).toBe('impedancePoints');
  });
});
