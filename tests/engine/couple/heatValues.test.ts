import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { solve } from '../../../src/engine/couple/solve.ts';
import { change, exampleOf } from './designs.ts';

const station = exampleOf('field-station-60w');
const fan = { fan: 'along', fanFlow: 0.02, fanPressure: 40, fanPath: 'duct' } as const;
const value = (design: Design, key: string) => solve(design).values[key] ?? Number.NaN;
const notesOf = (design: Design) => solve(design).notes.map((note) => note.key);

describe('a fan on the sink', () => {
  const blown = change(station, { sink: fan });

  it('shows beside its own figures what the sink does with the fan stopped', () => {
    const values = solve(blown).values;
    expect(values.ratingResistanceStill).toBeCloseTo(value(station, 'ratingResistance'), 9);
    expect(values['keyDown.junctionPeakStill']).toBeCloseTo(value(station, 'keyDown.junctionPeak'), 2);
    expect(values.ratingResistance!).toBeLessThan(values.ratingResistanceStill!);
    expect(values['keyDown.junctionPeak']!).toBeLessThan(values['keyDown.junctionPeakStill']!);
    expect(values.fanFlow!).toBeGreaterThan(0.001);
    expect(values.fanFlow!).toBeLessThan(0.02);
  });

  it('says so when a stopped fan lets a junction pass its limit', () => {
    expect(notesOf(change(blown, { service: { transmitShare: 1 } }))).toContain('fanStoppedHot');
    expect(notesOf(station)).not.toContain('fanStoppedHot');
  });

  it('is not spoken of without one', () => {
    expect(solve(station).values.ratingResistanceStill).toBeUndefined();
    expect(solve(station).values.fanFlow).toBeUndefined();
  });
});

describe('a weighed sink', () => {
  it('is compared with its drawing and the mismatch explained', () => {
    const drawn = value(station, 'sinkDrawnMass');
    const light = change(station, { sink: { mass: 0.7 * drawn } });
    expect(value(light, 'massRatio')).toBeCloseTo(0.7, 9);
    const said = solve(light).notes.find((note) => note.key === 'massDoubtful')?.sentence;
    expect(said).toMatch(/weighs 30 % lighter than its drawing.*Look for/);
    expect(notesOf(change(station, { sink: { mass: drawn } }))).not.toContain('massDoubtful');
  });
});

describe('what else warms the plate and the case', () => {
  it('a converter on the plate warms the devices, more so beside them than at the far end', () => {
    const { width, length } = station.sink;
    const face = { width: 0.02, length: 0.02 };
    const withConverterAt = (x: number, y: number) =>
      change(station, {
        converter: { heatTo: 'amplifierSink' },
        device: {
          places: [
            { x: 0.25 * width, y: 0.75 * length },
            { x: 0.5 * width, y: 0.75 * length },
          ],
        },
        sink: { converterPart: { ...face, x, y } },
      });
    const beside = withConverterAt(0.375 * width, 0.75 * length);
    const far = withConverterAt(0.9 * width, 0.15 * length);
    const junction = (design: Design) => value(design, 'keyDown.junctionPeak');
    expect(junction(beside)).toBeGreaterThan(junction(far) + 0.2);
    expect(junction(far)).toBeGreaterThan(junction(station));
    expect(value(beside, 'keyDown.plateHeat')).toBeCloseTo(value(far, 'keyDown.plateHeat'), 1);
  });

  it('a spreader plate lowers the junction of a small device on a thin plate', () => {
    const thin = change(station, {
      sink: { baseThickness: 0.002 },
      device: { contactLength: 0.01, contactWidth: 0.008 },
    });
    const spread = change(thin, {
      device: { spreader: true, spreaderWidth: 0.03, spreaderLength: 0.03, spreaderThickness: 0.006 },
    });
    expect(value(spread, 'keyDown.junctionPeak')).toBeLessThan(value(thin, 'keyDown.junctionPeak'));
    expect(value(spread, 'spreaderResistance')).toBeGreaterThan(0);
  });

  it('vents cool the air of the case and are called a guess', () => {
    const vented = change(station, { surroundings: { caseVents: 'vented', ventArea: 0.002 } });
    expect(value(vented, 'keyDown.caseAir')).toBeLessThan(value(station, 'keyDown.caseAir'));
    expect(notesOf(vented)).toContain('ventGuess');
  });
});
