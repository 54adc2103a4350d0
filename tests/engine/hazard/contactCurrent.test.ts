import { describe, expect, it } from 'vitest';
import { brushBurn, contactLevel, powerAtLevel } from '../../../src/engine/hazard/contactCurrent.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

describe('contact current (IEEE C95.1-2345-2014 as tabulated by Tell and Tell, 2018)', () => {
  it.each([
    [1.8, 'unrestricted', 'touch', 16.7],
    [3, 'unrestricted', 'touch', 16.7],
    [29.9999, 'unrestricted', 'touch', 33.3],
    [50, 'unrestricted', 'touch', 33.4],
    [1.8, 'restricted', 'touch', 50],
    [29.9999, 'restricted', 'touch', 99.8],
    [1.8, 'restricted', 'grasp', 100],
    [29.9999, 'restricted', 'grasp', 199.5],
    [50, 'restricted', 'grasp', 200],
  ] as const)('%f MHz, %s, %s: %f mA', (megahertz, place, contact, milliamperes) => {
    expectClose(resultOf(contactLevel(megahertz * 1e6, place, contact)) * 1000, milliamperes, 1e-3);
  });

  it('14 mW into 50 Ω already pass the touch level', () => {
    expectClose(powerAtLevel(resultOf(contactLevel(1.9e6)), 50), 0.014, 0.01);
    expect(brushBurn).toBe(0.05);
  });

  it('names what is not listed', () => {
    const frequency = contactLevel(200e6);
    expect(frequency.ok ? '' : frequency.reason.key).toBe('contactFrequency');
    const grasp = contactLevel(7e6, 'unrestricted', 'grasp');
    expect(grasp.ok ? '' : grasp.reason.key).toBe('noGraspLevel');
  });
});
