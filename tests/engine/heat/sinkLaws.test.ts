import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { type FinGeometry, prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import type { Mounting } from '../../../src/engine/heat/orientation.ts';
import type { PinGeometry } from '../../../src/engine/heat/pins.ts';
import {
  finLaws,
  panelLaws,
  pinLaws,
  type SinkLaws,
  usualFilmUncertainty,
} from '../../../src/engine/heat/sinkLaws.ts';
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

const conditions = { pressure: standardPressure, filmFactor: 1, channelFactor: 1, gravityShare: 1 };

const fins: FinGeometry = {
  width: 0.1,
  length: 0.15,
  baseThickness: 0.005,
  finCount: 10,
  finHeight: 0.025,
  finThickness: 0.002,
  conductivity: 200,
  emissivity: 0.8,
  backExposed: false,
};
const pins: PinGeometry = {
  width: 0.1,
  length: 0.15,
  baseThickness: 0.005,
  section: 'round',
  pinThickness: 0.003,
  pinHeight: 0.025,
  columns: 9,
  rows: 14,
  conductivity: 200,
  emissivity: 0.8,
  backExposed: false,
};
const panel = {
  width: 0.1,
  length: 0.15,
  baseThickness: 0.003,
  emissivity: 0.8,
  conductivity: 200,
  backExposed: false,
};

const kinds = ['upright', 'crosswise', 'finsUp', 'finsDown'] as const;
type Kind = (typeof kinds)[number];
const mountingOf = (kind: Kind): Mounting => ({ kind });
const shapes: readonly (readonly [string, (kind: Kind) => SinkLaws])[] = [
  ['fins', (kind) => finLaws(prepareFinArray(fins), mountingOf(kind), conditions)],
  ['pins', (kind) => pinLaws(pins, mountingOf(kind), conditions)],
  ['panel', (kind) => panelLaws(panel, mountingOf(kind), conditions)],
];

describe.each(shapes)('laws of %s', (_, lawsOf) => {
  it.each(kinds)(
    '%s: the heat is the smallest of its branches, the detail adds up, hotter is more',
    (kind) => {
      const laws = lawsOf(kind);
      fc.assert(
        fc.property(between(0.1, 250), between(240, 340), (rise, air) => {
          const heat = laws.heat(air + rise, air);
          expectClose(heat, Math.min(...laws.branches.map((branch) => branch(air + rise, air))), 1e-9);
          const detail = laws.detail(air + rise, air, air);
          expectClose(detail.total, heat, 1e-9);
          expectClose(detail.convection + detail.radiation, detail.total, 1e-9);
          expect(laws.heat(air + 1.05 * rise, air)).toBeGreaterThan(heat);
        }),
      );
      expect(Math.abs(laws.heat(300, 300))).toBeLessThan(1e-12);
    },
  );

  it('is no better lying or hanging than upright, hanging the worst, and no surer', () => {
    const heat = (kind: Kind) => lawsOf(kind).heat(348.15, 298.15);
    expect(heat('finsDown')).toBeLessThan(heat('finsUp'));
    expect(lawsOf('finsDown').uncertainty).toBeGreaterThanOrEqual(lawsOf('upright').uncertainty);
    expect(lawsOf('upright').uncertainty).toBeGreaterThanOrEqual(usualFilmUncertainty);
  });

  it('keeps its plate and its surface however it stands', () => {
    for (const kind of kinds) {
      const laws = lawsOf(kind);
      expectClose(laws.plateArea, 0.1 * 0.15, 1e-12);
      expect(laws.surfaceArea).toBeGreaterThanOrEqual(laws.plateArea);
    }
  });
});

describe('pins that do not stand upright', () => {
  const heat = (kind: Kind, geometry = pins) => pinLaws(geometry, mountingOf(kind), conditions);

  it('on their side are the same field with columns and rows swapped', () => {
    const swapped = {
      ...pins,
      width: pins.length,
      length: pins.width,
      columns: pins.rows,
      rows: pins.columns,
    };
    expectClose(heat('crosswise').heat(350, 300), heat('upright', swapped).heat(350, 300), 1e-12);
    const square = { ...pins, length: 0.1, columns: 10, rows: 10 };
    expectClose(heat('crosswise', square).heat(350, 300), heat('upright', square).heat(350, 300), 1e-12);
  });

  it('level, convect a stated share of the field upright, radiate alike, and say that it is a guess', () => {
    const of = (kind: Kind) => heat(kind).detail(348.15, 298.15, 298.15);
    // A worse film gives better pin efficiency, so the share of the heat is a little more than that of the film.
    expectClose(of('finsUp').convection / of('upright').convection, 0.76, 0.03);
    expectClose(of('finsDown').convection / of('upright').convection, 0.385, 0.04);
    expectClose(of('finsUp').radiation, of('upright').radiation, 0.03);
    for (const kind of ['finsUp', 'finsDown'] as const) {
      expect(heat(kind).notes.map(({ key }) => key)).toContain('pinsLevel');
      expect(heat(kind).uncertainty).toBeGreaterThan(heat('upright').uncertainty);
    }
  });
});
