import fc from 'fast-check';
import { describe, it } from 'vitest';
import {
  forwardCurrent,
  forwardPeakVoltage,
  matchedCurrent,
  matchedPeakVoltage,
  netCurrent,
  netPeakVoltage,
} from '../../../src/engine/hazard/outputVoltage.ts';
import { expectClose } from '../closeTo.ts';

describe('peak voltage at the output, 50 Ω', () => {
  it.each([
    ['net', 100, 1, 100],
    ['net', 100, 3, 173.2],
    ['net', 100, 10, 316],
    ['net', 1500, 3, 670.8],
    ['forward', 100, 1, 100],
    ['forward', 100, 3, 150],
    ['forward', 100, Number.POSITIVE_INFINITY, 200],
  ] as const)('%s power %f W at a standing-wave ratio of %f: %f V', (kind, power, swr, volts) => {
    const found = kind === 'net' ? netPeakVoltage(power, 50, swr) : forwardPeakVoltage(power, 50, swr);
    expectClose(found, volts, 1e-3);
  });

  it('100 W into the 5 kΩ of a wire end: 1000 V', () => {
    expectClose(matchedPeakVoltage(100, 5000), 1000, 1e-12);
  });

  it('the two forms agree when net power is forward less reflected', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 50, noNaN: true }),
        (forward, swr) => {
          const reflected = ((swr - 1) / (swr + 1)) ** 2;
          const net = netPeakVoltage(forward * (1 - reflected), 50, swr);
          return Math.abs(net / forwardPeakVoltage(forward, 50, swr) - 1) < 1e-9;
        },
      ),
    );
  });
});

describe('current', () => {
  it('100 W are 1.41 A, 1 W is 141 mA, and a mismatch raises it', () => {
    expectClose(matchedCurrent(100, 50), Math.SQRT2, 1e-12);
    expectClose(matchedCurrent(1, 50), 0.1414, 1e-3);
    expectClose(netCurrent(100, 50, 4), 2 * Math.SQRT2, 1e-12);
    expectClose(forwardCurrent(100, 50, 3), 1.5 * Math.SQRT2, 1e-12);
  });
});
