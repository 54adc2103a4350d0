import { type Failure, failure, type Outcome, success } from '../../../shared/outcome.ts';
import { normalise } from './normalise.ts';
import { readQuantity } from './read.ts';
import { units } from './units.ts';
import { writeEntry } from './write.ts';

/** One line of a log, SI. */
export interface LogReading {
  /** s */
  readonly time: number;
  /** K */
  readonly temperature: number;
  /** Room air then, K; null where it was not logged. */
  readonly room: number | null;
}

export interface LogFault {
  /** Counted from 1, as an editor shows it. */
  readonly line: number;
  readonly message: string;
}

export interface ReadLog {
  readonly readings: readonly LogReading[];
  readonly faults: readonly LogFault[];
  /** What was understood of the columns, and what was left out. */
  readonly remark: string;
}

/** Temperatures a thermometer on a sink and one in a room can show, K, and the longest log, s. */
const coldest = 223.15;
const hottest = 573.15;
const coldestRoom = 233.15;
const hottestRoom = 343.15;
const longest = 1e6;

type Column = 'time' | 'temperature' | 'room' | 'other';

interface Shape {
  readonly columns: readonly { readonly kind: Column; readonly unit: string }[];
  readonly hasHeader: boolean;
  /** The header says in what the time is; without it seconds are taken. */
  readonly timeSaid: boolean;
}

/** A sink takes minutes: a log of a few readings that lasts less, in a unit nobody has said, is one in minutes, s. */
const shortestLog = 300;
const fewestToAsk = 4;

/** Columns are parted by tabs, else semicolons, else commas before a space or between points, else spaces. */
type Cut = (line: string) => readonly string[];

const trimmed = (cells: readonly string[]) => cells.map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));

function cutOf(lines: readonly string[]): Cut {
  const most = (mark: string) => lines.filter((line) => line.includes(mark)).length > lines.length / 2;
  if (most('\t')) return (line) => trimmed(line.split('\t'));
  if (most(';')) return (line) => trimmed(line.split(';'));
  // "60,25.3", "60, 25" and one comma a line are columns; "0,5 25,3" and "60,0,25,3" are not.
  const first = lines[0]!;
  const headed = !/\d/.test(first) && first.includes(',');
  const byComma = headed || lines.every((line) => line.split(',').length === first.split(',').length);
  const decimalToo = lines.every((line) => /\d,\d+\s+[-\d]/.test(line) || !/\d/.test(line));
  if (most(',') && byComma && !decimalToo) return (line) => trimmed(line.split(','));
  return (line) => trimmed(line.trim().split(/\s{2,}|\s(?=[-+]?[\d.,])/));
}

const spellingOf = (dimension: 'time' | 'temperature', text: string) =>
  units[dimension].find((unit) => unit.symbol === text || unit.spellings.some((each) => each === text))
    ?.symbol;

/** The unit in a header cell: in brackets, after a slash or as its last word. */
function unitIn(cell: string): string[] {
  const plain = normalise(cell);
  const bracketed = /[[({]\s*([^\])}]+?)\s*[\])}]/.exec(plain)?.[1];
  const slashed = /\/\s*(\S+)$/.exec(plain)?.[1];
  const last = /(\S+)$/.exec(plain)?.[1];
  return [bracketed, slashed, last].filter((each): each is string => each !== undefined);
}

const timeWords = /\b(time|zeit|elapsed|t)\b/i;
const temperatureWords = /temp|plate|sink|sensor|probe|thermo/i;
/** Columns of the room's temperature. */
const airWords = /\b(air|room|ambient)\b/i;

function columnOf(cell: string): { kind: Column; unit: string } {
  const candidates = unitIn(cell);
  if (airWords.test(cell)) return roomColumn(candidates);
  for (const text of candidates) {
    const time = spellingOf('time', text);
    if (time) return { kind: 'time', unit: time };
    const temperature = spellingOf('temperature', text);
    if (temperature) return { kind: 'temperature', unit: temperature };
  }
  if (temperatureWords.test(cell)) return { kind: 'temperature', unit: '°C' };
  if (timeWords.test(cell)) return { kind: 'time', unit: 's' };
  return { kind: 'other', unit: '' };
}

