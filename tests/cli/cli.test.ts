import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../readCsv.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const example = 'shared/examples/field-station-60w.json';
const slow = { timeout: 30_000 };

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync('npm', ['run', '--silent', 'solve', '--', ...args], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  return { status, stdout, stderr };
}

function fileWith(text: string): string {
  const file = join(mkdtempSync(join(tmpdir(), 'design-')), 'design.json');
  writeFileSync(file, text);
  return file;
}

describe('npm run solve', () => {
  it('prints the verdicts as text', slow, () => {
    const { status, stdout } = run(example);
    expect(status).toBe(0);
    for (const line of ['SSB [fine]', 'CW [', 'Key-down [', '12 V input [', 'People [', 'Cautions']) {
      expect(stdout).toContain(line);
    }
  });

  it(
    'prints every caution with figure, action and source, the bands, and what the figures do not replace',
    slow,
    () => {
      const { stdout } = run(example);
      const list = stdout.slice(stdout.indexOf('\nCautions'), stdout.indexOf('\nDistance from the antenna'));
      const heads = [...list.matchAll(/^ {2}\[(danger|warning|caution|note)\] .+ \(.+\)$/gm)];
      expect(heads.length).toBeGreaterThan(7);
      expect(list.match(/^ {4}Source: /gm)).toHaveLength(heads.length);
      const rank = ['danger', 'warning', 'caution', 'note'];
      const order = heads.map((head) => rank.indexOf(head[1] ?? ''));
      expect(order).toEqual(order.toSorted((first, second) => first - second));
      for (const band of ['160 m', '\\* 20 m', '6 m'])
        expect(stdout).toMatch(new RegExp(`^ *${band} .*\\d m\\)$`, 'm'));
      expect(stdout.replace(/\s+/g, ' ')).toContain('laws, electrical codes');
    },
  );

  it('--json prints every named quantity with unit and source', slow, () => {
    const { status, stdout } = run(example, '--json');
    expect(status).toBe(0);
    const { quantities, verdicts, exposure, labels, contacts, burns } = JSON.parse(stdout);
    expect([exposure.length, burns.length]).toEqual([11, 3]);
    expect(labels.length + contacts.length).toBeGreaterThan(6);
    expect(verdicts).toHaveLength(5);
    expect(Object.keys(quantities).length).toBeGreaterThan(100);
    expect(quantities.deviceHeatPep).toMatchObject({ unit: 'W', symbol: 'P_D', formula: expect.any(String) });
    expect(quantities['keyDown.safeDuty'].value).toBeGreaterThan(0);
    expect(quantities.pathResistance.label).toMatch(/Resistance/);
  });

  it('--csv prints every quantity as a table, with edges when the band is asked for', slow, () => {
    const { status, stdout } = run(example, '--csv', '--band');
    expect(status).toBe(0);
    const rows = readCsv(stdout);
    expect(rows.length).toBeGreaterThan(100);
    const [, , , value, unit, low, high] = rows.find(([key]) => key === 'keyDown.junctionPeak') ?? [];
    expect(unit).toBe('K');
    expect(Number(low)).toBeLessThan(Number(value));
    expect(Number(value)).toBeLessThan(Number(high));
    expect(run(example, '--csv', '--json').status).toBe(2);
  });

  it('--sweep prints the duty curves as CSV with units in the header', slow, () => {
    const { status, stdout } = run(example, '--sweep');
    expect(status).toBe(0);
    const lines = stdout.trim().split('\r\n');
    expect(lines).toHaveLength(1 + 3 * 101);
    expect(lines[0]).toBe(
      'service,duty [1],junction highest [degC],junction mean [degC],plate highest [degC]',
    );
    expect(lines[1]).toMatch(/^ssb,0\.0000,30\.000,/);
    for (const line of lines.slice(1)) expect(line).not.toMatch(/NaN|Infinity/);
  });

  it('prints each fault of a bad file with its path and exits non-zero', slow, () => {
    const text = readFileSync(join(root, example), 'utf8')
      .replace('"finCount": 10', '"finCount": "ten"')
      .replace('"openVoltage": 13.2', '"openVoltage": -13.2');
    const { status, stderr, stdout } = run(fileWith(text));
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(
      /source\.openVoltage: Open-circuit voltage must lie between 3 and 60 V, not -13\.2$/m,
    );
    expect(stderr).toMatch(/sink\.finCount: Number of fins must be a number/);
    expect(stderr).toMatch(/2 faults/);
  });

  it.skipIf(process.platform === 'win32')('ends quietly when nobody reads on', slow, () => {
    // The reader closes the pipe before anything is written.
    const ended = spawnSync(
      'bash',
      ['-c', `node_modules/.bin/tsx src/cli/main.ts ${example} --csv | true; echo "code \${PIPESTATUS[0]}"`],
      {
        cwd: root,
        encoding: 'utf8',
      },
    );
    expect(ended.stderr).toBe('');
    expect(ended.stdout).toBe('code 0\n');
  });

  it('names a file that is missing or cut off', slow, () => {
    expect(run('no-such-file.json')).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/cannot be read/),
    });
    const cut = run(fileWith(readFileSync(join(root, example), 'utf8').slice(0, 300)));
    expect(cut.status).toBe(1);
    expect(cut.stderr).toMatch(/ends too early/);
  });

  it('explains itself on wrong use', slow, () => {
    expect(run('--frobnicate', example).status).toBe(2);
    expect(run().status).toBe(2);
    const help = run('--help');
    expect(help.status).toBe(0);
    expect(help.stdout).toMatch(/Usage/);
  });

  it('says how sure it is on request: both edges in the verdicts, and what matters most', slow, () => {
    const { status, stdout } = run(example, '--band');
    expect(status).toBe(0);
    expect(stdout).toMatch(/up to \d+\u202f% of the time, perhaps \d+\u202f%/);
    expect(stdout).toContain('Nine of ten: 512 samples, seed 1');
    expect(stdout).toContain('What matters most');
    const metal = /metal up to (\d+)/.exec(stdout)?.[1];
    expect(metal).toBeDefined();
    expect(stdout).toMatch(new RegExp(`Hot metal: .*\\(${metal}\\D`));
    expect(run(example).stdout).toContain('Nominal figures; --band says how sure they are.');
  });

  it('holds the band in the JSON on request, null without', slow, () => {
    const { band, verdicts } = JSON.parse(run(example, '--json', '--band').stdout);
    expect(band.edges['keyDown.junctionPeak'].high).toBeGreaterThan(band.edges['keyDown.junctionPeak'].low);
    expect(verdicts).toEqual(band.verdicts);
    expect(JSON.parse(run(example, '--json').stdout).band).toBeNull();
  });
});
