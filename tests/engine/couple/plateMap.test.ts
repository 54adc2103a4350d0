import { describe, expect, it } from 'vitest';
import { plateMap, suggestedPlaces } from '../../../src/engine/couple/plateMap.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { solve } from '../../../src/engine/couple/solve.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

const station = exampleOf('field-station-60w');
const warmed = change(station, { converter: { heatTo: 'amplifierSink' } });
const average = (values: ArrayLike<number>) =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;

describe('the plate map', () => {
  const map = resultOf(plateMap(warmed, 'keyDown'));

  it('agrees with the heat path: plate under the hottest device, and the plate’s mean', () => {
    const { heatPath } = solve(warmed);
    const under = heatPath.keyDown.find((node) => node.key === 'plateUnderDevice')!.peak;
    const devices = map.parts.filter((part) => part.key === 'device');
    expect(Math.max(...devices.map((part) => part.mean))).toBeCloseTo(under, 9);
    expect(map.plateMean).toBeCloseTo(heatPath.keyDown.find((node) => node.key === 'plate')!.peak, 1);
  });

  it('has the mean of the heated face a plate’s thickness of conduction above the cooled one', () => {
    const heat = map.parts.reduce((sum, part) => sum + part.heat, 0);
    const { width, length, baseThickness } = warmed.sink;
    const across = (heat * baseThickness) / (200 * width * length);
    expect(average(map.temperature) - map.plateMean).toBeCloseTo(across, 2);
  });

  it('has each part’s peak above its mean and within the scale', () => {
    for (const part of map.parts) {
      expect(part.peak).toBeGreaterThanOrEqual(part.mean - 1e-9);
      expect(part.peak).toBeLessThanOrEqual(map.highest);
      expect(part.mean).toBeGreaterThan(map.lowest);
    }
    expect(map.parts.at(-1)).toMatchObject({ key: 'converter', label: 'the converter' });
    expect(map.parts.at(-1)!.heat).toBeGreaterThan(1);
  });

  it('is symmetric for devices placed evenly', () => {
    const even = resultOf(plateMap(station, 'cw', 40, 30));
    for (let j = 0; j < 30; j += 1) {
      for (let i = 0; i < 20; i += 1) {
        expect(even.temperature[j * 40 + i]).toBeCloseTo(even.temperature[j * 40 + 39 - i]!, 9);
      }
    }
  });

  it('shows a part moved into a corner hotter there, and the junction with it', () => {
    const cornered = change(station, {
      device: {
        places: [
          { x: station.device.contactWidth / 2, y: station.device.contactLength / 2 },
          { x: station.sink.width / 2, y: station.sink.length / 2 },
        ],
      },
    });
    const [corner, middle] = resultOf(plateMap(cornered, 'keyDown')).parts;
    expect(corner!.mean).toBeGreaterThan(middle!.mean);
    const junction = (design: typeof station) => solve(design).values['keyDown.junctionPeak']!;
    expect(junction(cornered)).toBeGreaterThan(junction(station));
  });
});

describe('a converter designed from parts on the same plate', () => {
  const designed = change(station, { converter: { kind: 'designed', heatTo: 'amplifierSink' } });

  it('stands there as switch and rectifier, each with its own heat', () => {
    const map = resultOf(plateMap(designed, 'keyDown'));
    expect(map.parts.map((part) => part.key)).toEqual(['device', 'device', 'switch', 'rectifier']);
    const [, , first, second] = map.parts;
    const { electrics } = prepare(designed);
    const { switchLoss, rectifierLoss } = resultOf(electrics).feed.designed!;
    expect(first!.heat / second!.heat).toBeCloseTo(switchLoss / rectifierLoss, 9);
  });

  it('is hotter with its switch in a corner than in the open', () => {
    const { width, length } = designed.sink;
    const face = designed.sink.switchPart;
    const junctionAt = (x: number, y: number) =>
      solve(change(designed, { sink: { switchPart: { ...face, x, y } } })).values['keyDown.switchJunction']!;
    expect(junctionAt(face.width / 2, face.length / 2)).toBeGreaterThan(junctionAt(width / 2, 0.25 * length));
  });
});

describe('suggested places', () => {
  const heaped = change(warmed, {
    device: {
      places: [
        { x: 0.02, y: 0.03 },
        { x: 0.02 + 1.1 * warmed.device.contactWidth, y: 0.03 },
      ],
    },
  });

  it('cool the hottest junction, keep all parts on the plate and apart', () => {
    const found = resultOf(suggestedPlaces(heaped, 'keyDown'));
    expect(found.places).toHaveLength(3);
    expect(found.saved).toBeGreaterThan(0.5);
    const converterPart = { ...heaped.sink.converterPart, ...found.places[2]! };
    const placed = change(heaped, {
      device: { places: found.places.slice(0, 2).map(({ x, y }) => ({ x, y })) },
      sink: { converterPart },
    });
    const before = solve(heaped).values['keyDown.junctionPeak']!;
    expect(solve(placed).values['keyDown.junctionPeak']).toBeCloseTo(before - found.saved, 6);
  });

  it('are found even when parts overlap now', () => {
    const wrong = change(station, {
      device: {
        places: [
          { x: 0.03, y: 0.03 },
          { x: 0.03, y: 0.03 },
        ],
      },
    });
    expect(solve(wrong).reasons.map((reason) => reason.key)).toContain('partsOverlap');
    expect(suggestedPlaces(wrong, 'keyDown').ok).toBe(true);
  });
});
