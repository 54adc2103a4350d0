import { cpus } from 'node:os';
import { buildPage } from '../../src/build/run.mjs';
import { answerFigures } from './answers.ts';
import { engineFigures } from './engine.ts';
import { type Figure, tableOf } from './figures.ts';
import { heatFigures } from './heat.ts';
import { pageFigures, weightFigures } from './page.ts';

// `npm run bench`: what the sheet weighs and how long it takes, beside what we want. A slow figure is a figure,
// not a failure; only what cannot be measured at all is told as such.

async function measured(name: string, measure: () => Figure[] | Promise<Figure[]>): Promise<Figure[]> {
  console.log(`Measuring ${name} ...`);
  try {
    return await measure();
  } catch (error) {
    console.log(`${name}: not measured: ${error instanceof Error ? error.message : String(error)}`);
    return [];
  }
}

const figures = [
  ...(await measured('the engine', engineFigures)),
  ...(await measured('plate and keying', heatFigures)),
  ...(await measured('answers', answerFigures)),
];
if ((await buildPage()) === 0) {
  figures.push(
    ...(await measured('the first load', weightFigures)),
    ...(await measured('the page', pageFigures)),
  );
}
console.log(
  `\nNode ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}\n`,
);
console.log(tableOf(figures));
