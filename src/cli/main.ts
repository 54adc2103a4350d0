import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { solutionAtEdge } from '../../shared/band.ts';
import { type Fault, parseDesign } from '../../shared/design/file.ts';
import type { Design } from '../../shared/design/schema.ts';
import { type Solution, services } from '../../shared/solution.ts';
import { figuresCsv } from '../engine/catalogue/figuresCsv.ts';
import { figuresJson } from '../engine/catalogue/figuresJson.ts';
import { band, solve, sweep } from '../engine/index.ts';
import { answer, contradiction } from './answers.ts';
import { asCsv } from './asCsv.ts';
import { asText } from './asText.ts';
import { bandLines } from './bandText.ts';

const usage = `Usage: npm run --silent solve -- FILE [--json | --csv | --sweep] [--band]
       npm run --silent solve -- FILE --remedies [--for VERDICT] [--json]
       npm run --silent solve -- FILE --unknown PATH --target QUANTITY=VALUE [--json]

FILE     a design file (JSON); "-" reads standard input. Examples: shared/examples/*.json
--json   every named quantity with symbol, unit, formula and source
--csv    the same as a table, one quantity a row: value, edges of the band, formula or method, source
--band   how sure the figures are: nine of ten from samples of what is not exactly known, and what matters most
--sweep  junction temperature against duty for the three services, as CSV
--remedies  what to change so that a verdict becomes fine, ranked; VERDICT is ssb, cw, keyDown, supply or people, the
            worst if not given
--unknown   one given value as the unknown, by its path in the file such as sink.length, so that a found quantity meets
            its target: --unknown sink.length --target "keyDown.safeDuty=50 %". With more than one --target one is met
            and the others are kept.
--edge      nominal, or pessimistic (the default): which figure counts for --remedies and --unknown
--help   this text

Exit code: 0 solved (whatever the verdicts say), 1 the file is no valid design, 2 wrong use, 3 no value of the unknown
meets the target.`;

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
        csv: { type: 'boolean', default: false },
        sweep: { type: 'boolean', default: false },
        band: { type: 'boolean', default: false },
        remedies: { type: 'boolean', default: false },
        for: { type: 'string' },
        unknown: { type: 'string' },
        target: { type: 'string', multiple: true, default: [] },
        edge: { type: 'string', default: 'pessimistic' },
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

function namesOf({ words }: Solution): Readonly<Record<string, string>> {
  return Object.fromEntries(services.map((service) => [service, words[service].name]));
}

function main(): void {
  const { values, positionals } = readArguments();
  if (values.help) {
    process.stdout.write(`${usage}\n`);
    return;
  }
  const file = positionals[0];
  if (!file || positionals.length > 1) fail(usage, 2);
  if ([values.json, values.csv, values.sweep].filter(Boolean).length > 1)
    fail(`--json, --csv and --sweep exclude each other\n\n${usage}`, 2);
  if (values.band && values.sweep) fail(`--band and --sweep exclude each other\n\n${usage}`, 2);
  const wrongTogether = contradiction({ ...values, for: values.for, unknown: values.unknown });
  if (wrongTogether) fail(`${wrongTogether}\n\n${usage}`, 2);
  const design = readDesign(file);
  const answered = answer(design, { ...values, for: values.for, unknown: values.unknown });
  if (answered) {
    if (!answered.ok) fail(answered.message, 2);
    process.stdout.write(answered.text);
    if (!answered.answered) process.exitCode = 3;
    return;
  }
  if (values.sweep) {
    process.stdout.write(asCsv(services.map((service) => [service, sweep(design, service)] as const)));
    return;
  }
  const nominal = solve(design);
  const found = values.band ? band(design) : null;
  if (found && !found.ok) process.stderr.write(`no band: ${found.reason.sentence}\n`);
  const sure = found?.ok ? found.value : null;
  const solution = sure ? { ...solutionAtEdge(nominal, sure), verdicts: sure.verdicts } : nominal;
  if (values.json) {
    process.stdout.write(figuresJson(design, solution, sure));
    return;
  }
  if (values.csv) {
    process.stdout.write(figuresCsv(solution, sure));
    return;
  }
  process.stdout.write(asText(design, solution));
  if (sure) process.stdout.write(`\n${bandLines(sure, namesOf(nominal)).join('\n')}\n`);
  else process.stdout.write('\nNominal figures; --band says how sure they are.\n');
}

/** Whoever reads the output has seen enough, as `head` has after ten lines: nothing is left to do or to say. */
function endWhenNobodyReads(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}

endWhenNobodyReads();
main();
