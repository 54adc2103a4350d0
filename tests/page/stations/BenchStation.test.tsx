import { fireEvent, screen, waitFor } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
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