/** The room's temperature in the unit named, in °C where none is; another unit is another thing, such as its damp. */
function roomColumn(candidates: readonly string[]): { kind: Column; unit: string } {
  const bracketed = candidates.length > 1;
  const unit = candidates.map((text) => spellingOf('temperature', text)).find((each) => each !== undefined);
  if (unit) return { kind: 'room', unit };
  return bracketed ? { kind: 'other', unit: '' } : { kind: 'room', unit: '°C' };
}

const usual = [
  { kind: 'time', unit: 's' },
  { kind: 'temperature', unit: '°C' },
] as const;

/** A first line is a header when none of its cells begins with a digit. */
function shapeOf(cells: readonly string[]): Outcome<Shape> {
  if (cells.some((cell) => /^[-+.,]?\d/.test(cell))) {
    return success({ columns: usual, hasHeader: false, timeSaid: false });
  }
  const columns = cells.map(columnOf);
  const missing = (['time', 'temperature'] as const).find(
    (kind) => !columns.some((column) => column.kind === kind),
  );
  if (missing) {
    const example = missing === 'time' ? 'time [min]' : 'plate [°C]';
    return failure('header', `The header names no ${missing}; write a unit with it, such as “${example}”.`);
  }
  const timeSaid = cells.some((cell) => unitIn(cell).some((text) => spellingOf('time', text) !== undefined));
  return success({ columns, hasHeader: true, timeSaid });
}

/** Asks in what the time is where that is not said and seconds make no sense. */
function timeFaults(readings: readonly LogReading[], shape: Shape, line: number, clock: boolean): LogFault[] {
  if (shape.timeSaid || clock || readings.length < fewestToAsk) return [];
  const times = readings.map(({ time }) => time);
  const length = Math.max(...times) - Math.min(...times);
  if (length >= shortestLog) return [];
  const where = shape.hasHeader ? 'in the header' : 'in a first line, such as “time [min]; plate [°C]”';
  const message = `Is the time in minutes? Read as seconds the log lasts ${length} s. Write “time [min]” or “time [s]” ${where}.`;
  return [{ line, message }];
}

/** "3:20" and "1:02:05" as minutes and seconds, hours, minutes and seconds. */
function readClock(text: string): number | null {
  if (!/^\d+(:\d{1,2}){1,2}(\.\d+)?$/.test(text)) return null;
  return text.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}

function readCell(cell: string, kind: 'time' | 'temperature', unit: string): Outcome<number> {
  // A lone comma is the decimal mark here: columns are parted already.
  const text = /^[^.]*,[^,]*$/.test(cell) ? cell.replace(',', '.') : cell;
  const clock = kind === 'time' ? readClock(text) : null;
  if (clock !== null) return success(clock);
  const read = readQuantity(text, kind, unit);
  if (!read.ok) {
    const shown = cell === '' ? 'nothing' : `“${cell.slice(0, 30)}”`;
    return failure('cell', `${shown} is no ${kind} (${unit} is expected).`);
  }
  return success(read.value.value);
}

function rangeFault(time: number, temperature: number): Failure | null {
  if (time < 0 || time > longest) return failure('time', 'the time is negative or longer than eleven days.');
  if (temperature >= coldest && temperature <= hottest) return null;
  return failure('temperature', 'the temperature is outside -50 to 300 °C; is the unit in the header right?');
}

function readLine(cells: readonly string[], { columns }: Shape): Outcome<LogReading> {
  const at = (kind: 'time' | 'temperature') => {
    const index = columns.findIndex((column) => column.kind === kind);
    return readCell(cells[index] ?? '', kind, columns[index]!.unit);
  };
  if (cells.length < 2) {
    return failure(
      'columns',
      'a time and a temperature are expected, parted by a tab, a semicolon or a comma.',
    );
  }
  if (cells.length > Math.max(columns.length, 2)) {
    return failure(
      'columns',
      'there are more columns than the header names; with decimal commas part them by ;',
    );
  }
  const time = at('time');
  if (!time.ok) return time;
  const temperature = at('temperature');
  if (!temperature.ok) return temperature;
  const room = readRoom(cells, columns);
  if (!room.ok) return room;
  return (
    rangeFault(time.value, temperature.value) ??
    success({ time: time.value, temperature: temperature.value, room: room.value })
  );
}

