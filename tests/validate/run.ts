import { fileURLToPath } from 'node:url';
import { allChecks, errorOf } from './checks.ts';
import { judgeMeasured, readMeasured } from './measuredSinks.ts';
import { listOf, markdownOf, measuredList } from './report.ts';

// `npm run validate`: the heat models beside every published value and independent case there is; `-- --markdown` prints
// the table of the README. A figure outside what is allowed ends with an error.

const checks = allChecks();
if (process.argv.includes('--markdown')) {
  console.log(markdownOf(checks));
} else {
  const directory = fileURLToPath(new URL('../../reference-data/measuredSinks', import.meta.url));
  const outside = checks.filter((check) => Math.abs(errorOf(check)) > check.allowed);
  const independent = checks.filter(({ origin }) => origin === 'independent').length;
  console.log(listOf(checks));
  console.log(`\n${measuredList(readMeasured(directory).flatMap(judgeMeasured))}`);
  console.log(
    `\n${checks.length} figures, ${independent} of independent origin, ${outside.length} outside what is allowed.`,
  );
  console.log(
    'No measured fin array in still air is among them: trust the band, and log a bench run with the real sink.',
  );
  for (const check of outside) console.log(`outside: ${check.item}`);
  process.exitCode = outside.length > 0 ? 1 : 0;
}
