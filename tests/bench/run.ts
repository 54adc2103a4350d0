import { cpus } from 'node:os';
import { buildPage } from '../../src/build/run.mjs';
import { closeBrowser } from '../browser/support.ts';
import { answerFigures } from './answers.ts';
import { engineFigures } from './engine.ts';
import { type Figure, tableOf } from './figures.ts';
import { heatFigures } from './heat.ts';
import { editFigures, openingFigures, weightFigures } from './page.ts';

// `npm run bench`: what the sheet weighs and how long it takes, beside what we want. A slow figure is a figure,
// not a failure; only what cannot be measured at all is told as such. `npm run bench -- edits` measures that part alone.

interface Part {
  readonly name: string;
  readonly measure: () => Figure[] | Promise<Figure[]>;
  /** Needs the built page. */
  readonly ofPage?: true;
}

const parts: readonly Part[] = [
  { name: 'engine', measure: engineFigures },
  { name: 'heat', measure: heatFigures },
  { name: 'answers', measure: answerFigures },
  { name: 'weight', measure: weightFigures, ofPage: true },
  { name: 'opening', measure: openingFigures, ofPage: true },
  { name: 'edits', measure: editFigures, ofPage: true },
];

async function measured({ name, measure }: Part): Promise<Figure[]> {
  console.log(`Measuring ${name} ...`);
  try {
    return await measure();
  } catch (error) {
    console.log(`${name}: not measured: ${error instanceof Error ? error.message : String(error)}`);
    return [];
  }
}

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !parts.some((part) => part.name === name));
if (unknown.length > 0) {
  console.log(`No such part: ${unknown.join(', ')}. There are ${parts.map(({ name }) => name).join(', ')}.`);
  process.exit(1);
}
const chosen = parts.filter(({ name }) => asked.length === 0 || asked.includes(name));
const figures: Figure[] = [];
for (const part of chosen.filter(({ ofPage }) => !ofPage)) figures.push(...(await measured(part)));
const ofPage = chosen.filter((part) => part.ofPage);
if (ofPage.length > 0 && (await buildPage()) === 0) {
  for (const part of ofPage) {
    figures.push(...(await measured(part)));
    // A browser of its own for each part: what one leaves behind is not measured with the next.
    await closeBrowser();
  }
}
console.log(
  `\nNode ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}\n`,
);
console.log(tableOf(figures));
