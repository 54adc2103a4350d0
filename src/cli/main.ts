import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type Fault, parseDesign } from '../../shared/design/file.ts';
import type { Design } from '../../shared/design/schema.ts';
import { services } from '../../shared/solution.ts';
import { solve, sweep } from '../engine/index.ts';
import { asCsv } from './asCsv.ts';
import { asJson } from './asJson.ts';
import { asText } from './asText.ts';

const usage = `Usage: npm run --silent solve -- FILE [--json | --sweep]

FILE     a design file (JSON); "-" reads standard input. Examples: shared/examples/*.json
--json   every named quantity with symbol, unit, formula and source
--sweep  junction temperature against duty for the three services, as CSV
--help   this text

Exit code: 0 solved (whatever the verdicts say), 1 the file is no valid design, 2 wrong use.`;

function fail(message: string, code: number): never {
  process.stderr.write(`${message}\n`);
  process.exit(code);
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        sweep: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
  } catch (error) {
    return fail(`${error instanceof Error ? error.message : error}\n\n${usage}`, 2);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    return fail(`${file}: cannot be read (${error instanceof Error ? error.message : error})`, 1);
  }
}

function listFaults(file: string, faults: readonly Fault[]): string {
  const lines = faults.map((fault) => `${file}: ${fault.path || 'file'}: ${fault.message}`);
  return `${lines.join('\n')}\n${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}; nothing was computed.`;
}

function readDesign(file: string): Design {
  const parsed = parseDesign(readText(file));
  return parsed.ok ? parsed.design : fail(listFaults(file, parsed.faults), 1);
}

function main(): void {
  const { values, positionals } = readArguments();
  if (values.help) {
    process.stdout.write(`${usage}\n`);
    return;
  }
  const file = positionals[0];
  if (!file || positionals.length > 1) fail(usage, 2);
  if (values.json && values.sweep) fail(`--json and --sweep exclude each other\n\n${usage}`, 2);
  const design = readDesign(file);
  if (values.sweep) {
    process.stdout.write(asCsv(services.map((service) => [service, sweep(design, service)] as const)));
    return;
  }
  const solution = solve(design);
  process.stdout.write(values.json ? asJson(design, solution) : asText(design, solution));
}

main();
