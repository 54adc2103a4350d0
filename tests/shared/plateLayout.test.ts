import { describe, expect, it } from 'vitest';
import type { Design } from '../../shared/design/schema.ts';
import { startDesign } from '../../shared/design/start.ts';
import { plateParts } from '../../shared/plateLayout.ts';
import { change, exampleOf } from '../engine/couple/designs.ts';
import { resultOf } from '../engine/resultOf.ts';

const reasonOf = (design: Design) => {
  const parts = plateParts(design);
  return parts.ok ? 'placed' : parts.reason;
};
/** A plate of 100 × 80 mm with two devices of 10 × 15 mm. */
const two = startDesign;
const onPlate = change(exampleOf('field-station-60w'), { converter: { heatTo: 'amplifierSink' } });

describe('parts on the plate', () => {
  it('stand evenly when no places are stored', () => {
    const parts = resultOf(plateParts(two));
    expect(parts.map(({ face }) => [face.x, face.y])).toEqual([
      [0.025, 0.04],
      [expect.closeTo(0.075), 0.04],
    ]);
  });

  it('stand where the design says', () => {
    const places = [
      { x: 0.02, y: 0.03 },
      { x: 0.06, y: 0.05 },
    ];
    const parts = resultOf(plateParts(change(two, { device: { places } })));
    expect(parts.map(({ face }) => ({ x: face.x, y: face.y }))).toEqual(places);
  });

  it('stand evenly, with a note, when places are stored for another number of devices', () => {
    const parts = plateParts(change(two, { device: { places: [{ x: 0.02, y: 0.03 }] } }));
    expect(parts.ok && parts.notes.map((note) => note.key)).toEqual(['placesForOtherCount']);
    expect(resultOf(parts)).toHaveLength(2);
  });

  it('are named when they reach over the edge or overlap', () => {
    const over = reasonOf(
      change(two, {
        device: {
          places: [
            { x: 0.02, y: 0.03 },
            { x: 0.098, y: 0.03 },
          ],
        },
      }),
    );
    expect(over).toMatchObject({
      key: 'partOffPlate',
      sentence: 'Device 2 reaches 3 mm over the edge of the plate.',
    });
    const on = reasonOf(
      change(two, {
        device: {
          places: [
            { x: 0.02, y: 0.03 },
            { x: 0.025, y: 0.03 },
          ],
        },
      }),
    );
    expect(on).toMatchObject({
      key: 'partsOverlap',
      sentence: 'Device 1 and device 2 overlap on the plate.',
    });
    expect(reasonOf(change(two, { device: { contactLength: 0.1 } }))).toMatchObject({
      key: 'devicesDoNotFit',
    });
  });

  it('count with the spreader under them, which must not be smaller than the device', () => {
    const spreader = change(two, { device: { spreader: true, spreaderWidth: 0.03, spreaderLength: 0.02 } });
    const [first] = resultOf(plateParts(spreader));
    expect(first?.source).toMatchObject({ width: 0.03, length: 0.02 });
    expect(first?.face).toMatchObject({ width: 0.01, length: 0.015 });
    const small = change(two, { device: { spreader: true, spreaderWidth: 0.005 } });
    expect(reasonOf(small)).toMatchObject({ key: 'spreaderTooSmall' });
  });

  it('include the converter whose heat goes into this sink, beside the devices', () => {
    const parts = resultOf(plateParts(onPlate));
    expect(parts.map((part) => part.key)).toEqual(['device', 'device', 'converter']);
    expect(resultOf(plateParts(exampleOf('field-station-60w')))).toHaveLength(2);
  });
});
