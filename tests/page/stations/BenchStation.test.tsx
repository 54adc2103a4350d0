import { fireEvent, screen, waitFor } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { loggedSink } from '../../../shared/design/loggedSink.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { writeLog } from '../../../src/engine/quantity/readLog.ts';
import { BenchStation } from '../../../src/page/stations/BenchStation.tsx';
import { warmUpRun } from '../../engine/couple/benchRuns.ts';
import { exampleOf } from '../../engine/couple/designs.ts';
import { engine, renderInSheet } from '../support.tsx';

const field = exampleOf('field-station-60w');
const run = warmUpRun(field, { film: 0.85, capacity: 1 });

const log = () => screen.getByLabelText('Readings, typed or pasted') as HTMLTextAreaElement;
const type = (text: string) => fireEvent.input(log(), { target: { value: text } });

function begin(bench = [run]) {
  return renderInSheet(() => <BenchStation number={6} />, { ...field, bench }, { engine }).state;
}

describe('bench runs on the sheet', () => {
  it('takes a pasted log with units in its header, keeps the text as typed, and undo takes it back', () => {
    const { store } = begin([{ ...run, readings: [] }]);
    const text = 'time (min);plate (°C)\n0;22,5\n0,5;23,1';
    type(text);
    expect(store.design().bench[0]!.readings).toEqual([
      { time: 0, temperature: 295.65, room: null },
      { time: 30, temperature: 296.25, room: null },
    ]);
    expect(log().value).toBe(text);
    store.undo();
    expect(store.design().bench[0]!.readings).toEqual([]);
  });

  it('names the lines it cannot read, keeps the text and the last good readings, and counts as a wrong entry', () => {
    const { store } = begin();
    const before = store.design().bench[0]!.readings;
    type('time [s];plate [°C]\n0;22\n60;warm');
    fireEvent.blur(log());
    expect(screen.getByText(/line 3: “warm” is no temperature/)).toBeTruthy();
    expect(log().value).toContain('60;warm');
    expect(store.design().bench[0]!.readings).toBe(before);
    expect(store.wrong()).toEqual(['bench.0.readings']);
    const remark = document.querySelector('.bench-log .field-echo')!;
    expect(remark.textContent).toMatch(new RegExp(`^the last good log has ${before.length} readings`));
    type('time [s];plate [°C]\n0;22');
    expect(remark.textContent).toMatch(/^1 reading(;|$)/);
  });

  it('adds a run and takes it away again, each one step back', () => {
    const { store } = begin([]);
    fireEvent.click(screen.getByRole('button', { name: 'a cool-down' }));
    expect(store.design().bench.map(({ kind }) => kind)).toEqual(['coolDown']);
    expect(screen.queryByLabelText('Power in the resistor')).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'take run 1 away' }));
    expect(store.design().bench).toEqual([]);
    store.undo();
    expect(store.design().bench).toHaveLength(1);
  });

  it('shows the correction with its range, and each run that does not count with its reason', async () => {
    begin([run, { ...run, readings: run.readings.slice(0, 3) }]);
    await waitFor(() =>
      expect(screen.getByText(/film coefficients are \d+ % less than the estimate/)).toBeTruthy(),
    );
    expect(screen.getByText('A run needs at least 6 readings.')).toBeTruthy();
    // It is the station that says why: pointing to it leads nowhere.
    expect(document.body.textContent).not.toContain('the station of the runs');
    expect(screen.getByText(/^Film coefficients over their estimate/)).toBeTruthy();
    expect(screen.getByText(/^Film coefficients known to, 9 of 10/)).toBeTruthy();
  });

  it('explains the test in steps with its cautions', () => {
    begin([]);
    const text = document.body.textContent ?? '';
    for (const word of ['burns skin', 'isolated from the mains', 'Do not leave it alone', 'P = V × I']) {
      expect(text).toContain(word);
    }
  });

  it('says how an entry was measured in the design, and takes that back', () => {
    const { store } = begin([]);
    const select = screen.getByLabelText('Fin height') as HTMLSelectElement;
    fireEvent.change(select, { target: { value: 'guess' } });
    expect(store.design().doubts).toEqual({ 'sink.finHeight': 'guess' });
    fireEvent.change(select, { target: { value: '0.1' } });
    expect(store.design().doubts['sink.finHeight']).toBeCloseTo(0.003, 9);
    fireEvent.change(select, { target: { value: 'usual' } });
    expect(store.design().doubts).toEqual({});
  });

  it('reads back the log it shows', () => {
    const { store } = begin();
    expect(log().value).toBe(writeLog(run.readings));
    type(log().value);
    expect(store.design().bench[0]!.readings).toHaveLength(run.readings.length);
  });
});

describe('the sink a run was logged on', () => {
  const logged = { ...run, sink: loggedSink(field.sink) };
  const lengthNow = (length: number) => (design: Design) => ({ ...design, sink: { ...design.sink, length } });
  const mended = () => screen.queryByRole('button', { name: 'run 1 was made on the sink as now given' });

  it('begins without a power and a room that nobody has measured', () => {
    const { store } = begin([]);
    fireEvent.click(screen.getByRole('button', { name: 'a warm-up' }));
    expect(store.design().bench[0]).toMatchObject({ power: null, air: null, readings: [] });
  });

  it('is kept with the first reading, as it then stands, and no later', () => {
    const { store } = begin([]);
    fireEvent.click(screen.getByRole('button', { name: 'a warm-up' }));
    store.change(lengthNow(0.11));
    type('time [s];plate [°C]\n0;22\n60;24');
    expect(store.design().bench[0]!.sink).toEqual(loggedSink({ ...field.sink, length: 0.11 }));
    expect(mended()).toBeNull();
    store.change(lengthNow(0.13));
    type('time [s];plate [°C]\n0;22\n60;24\n120;26');
    expect(store.design().bench[0]!.sink!.length).toBe(0.11);
  });

  it('is said to have changed, in what, and is renewed by who only mended an entry; undo takes that back', () => {
    const { store } = begin([logged]);
    expect(mended()).toBeNull();
    store.change(lengthNow(0.13));
    store.change((design) => ({
      ...design,
      sink: { ...design.sink, position: 'crosswise', pinHeight: 0.01 },
    }));
    const words = mended()!.parentElement!.textContent!;
    expect(words).toMatch(/length along the fins .*, now 130\smm/);
    expect(words).toMatch(/stands or lies “plate upright, fins upright”, now “plate upright, fins level”/);
    expect(words).not.toMatch(/pin height/i);
    expect(words).toMatch(/carried over/);
    fireEvent.click(mended()!);
    expect(store.design().bench[0]!.sink).toEqual(loggedSink(store.design().sink));
    expect(mended()).toBeNull();
    store.undo();
    expect(store.design().bench[0]!.sink).toEqual(logged.sink);
  });

  it('is not known from a file that does not say it, and is kept once that is said', () => {
    const { store } = begin([run]);
    expect(mended()!.parentElement!.textContent).toMatch(/does not say on which sink/);
    fireEvent.click(mended()!);
    expect(store.design().bench[0]!.sink).toEqual(loggedSink(field.sink));
  });

  it('leaves a log with a fault in it as it was typed', () => {
    const { store } = begin([logged]);
    store.change(lengthNow(0.13));
    type('time [s];plate [°C]\n0;22\n60;warm');
    fireEvent.click(mended()!);
    expect(log().value).toContain('60;warm');
    expect(store.wrong()).toEqual(['bench.0.readings']);
  });
});