/** The room's temperature of a row; null where the cell is empty or there is no such column. */
function readRoom(cells: readonly string[], columns: Shape['columns']): Outcome<number | null> {
  const index = columns.findIndex((column) => column.kind === 'room');
  const cell = cells[index] ?? '';
  if (cell === '') return success(null);
  const room = readCell(cell, 'temperature', columns[index]!.unit);
  if (!room.ok || (room.value >= coldestRoom && room.value <= hottestRoom)) return room;
  return failure('room', 'the room is outside -40 to 70 °C; is the unit in the header right?');
}

function remarkOf({ columns, hasHeader }: Shape, clock: boolean): string {
  const unit = (kind: Column) => columns.find((column) => column.kind === kind)?.unit ?? '';
  const room = unit('room') === '' ? '' : `, room in ${unit('room')}`;
  const time = clock ? 'as minutes:seconds' : `in ${unit('time')}`;
  const read = `time ${time}, temperature in ${unit('temperature')}${room}`;
  const left = columns.filter(
    ({ kind }, i) => kind === 'other' || columns.findIndex((column) => column.kind === kind) !== i,
  ).length;
  const rest = left > 0 ? `; ${left} other ${left === 1 ? 'column' : 'columns'} left out` : '';
  return hasHeader ? `${read}${rest}` : `no header: ${read}`;
}

/** Without a header that can be used nothing below it is read. */
function notRead(lines: number): string {
  if (lines === 0) return '';
  return lines === 1 ? ' The line after it was not read.' : ` The ${lines} lines after it were not read.`;
}

/**
 * Reads a log of time and temperature as typed or pasted from a spreadsheet or a logger: CSV with units in the header
 * ("time [min];plate [°F];room [°F]"), or two figures a line, then in seconds and °C. Points or commas as decimal mark, tabs,
 * semicolons, commas or spaces between columns, times also as 3:20. Empty lines and lines that begin with # are skipped.
 *
 * Every line that cannot be read is named; the others are read all the same. More readings than `most` are thinned
 * evenly, the last one kept.
 */
export function readLog(text: string, most = Number.POSITIVE_INFINITY): ReadLog {
  const lines = text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map((content, index) => ({ content, line: index + 1 }))
    .filter(({ content }) => content.trim() !== '' && !content.trim().startsWith('#'));
  if (lines.length === 0) return { readings: [], faults: [], remark: '' };
  const cut = cutOf(lines.map(({ content }) => content));
  const shape = shapeOf(cut(lines[0]!.content));
  if (!shape.ok) {
    return {
      readings: [],
      faults: [{ line: lines[0]!.line, message: shape.reason.sentence + notRead(lines.length - 1) }],
      remark: '',
    };
  }
  const readings: LogReading[] = [];
  const faults: LogFault[] = [];
  for (const { content, line } of shape.value.hasHeader ? lines.slice(1) : lines) {
    const read = readLine(cut(content), shape.value);
    if (read.ok) readings.push(read.value);
    else faults.push({ line, message: read.reason.sentence });
  }
  const clock = lines.some(({ content }) => cut(content).some((cell) => readClock(cell) !== null));
  faults.unshift(...timeFaults(readings, shape.value, lines[0]!.line, clock));
  const kept = thinned(readings, most);
  const thin = kept.length < readings.length ? `; ${kept.length} of ${readings.length} readings kept` : '';
  return { readings: kept, faults, remark: remarkOf(shape.value, clock) + thin };
}

function thinned(readings: readonly LogReading[], most: number): readonly LogReading[] {
  if (readings.length <= most) return readings;
  const step = (readings.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => readings[Math.round(i * step)]!);
}

/** The log as text that `readLog` reads again: minutes or seconds, °C. */
export function writeLog(readings: readonly LogReading[]): string {
  if (readings.length === 0) return '';
  const byMinute = readings.every(({ time }) => Number.isInteger(Math.round(time * 1000) / 60_000));
  const unit = byMinute ? 'min' : 's';
  const celsius = (kelvin: number) => Number((kelvin - 273.15).toFixed(3));
  const withRoom = readings.some(({ room }) => room !== null);
  const rows = readings.map(({ time, temperature, room }) => {
    const cells = [writeEntry(time, 'time', unit), celsius(temperature)];
    if (withRoom) cells.push(room === null ? '' : celsius(room));
    return cells.join('; ');
  });
  return [`time [${unit}]; plate [°C]${withRoom ? '; room [°C]' : ''}`, ...rows].join('\n');
}
