import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLog, writeLog } from '../../../src/engine/quantity/readLog.ts';

const kelvin = (celsius: number) => celsius + 273.15;

function rows(text: string): readonly (readonly [number, number])[] {
  const { readings, faults } = readLog(text);
  expect(faults).toEqual([]);
  return readings.map(({ time, temperature }) => [time, Number((temperature - 273.15).toFixed(6))] as const);
}

describe('logs of time and temperature', () => {
  it.each<[string, string, [number, number][]]>([
    [
      'comma and point',
      'time [s],plate [°C]\n0,22.5\n60,25.25',
      [
        [0, 22.5],
        [60, 25.25],
      ],
    ],
    [
      'semicolon and decimal comma',
      'time (min);T (°C)\n0;22,5\n0,5;25,125',
      [
        [0, 22.5],
        [30, 25.125],
      ],
    ],
    [
      'tabs from a spreadsheet',
      'time / min\tplate / °F\n0\t68\n2\t104',
      [
        [0, 20],
        [120, 40],
      ],
    ],
    ['units as last words', 'elapsed min; sensor degC\n1;30', [[60, 30]]],
    [
      'columns the other way round',
      'plate [°C];time [h]\n30;0\n35;0.5',
      [
        [0, 30],
        [1800, 35],
      ],
    ],
    ['kelvin', 'time [s];plate [K]\n0;300', [[0, 26.85]]],
    [
      'no header: seconds and °C',
      '0 22.5\n30 23',
      [
        [0, 22.5],
        [30, 23],
      ],
    ],
    [
      'no header, decimal commas and spaces',
      '0,5 22,5\n30,5 23,1',
      [
        [0.5, 22.5],
        [30.5, 23.1],
      ],
    ],
    [
      'units in the cells',
      '0 s; 22 °C\n2 min; 77 °F',
      [
        [0, 22],
        [120, 25],
      ],
    ],
    [
      'clock times',
      'time [s];plate [°C]\n0:00;20\n1:30;25\n1:00:05;40',
      [
        [0, 20],
        [90, 25],
        [3605, 40],
      ],
    ],
    [
      'quotes, empty lines, remarks, Windows line ends',
      '\ufeff"time [s]";"plate [°C]"\r\n\r\n# warm day\r\n"10";"21"',
      [[10, 21]],
    ],
    [
      'other columns',
      'time [s];room air [°C];plate [°C];volts\n0;20;22;9.1\n60;20;24;9.1',
      [
        [0, 22],
        [60, 24],
      ],
    ],
  ])('%s', (_, text, expected) => {
    expect(rows(text)).toEqual(expected);
  });

  it('names every line it cannot read, reads the others, and says what it took the columns for', () => {
    const log = readLog('time [min];plate [°C]\n0;22\n1;warm\n2\n3;25;7\n4;900\n;26\n6;27');
    expect(log.readings).toEqual([
      { time: 0, temperature: kelvin(22), room: null },
      { time: 360, temperature: kelvin(27), room: null },
    ]);
    expect(log.faults.map(({ line }) => line)).toEqual([3, 4, 5, 6, 7]);
    expect(log.faults[0]!.message).toContain('“warm” is no temperature');
    expect(log.faults[3]!.message).toContain('is the unit in the header right?');
    expect(log.faults[4]!.message).toContain('nothing is no time');
    expect(log.remark).toBe('time in min, temperature in °C');
  });

  it('reads a column of the room, in its own unit, empty where it was not read', () => {
    const log = readLog('time [min];plate [°C];room [°F]\n0;22;68\n1;23;\n2;24;mild\n3;25;400');
    expect(log.readings.map(({ room }) => room)).toEqual([kelvin(20), null]);
    expect(log.faults.map(({ line }) => line)).toEqual([4, 5]);
    expect(log.faults[1]!.message).toContain('the room is outside');
    expect(log.remark).toBe('time in min, temperature in °C, room in °F');
    const damp = readLog('time [s];plate [°C];room [%]\n0;22;55');
    expect(damp.readings[0]!.room).toBeNull();
    expect(damp.remark).toContain('1 other column left out');
    expect(readLog('time [s];plate [°C];air\n0;22;21').readings[0]!.room).toBe(kelvin(21));
  });

  it('asks in what the time is where nobody says it and seconds make no sense', () => {
    const rows = '\n0;22\n1;24\n2;26\n3;27.5\n25;38';
    const asked = readLog(`time;plate [°C]${rows}`);
    expect(asked.faults[0]).toMatchObject({ line: 1 });
    expect(asked.faults[0]!.message).toMatch(
      /^Is the time in minutes\? Read as seconds the log lasts 25 s\. .* in the header\.$/,
    );
    expect(readLog(rows.trim()).faults[0]!.message).toContain(
      'in a first line, such as “time [min]; plate [°C]”',
    );
    expect(readLog(`time [min];plate [°C]${rows}`).faults).toEqual([]);
    expect(readLog(`time [s];plate [°C]${rows}`).faults).toEqual([]);
    // Seconds that last long enough, and readings too few for a course, stand.
    expect(readLog('0;22\n60;24\n120;26\n600;38').faults).toEqual([]);
    expect(readLog('0;22\n60;24').faults).toEqual([]);
  });

  it('says that clock times were read as such', () => {
    const log = readLog('0:00 22\n1:00 24\n2:00 26\n3:00 27');
    expect(log.faults).toEqual([]);
    expect(log.readings.map(({ time }) => time)).toEqual([0, 60, 120, 180]);
    expect(log.remark).toContain('time as minutes:seconds');
  });

  it('says what a header lacks', () => {
    expect(readLog('time [s];volts\n0;3').faults[0]).toMatchObject({ line: 1 });
    expect(readLog('time [s];volts\n0;3').faults[0]!.message).toMatch(/The line after it was not read\.$/);
    const whole = readLog('time [s];volts\n\n0;3\n60;3\n120;3');
    expect(whole.faults).toHaveLength(1);
    expect(whole.faults[0]!.message).toMatch(/The 3 lines after it were not read\.$/);
    expect(readLog('time [s];volts').faults[0]!.message).not.toContain('not read');
    expect(readLog('volts;plate [°C]\n0;3').faults[0]!.message).toContain('names no time');
  });

  it('names columns torn apart by decimal commas', () => {
    expect(readLog('time [s],plate [°C]\n0,5,22,5').faults[0]!.message).toContain('part them by ;');
  });

  it('thins a long log evenly and keeps both ends', () => {
    const text = Array.from({ length: 1000 }, (_, i) => `${i} ${20 + i / 100}`).join('\n');
    const { readings, remark } = readLog(text, 100);
    expect(readings).toHaveLength(100);
    expect(readings[0]!.time).toBe(0);
    expect(readings.at(-1)!.time).toBe(999);
    expect(remark).toContain('100 of 1000 readings kept');
  });

  it('reads nothing from nothing', () => {
    expect(readLog(' \n\n')).toEqual({ readings: [], faults: [], remark: '' });
    expect(writeLog([])).toBe('');
  });

  it('reads again what it writes', () => {
    const reading = fc.record({
      time: fc.integer({ min: 0, max: 100_000 }),
      temperature: fc.integer({ min: 230_000, max: 570_000 }).map((milli) => milli / 1000),
      room: fc.option(
        fc.integer({ min: 240_000, max: 340_000 }).map((milli) => milli / 1000),
        { nil: null },
      ),
    });
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 20 }), (readings) => {
        const again = readLog(writeLog(readings));
        expect(again.faults).toEqual([]);
        again.readings.forEach(({ time, temperature, room }, i) => {
          const written = readings[i]!.room;
          if (written === null) expect(room).toBeNull();
          else expect(room).toBeCloseTo(written, 2);
          expect(time).toBeCloseTo(readings[i]!.time, 3);
          expect(temperature).toBeCloseTo(readings[i]!.temperature, 2);
        });
      }),
    );
  });

  it('never throws, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        const { readings } = readLog(text);
        for (const { time, temperature } of readings) {
          expect(Number.isFinite(time) && Number.isFinite(temperature)).toBe(true);
        }
      }),
    );
  });
});
