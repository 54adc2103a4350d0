import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { answer, contradiction, readTarget } from '../../src/cli/answers.ts';
import { change, exampleOf } from '../engine/couple/designs.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const slow = { timeout: 60_000 };
/** Lines joined, spaces plain. */
const plainSpaces = (text: string) => text.replace(/\s+/g, ' ');

function run(...args: string[]) {
  const found = spawnSync('npm', ['run', '--silent', 'solve', '--', ...args], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  return { status: found.status, stdout: plainSpaces(found.stdout), stderr: found.stderr };
}

const nothing = {
  remedies: false,
  for: undefined,
  unknown: undefined,
  target: [],
  edge: 'nominal',
  json: false,
};

describe('answers on the command line', () => {
  it('--remedies ranks what to change, with effects, side effects and edits', slow, () => {
    const { status, stdout } = run('shared/examples/data-final-100w.json', '--remedies', '--edge', 'nominal');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Key-down \[over\]/);
    expect(stdout).toMatch(/1\. Transmit \d+ % of the time instead of 90 % \[enough; a setting\]/);
    expect(stdout).toMatch(/Key-down over -> fine, 5\d K cooler/);
    expect(stdout).toMatch(/Edit: service\.transmitShare = 0\.\d+/);
    expect(stdout).toMatch(/Judged by the nominal figures/);
  });

  it('--unknown with --target reads the value as the page does', slow, () => {
    const { status, stdout } = run(
      'shared/examples/field-station-60w.json',
      '--unknown',
      'wiring.length',
      '--target',
      'pathDropShare=3 %',
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/“Wire length, one way” of [\d.]+ m gives 3\.00 %/);
    expect(stdout).toMatch(/12 V input \[/);
  });

  it('ends with code 3 when no value meets the target, which --help says', slow, () => {
    const asked = ['--unknown', 'sink.length', '--target', 'keyDown.safeDuty=50 %', '--edge', 'nominal'];
    const { status, stdout, stderr } = run('shared/examples/data-final-100w.json', ...asked);
    expect(status).toBe(3);
    expect(stdout).toMatch(/^No value of “Length along the fins”/);
    expect(stderr).toBe('');
    expect(run('shared/examples/data-final-100w.json', ...asked, '--json').status).toBe(3);
    expect(run('--help').stdout).toMatch(/3 no value of the unknown meets the target/);
  });

  it('refuses wrong questions with code 2', slow, () => {
    const example = 'shared/examples/field-station-60w.json';
    const wrong = run(example, '--unknown', 'sink.nonsense', '--target', 'keyDown.safeDuty=50 %');
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toMatch(/no field “sink.nonsense”/);
    expect(run(example, '--unknown', 'sink.length').status).toBe(2);
  });
});

describe('two changes together', () => {
  const failing = exampleOf('data-final-100w');
  const textOf = (design: typeof failing) => {
    const printed = answer(design, { ...nothing, remedies: true, for: 'keyDown' });
    return printed?.ok ? printed.text : '';
  };

  it('stand above the changes that are not enough alone', slow, () => {
    const text = textOf(
      change(failing, {
        amplifier: { biasInReceive: true, quiescentCurrent: 1.2 },
        service: { transmitShare: 0.3 },
      }),
    );
    expect(text).toMatch(/\nTwo together\n {2}1\. .*[\s\S]*\nOne alone, not enough\n {2}1\. /);
    expect(text.indexOf('[enough')).toBeLessThan(text.indexOf('[not enough'));
  });
});

describe('what is asked', () => {
  const station = exampleOf('field-station-60w');

  it.each([
    ['keyDown.safeDuty=50 %', 'keyDown.safeDuty', 0.5],
    ['keyDown.safeDuty = 50', 'keyDown.safeDuty', 0.5],
    ['keyDown.junctionPeak=125 °C', 'keyDown.junctionPeak', 398.15],
    ['keyDown.holdTime=10 min', 'keyDown.holdTime', 600],
    ['pathDropShare=0,5 %', 'pathDropShare', 0.005],
  ])('%s', (text, quantity, value) => {
    const read = readTarget(text);
    expect(read.ok && read.target.quantity).toBe(quantity);
    expect(read.ok && read.target.value).toBeCloseTo(value, 9);
  });

  it.each(['keyDown.safeDuty', 'nonsense=5', 'keyDown.safeDuty=fifty', 'keyDown.junctionPeak=5 mm'])(
    'not %s',
    (text) => {
      expect(readTarget(text).ok).toBe(false);
    },
  );

  it('names what excludes each other', () => {
    expect(contradiction({ ...nothing, remedies: true, unknown: 'sink.length' })).toMatch(/exclude/);
    expect(contradiction({ ...nothing, target: ['a=1'] })).toMatch(/--unknown/);
    expect(contradiction({ ...nothing, for: 'ssb' })).toMatch(/--remedies/);
    expect(contradiction(nothing)).toBeNull();
  });

  it('tells that no value does it as an answer, not as an error', () => {
    const printed = answer(exampleOf('data-final-100w'), {
      ...nothing,
      unknown: 'sink.length',
      target: ['keyDown.safeDuty=50 %'],
    });
    expect(printed?.ok).toBe(true);
    expect(printed?.ok && printed.text).toMatch(/^No value of “Length along the fins”/);
    expect(printed?.ok && printed.answered).toBe(false);
  });

  const asked = (name: string, unknown: string, ...target: string[]) => {
    const printed = answer(exampleOf(name), { ...nothing, unknown, target });
    return plainSpaces(printed?.ok ? printed.text : (printed?.message ?? ''));
  };

  it.each([
    [
      'contradictory targets',
      asked('field-station-60w', 'sink.length', 'keyDown.safeDuty=50 %', 'sinkMass=300 g'),
      /targets contradict each other: 50\.0 % of “Safe duty \(key-down\)” asks for .* mm; 300 g of “.*ass.*” asks for .* mm/,
    ],
    [
      'an unknown that another value fixes',
      asked('field-station-60w', 'device.padResistance', 'keyDown.safeDuty=50 %'),
      /has no effect while “.*” is “.*”\. Choose “own value in K\/W” first/,
    ],
    [
      'two values that both do it',
      asked('data-final-100w', 'sink.length', 'keyDown.safeDuty=15 %'),
      /There are 2 values: .* mm and .* mm each give 15\.0 %.*does not rise or fall throughout/,
    ],
    [
      'two targets of which one is met and one kept',
      asked('field-station-60w', 'sink.length', 'keyDown.safeDuty=50 %', 'sinkMass=5 kg'),
      /gives 50\.0 % for “Safe duty \(key-down\)” and .* for “.*ass/,
    ],
  ])('tells of %s', (_name, text, words) => {
    expect(text).toMatch(words);
  });

  it('says by how far nothing is enough, and which figures decide', () => {
    const hopeless = change(exampleOf('data-final-100w'), {
      surroundings: { ambient: 343.15 },
      limits: { designJunction: 343.5 },
    });
    const printed = answer(hopeless, { ...nothing, remedies: true, for: 'key-down' });
    const text = plainSpaces(printed?.ok ? printed.text : '');
    expect(text).toMatch(
      /Nothing here is enough for Key-down\. .* this is left: the junction is [\d.]+ K above/,
    );
    expect(text).toMatch(/Judged by the nominal figures\./);
  });

  it('gives JSON on request', () => {
    const printed = answer(station, {
      ...nothing,
      unknown: 'sink.length',
      target: ['keyDown.safeDuty=45 %'],
      json: true,
    });
    const parsed = JSON.parse(printed?.ok ? printed.text : '{}');
    expect(parsed.found[0].edit.path).toBe('sink.length');
  });

  it('refuses unknown verdicts and edges', () => {
    expect(answer(station, { ...nothing, remedies: true, for: 'fm' })?.ok).toBe(false);
    expect(answer(station, { ...nothing, edge: 'middle' })?.ok).toBe(false);
    expect(answer(station, nothing)).toBeNull();
  });
});
