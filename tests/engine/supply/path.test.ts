import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conductorBySize } from '../../../src/engine/supply/conductor.ts';
import { type PathElement, pathDrop, pathHeat, sumPath } from '../../../src/engine/supply/path.ts';
import { expectClose } from '../closeTo.ts';

const elements: readonly PathElement[] = [
  { kind: 'wire', conductor: conductorBySize('4 mm2'), length: 1.5, temperature: 293.15 },
  { kind: 'fuse', fuse: 'bladeMedium', rating: 30 },
  { kind: 'part', part: 'fuseHolder', count: 1 },
  { kind: 'connector', connector: 'bullet35', poles: 2, aged: false },
  { kind: 'part', part: 'crimpedJoint', count: 4 },
  { kind: 'resistance', name: 'switch', resistance: 0.003 },
  { kind: 'diode', drop: 0.45, resistance: 0.005 },
];

describe('path of the current', () => {
  const sum = sumPath(elements);

  it('adds its elements, there and back', () => {
    const known = 3 * 4.95e-3 + 0.0018 + 0.002 + 2 * 0.00055 + 4 * 0.0005 + 0.003 + 0.005;
    expectClose(sum.resistance, known, 1e-12);
    expect(sum.seriesDrop).toBe(0.45);
    expect(sum.steps.map((step) => step.name)).toEqual([
      '4 mm², there and back',
      '30 A fuse',
      'fuse holder',
      'moulded two-pole bullet, 3.5 mm gold',
      'crimped ring or screw joint',
      'switch',
      'series diode',
    ]);
  });

  it('heat of the steps is drop times current', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (current) => {
        const heat = pathHeat(sum, current).reduce((total, one) => total + one, 0);
        return Math.abs(heat - current * pathDrop(sum, current)) < 1e-9 * heat;
      }),
    );
  });

  it('an old connector and a fuse without figures are counted too', () => {
    const old = sumPath([{ kind: 'connector', connector: 'bullet35', poles: 2, aged: true }]);
    expectClose(old.resistance, 4 * 2 * 0.00055, 1e-12);
    const glass = sumPath([{ kind: 'fuse', fuse: 'glassLag', rating: 5 }]);
    expectClose(glass.resistance, 0.02, 1e-12);
  });

  it('is nothing without elements or current', () => {
    expect(sumPath([])).toEqual({ steps: [], resistance: 0, seriesDrop: 0 });
    expect(pathDrop(sum, 0)).toBe(0);
  });
});
