import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { partLayout } from '../../../shared/plateLayout.ts';
import {
  fineStep,
  hasSpots,
  placeStep,
  snapped,
  withoutSpots,
  withPartAt,
  withPartTurned,
} from '../../../src/page/state/places.ts';

/** A plate of 100 × 80 mm with two devices of 10 × 15 mm. */
const design = startDesign;
const layout = partLayout(design);
const parts = layout.ok ? layout.value : [];
const first = parts[0]!;

describe('places of parts', () => {
  it('snap to the millimetre, finely to a tenth', () => {
    expect(snapped(design, first, { x: 0.02534, y: 0.0406 }, placeStep)).toEqual({ x: 0.025, y: 0.041 });
    expect(snapped(design, first, { x: 0.02534, y: 0.0406 }, fineStep)).toEqual({ x: 0.0253, y: 0.0406 });
  });

  it('stay on the plate', () => {
    expect(snapped(design, first, { x: -1, y: 9 }, placeStep)).toEqual({ x: 0.005, y: 0.08 - 0.0075 });
    const huge = { ...first, source: { ...first.source, width: 0.2 } };
    expect(snapped(design, huge, { x: 0.02, y: 0.04 }, placeStep).x).toBe(0.05);
  });

  it('turn: the sides of a face change places, twice is as before', () => {
    const turned = withPartTurned(design, 'device');
    const after = partLayout(turned);
    const { source } = after.ok ? after.value[0]! : first;
    expect([source.width, source.length]).toEqual([first.source.length, first.source.width]);
    expect(withPartTurned(turned, 'device')).toEqual(design);
    const converter = withPartTurned(design, 'converter').sink.converterPart;
    expect([converter.width, converter.length]).toEqual([
      design.sink.converterPart.length,
      design.sink.converterPart.width,
    ]);
  });

  it('are written down for all parts when the first is moved, and forgotten together', () => {
    expect(hasSpots(design)).toBe(false);
    const moved = withPartAt(design, parts, 0, { x: 0.03, y: 0.03 });
    expect(moved.device.places).toEqual([
      { x: 0.03, y: 0.03 },
      { x: parts[1]!.source.x, y: parts[1]!.source.y },
    ]);
    expect(hasSpots(moved)).toBe(true);
    expect(withoutSpots(moved)).toEqual(design);
  });
});
