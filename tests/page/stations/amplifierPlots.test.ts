import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { amplifierCurves, solve } from '../../../src/engine/index.ts';
import { deratingPlot, mismatchPlot, outputPlot } from '../../../src/page/stations/amplifierPlots.ts';
import { plainSpaces } from '../support.tsx';

const design = examples[0]!.design;
const curves = amplifierCurves(design);

describe('the plots of the final', () => {
  it('mark the hottest amplitude and write each series in its own unit', () => {
    if (!curves.output.ok) throw new Error('no curve');
    const { data, finding } = outputPlot(curves.output.value);
    expect(data.marks).toHaveLength(1);
    expect(data.series.map((series) => series.key)).toEqual(['supply', 'output', 'heat', 'efficiency']);
    const efficiency = data.series.at(-1)!;
    const last = efficiency.values.at(-1)!;
    expect(plainSpaces(efficiency.write!(last))).toBe('55 %');
    expect(plainSpaces(finding)).toMatch(/Hottest at \d+ % of the amplitude: 56\.\d W/);
    for (const series of data.series)
      for (const value of series.values) expect(value! <= data.yRange[1] && value! >= 0).toBe(true);
  });

  it('show heat against SWR, and where the design stands once it is off', () => {
    if (!curves.mismatch.ok) throw new Error('no curve');
    expect(mismatchPlot(curves.mismatch.value, solve(design)).data.marks).toEqual([]);
    const off = { ...design, amplifier: { ...design.amplifier, swr: 3 } };
    const found = amplifierCurves(off).mismatch;
    if (!found.ok) throw new Error('no curve');
    const { data, start } = mismatchPlot(found.value, solve(off));
    expect(data.marks[0]?.x).toBe(3);
    expect(data.x[start]).toBeCloseTo(3, 9);
    expect(data.series[0]!.values[start]).toBeCloseTo(data.marks[0]!.y!, 9);
  });

  it('put every service on the derating line', () => {
    if (!curves.derating.ok) throw new Error('no curve');
    const { data, finding } = deratingPlot(curves.derating.value);
    expect(data.marks).toHaveLength(3);
    expect(plainSpaces(finding)).toMatch(/key-down 28\.\d W with the case at \d+ °C/);
    expect(data.xRange).toEqual([data.x[0], data.x.at(-1)]);
  });
});
