import { describe, expect, it } from 'vitest';
import { fieldAt } from '../../../shared/design/leaves.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { causePaths, causeStation } from '../../../src/page/state/reasonPlaces.ts';
import { AmplifierStation } from '../../../src/page/stations/AmplifierStation.tsx';
import { ConverterStation } from '../../../src/page/stations/ConverterStation.tsx';
import { DeviceStation, SinkStation } from '../../../src/page/stations/HeatStations.tsx';
import { SourceStation } from '../../../src/page/stations/SourceStation.tsx';
import { change, exampleOf } from '../../engine/couple/designs.ts';
import { plainSpaces, renderInSheet } from '../support.tsx';

const field = exampleOf('field-station-60w');

/** Where the reason must stand, what it says, and a field it leads to. */
const cases: readonly (readonly [string, Design, string, RegExp, string | null])[] = [
  ['60 fins', change(field, { sink: { finCount: 60 } }), 'sink', /fins do not fit/, 'sink.finCount'],
  [
    'a long contact face',
    change(field, { device: { contactLength: 0.1, contactWidth: 0.09 } }),
    'devices',
    /fit on a plate|over the edge/,
    'device.contactLength',
  ],
  [
    'thin long wires',
    change(field, { wiring: { length: 30 }, source: { internalResistance: 1 } }),
    'source',
    /at most/,
    'source.internalResistance',
  ],
  [
    'a ratio that cannot make the power',
    change(field, { amplifier: { turnsRatio: 1 } }),
    'amplifier',
    /turns ratio/,
    'amplifier.turnsRatio',
  ],
];

describe('a station that finds nothing', () => {
  it.each(cases)(
    '%s: its reason stands where it is found, with a way to the field',
    (...[, design, at, words, path]) => {
      const { container } = renderInSheet(
        () => (
          <>
            <SourceStation number={1} />
            <ConverterStation number={2} />
            <AmplifierStation number={3} />
            <DeviceStation number={4} />
            <SinkStation number={5} />
          </>
        ),
        design,
      );
      const told = [...container.querySelectorAll('.found-column > .reason')];
      expect(told.map((each) => each.closest('.station')?.id)).toEqual([at]);
      expect(plainSpaces(told[0]?.textContent)).toMatch(words);
      const ways = [...told[0]!.querySelectorAll('a')].map((a) => a.getAttribute('href'));
      expect(ways).toContain(`#field-${path?.replaceAll('.', '-')}`);
      for (const way of ways) expect(container.querySelector(way!)).not.toBeNull();
    },
  );

  it('leads to fields that there are', () => {
    for (const path of causePaths) expect(fieldAt(path), path).toBeDefined();
    expect(causeStation('efficiency above the class')).toBe('amplifier');
  });
});
