import { describe, expect, it } from 'vitest';
import { closedLine, fineSide } from '../../../src/page/answers/mapLines.ts';

const y = { path: 'amplifier.pep', from: 0, to: 100, label: 'Output power', dimension: 'power' } as const;
const line = (fineBelow: readonly (boolean | null)[], crossings: readonly (readonly number[])[]) => ({
  service: 'keyDown' as const,
  name: 'key-down',
  fineBelow,
  crossings,
});

describe('a limit line over two given values', () => {
  it.each([
    ['has a limit in every column', [true, true], [[40], [30]], [[40], [30]], []],
    ['runs up where the next column is fine all the way', [true, true], [[40], []], [[40], [100]], [100]],
    ['runs up where the column before was fine all the way', [true, true], [[], [40]], [[100], [40]], [100]],
    ['runs down where the next column is beyond all the way', [true, false], [[40], []], [[40], [0]], [0]],
    ['runs from below to above between two columns', [true, false], [[], []], [[0], [100]], [0, 100]],
    [
      'turns back up between two columns',
      [true, true],
      [[40], [45, 60]],
      [
        [40, 100],
        [45, 60],
      ],
      [100],
    ],
    [
      'closes where its two limits meet',
      [true, true],
      [[40, 60], []],
      [
        [40, 60],
        [50, 50],
      ],
      [50],
    ],
    ['stays open where nothing can be computed', [true, null], [[40], []], [[40], []], []],
    ['stays open where a column has many limits', [true, true], [[20, 40, 60], []], [[20, 40, 60], []], []],
  ])('%s', (_case, fineBelow, crossings, heights, ends) => {
    const closed = closedLine(line(fineBelow, crossings), { y });
    expect(closed.heights).toEqual(heights);
    expect([...closed.ends].sort((one, other) => one - other)).toEqual(ends);
  });

  it.each([
    [[true, true, true], 'below'],
    [[false, null, false], 'above'],
    [[true, true, false], 'below and to the left of'],
    [[false, true], 'below and to the right of'],
    [[true, false, true], undefined],
    [[null], undefined],
  ])('fine at the lowest %s: within the limit %s', (fineBelow, side) => {
    expect(fineSide(line(fineBelow, []))).toBe(side);
  });
});
