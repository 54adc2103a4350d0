import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import table from '../../../reference-data/touchTemperature.json';
import {
  burnThreshold,
  pessimisticTouch,
  type TouchMaterial,
  timeToBurn,
  touchLevel,
  touchLimit,
} from '../../../src/engine/hazard/touch.ts';
import { expectClose } from '../closeTo.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const materials = Object.keys(table.materials) as TouchMaterial[];
const rows = materials.flatMap((material) =>
  table.time.map((time, index) => [material, time, table.materials[material][index] ?? 0] as const),
);
const material = fc.constantFrom(...materials);
const time = fc.double({ min: 0.01, max: 1e5, noNaN: true });

describe('burn threshold (ISO 13732-1, values partly from memory)', () => {
  it.each(rows)('%s, %i s: %i °C', (kind, seconds, celsius) => {
    expectClose(burnThreshold(kind, seconds), kelvin(celsius), 1e-12);
  });

  // Between points: straight over the logarithm of time.
  it.each([
    ['metal', 3, 60.2],
    ['metal', 5, 58.0],
    ['metal', 30, 52.5],
    ['metal', 300, 48.9],
    ['plastic', 5, 75.2],
    ['metal', 0.2, 65],
    ['metal', 1e6, 43],
  ] as const)('%s, %f s: %f °C', (kind, seconds, celsius) => {
    expect(Math.abs(burnThreshold(kind, seconds) - kelvin(celsius))).toBeLessThanOrEqual(0.05);
  });

  it('never rises with contact time, and metal is never above the other materials', () => {
    fc.assert(
      fc.property(material, time, fc.double({ min: 1, max: 10, noNaN: true }), (kind, seconds, longer) => {
        const threshold = burnThreshold(kind, seconds);
        return (
          burnThreshold(kind, seconds * longer) <= threshold && burnThreshold('metal', seconds) <= threshold
        );
      }),
    );
  });
});

describe('time to the burn threshold', () => {
  it('is the inverse of the threshold', () => {
    fc.assert(
      fc.property(material, fc.double({ min: 1.01, max: 28000, noNaN: true }), (kind, seconds) => {
        const back = timeToBurn(kind, burnThreshold(kind, seconds));
        return back !== null && Math.abs(back - seconds) < 1e-6 * seconds;
      }),
    );
  });

  it('never rises with temperature', () => {
    fc.assert(
      fc.property(
        material,
        fc.double({ min: 300, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (kind, kelvins, more) => {
          const first = timeToBurn(kind, kelvins) ?? Number.MAX_VALUE;
          const second = timeToBurn(kind, kelvins + more) ?? Number.MAX_VALUE;
          return second <= first;
        },
      ),
    );
  });

  it('is 1 s from the first row on and none below 43 °C', () => {
    expect(timeToBurn('metal', kelvin(65))).toBe(1);
    expect(timeToBurn('metal', kelvin(120))).toBe(1);
    expect(timeToBurn('metal', kelvin(42.9))).toBeNull();
  });
});

describe('how a temperature is spoken of', () => {
  it.each([
    [42.9, 'none', null],
    [43, 'note', 'note'],
    [47.9, 'note', 'note'],
    [48, 'minutes', 'caution'],
    [51, 'minute', 'caution'],
    [54.9, 'minute', 'caution'],
    [55, 'seconds', 'warning'],
    [64.9, 'seconds', 'warning'],
    [65, 'atOnce', 'danger'],
    [150, 'atOnce', 'danger'],
  ])('%f °C is "%s"', (celsius, key, severity) => {
    expect(touchLevel(kelvin(celsius))).toMatchObject({ key, severity });
  });

  it.each([
    ['plastic', 59, 'minutes'],
    ['plastic', 72, 'seconds'],
    ['plastic', 85, 'atOnce'],
    ['glass', 57, 'minute'],
    ['glass', 66, 'seconds'],
    ['glass', 80, 'atOnce'],
  ] as const)('%s at %f °C is "%s"', (surface, celsius, key) => {
    expect(touchLevel(kelvin(celsius), surface).key).toBe(key);
  });

  it('the row matches the time to burn', () => {
    fc.assert(
      fc.property(material, fc.double({ min: 43, max: 100, noNaN: true }), (surface, celsius) => {
        const seconds = timeToBurn(surface, kelvin(celsius)) ?? 1e9;
        const longest = { none: 1e9, note: 28801, minutes: 601, minute: 61, seconds: 10.1, atOnce: 1 };
        return seconds <= longest[touchLevel(kelvin(celsius), surface).key];
      }),
    );
  });
});

describe('limits and the pessimistic edge', () => {
  it.each([
    ['adults', 55],
    ['anyone', 51],
    ['carried', 48],
  ] as const)('%s: %i °C', (touchedBy, celsius) => {
    expectClose(touchLimit(touchedBy) ?? 0, kelvin(celsius), 1e-12);
  });

  it.each([
    ['adults', 'plastic', 71],
    ['anyone', 'plastic', 60],
    ['adults', 'glass', 66],
    ['anyone', 'glass', 56],
    ['carried', 'glass', 48],
  ] as const)('%s, %s: %i °C', (touchedBy, surface, celsius) => {
    expectClose(touchLimit(touchedBy, surface) ?? 0, kelvin(celsius), 1e-12);
  });

  it('nobody: none', () => {
    expect(touchLimit('nobody')).toBeNull();
    expect(touchLimit('nobody', 'plastic')).toBeNull();
  });

  it.each([
    [30, 25, 35],
    [58, 25, 63],
    [65, 25, 71],
    [20, 25, 25],
  ])('%f °C in air of %f °C may be %f °C', (celsius, air, edge) => {
    expectClose(pessimisticTouch(kelvin(celsius), kelvin(air)), kelvin(edge), 1e-12);
  });
});
