import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sinkSchema } from '../../shared/design/heatSchema.ts';
import { startDesign } from '../../shared/design/start.ts';
import { sinkDescription } from '../../src/engine/couple/sinkDescription.ts';
import { pressureAtAltitude } from '../../src/engine/heat/air.ts';
import { emissivityRange } from '../../src/engine/heat/materials.ts';
import { prepareSink, type SinkDescription } from '../../src/engine/heat/sink.ts';
import { ninetyPercent } from '../../src/engine/numerics/normalQuantile.ts';

/** A sink somebody measured: a plain file, SI, as `reference-data/measuredSinks/README.md` says. */
export interface MeasuredSink {
  readonly name: string;
  readonly source: {
    readonly title: string;
    readonly part: string;
    readonly year: number | null;
    readonly status: string;
  };
  /** Fields of the design's sink; what is not named is as on a fresh sheet. */
  readonly sink: Readonly<Record<string, unknown>>;
  /** m above the sea; 0 if absent. */
  readonly altitude?: number;
  readonly readings: readonly { readonly power: number; readonly plate: number; readonly air: number }[];
}

/** One reading beside the model and its band of nine in ten; rises, K. */
export interface MeasuredRow {
  readonly name: string;
  readonly source: string;
  readonly power: number;
  readonly measured: number;
  readonly model: number;
  readonly low: number;
  readonly high: number;
  readonly inside: boolean;
}

function riseOf(
  description: SinkDescription,
  options: { pressure: number; filmFactor?: number },
  power: number,
  air: number,
): number {
  const sink = prepareSink(description, options);
  if (!sink.ok) throw new Error(sink.reason.sentence);
  return sink.value.steadyPlate(power, air) - air;
}

/** Model and band of every reading of a measured sink. Film and finish are taken as independent, in the logarithm. */
export function judgeMeasured(file: MeasuredSink): readonly MeasuredRow[] {
  const sink = sinkSchema.parse({ ...startDesign.sink, ...file.sink });
  const description = sinkDescription(sink);
  if (!description.ok) throw new Error(description.reason.sentence);
  const pressure = pressureAtAltitude(file.altitude ?? 0);
  const { low: dull, high: bright } = emissivityRange(sink.finish, sink.alloy, sink.emissivity);
  const withFinish = (emissivity: number): SinkDescription => ({
    ...description.value,
    finish: 'own',
    emissivity,
  });
  return file.readings.map(({ power, plate, air }) => {
    const model = riseOf(description.value, { pressure }, power, air);
    const prepared = prepareSink(description.value, { pressure });
    const deviation = prepared.ok ? prepared.value.filmUncertainty(air + model, air) : 0;
    const film = Math.exp(ninetyPercent * deviation);
    const worse = Math.hypot(
      Math.log(riseOf(description.value, { pressure, filmFactor: 1 / film }, power, air) / model),
      Math.log(riseOf(withFinish(dull), { pressure }, power, air) / model),
    );
    const better = Math.hypot(
      Math.log(riseOf(description.value, { pressure, filmFactor: film }, power, air) / model),
      Math.log(riseOf(withFinish(bright), { pressure }, power, air) / model),
    );
    const measured = plate - air;
    const low = model * Math.exp(-better);
    const high = model * Math.exp(worse);
    const { title, part, year } = file.source;
    return {
      name: file.name,
      source: [title, part, year].filter(Boolean).join(', '),
      power,
      measured,
      model,
      low,
      high,
      inside: measured >= low && measured <= high,
    };
  });
}

/** Every measured sink of a directory, by name of its file. */
export function readMeasured(directory: string): readonly MeasuredSink[] {
  return readdirSync(directory)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => JSON.parse(readFileSync(join(directory, name), 'utf8')) as MeasuredSink);
}
