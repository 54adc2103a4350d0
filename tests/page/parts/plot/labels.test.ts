import { describe, expect, it } from 'vitest';
import { type Drawn, freePlace, placeLabels, placesOf } from '../../../../src/page/parts/plot/labels.ts';

/** Labels 50 wide and 10 high beside an upright line at x, in rows from y = 100 upwards, in a drawing 300 wide. */
const label = (x: number, top = 0, rows = 8) =>
  placesOf(
    rows,
    (row, side) => {
      const left = side === 'left' ? x - 55 : x + 5;
      return { left, right: left + 50, top: 90 - 10 * row, bottom: 100 - 10 * row };
    },
    'right',
    [0, 300],
    top,
  );
const nothing: Drawn = { dots: [], lines: [] };
const placed = (labels: Parameters<typeof placeLabels>[0], drawn: Drawn) =>
  placeLabels(labels, drawn).map(({ row, side }) => `${side} ${row}`);

describe('labels of a plot', () => {
  it('stand at the axis, above each other where they would cover one another', () => {
    expect(placed([label(0), label(10), label(200)], nothing)).toEqual(['right 0', 'right 1', 'right 0']);
  });

  it.each<[string, Drawn, string]>([
    ['a dot', { dots: [[20, 95]], lines: [] }, 'right 1'],
    [
      'a level line',
      {
        dots: [],
        lines: [
          [
            [-900, 95],
            [900, 95],
          ],
        ],
      },
      'right 1',
    ],
    [
      'an upright step of a line',
      {
        dots: [],
        lines: [
          [
            [25, 85],
            [25, 110],
          ],
        ],
      },
      'right 2',
    ],
    ['no line where it has a gap', { dots: [], lines: [[[-900, 95], null, [900, 95]]] }, 'right 0'],
    [
      'no line that passes beside',
      {
        dots: [],
        lines: [
          [
            [70, 0],
            [70, 200],
          ],
        ],
      },
      'right 0',
    ],
    [
      'no slope that passes above',
      {
        dots: [],
        lines: [
          [
            [0, 0],
            [60, 60],
          ],
        ],
      },
      'right 0',
    ],
  ])('keep off %s', (_what, drawn, place) => {
    expect(placed([label(0, 0, 4)], drawn)).toEqual([place]);
  });

  it('change the side rather than stray', () => {
    const drawn = {
      dots: [],
      lines: [
        [
          [140, -900],
          [140, 900],
        ] as const,
      ],
    };
    expect(placed([label(100)], drawn)).toEqual(['left 0']);
  });

  it('do not leave their mark for a free place: over a line near it they are still read', () => {
    const drawn = {
      dots: [],
      lines: [
        [
          [20, 50],
          [20, 900],
        ] as const,
      ],
    };
    expect(placed([label(0, 80)], drawn)).toEqual(['right 0']);
  });

  it('take the first of several places where all are covered', () => {
    const places = label(0);
    expect(
      freePlace(places, {
        dots: [],
        lines: [
          [
            [25, -900],
            [25, 900],
          ],
        ],
      }),
    ).toBe(places[0]);
    expect(freePlace(places, { dots: [[20, 95]], lines: [] })).toBe(places[1]);
  });
});
