import type { BenchFinding, BenchReport, BenchRunReport } from '../../../shared/bench.ts';
import type { BenchRunInput, Design } from '../../../shared/design/schema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { pressureAtAltitude } from '../heat/air.ts';
import { type BenchReading, type BenchRun, fitRun, modelTemperatures } from '../heat/benchFit.ts';
import { type BenchModel, benchModel } from '../heat/benchModel.ts';
import { type FilmKnowledge, fitSteady, updateFilm } from '../heat/benchUpdate.ts';
import { plateSpread } from '../heat/plateSpread.ts';
import { prepareSink, type Sink } from '../heat/sink.ts';
import { usualFilmUncertainty } from '../heat/sinkLaws.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import { sinkDescription } from './sinkDescription.ts';

/** Rise at which the plate's film is taken for the place of the sensor, K. */
const usualRise = 50;
/** A thermometer beside the resistor sits this far from its foot, m; one in a corner this share of the plate inside. */
const besideGap = 0.004;
const cornerShare = 0.06;
/** No number of runs makes the heat capacity better known than this: standard deviation of its logarithm (own choice). */
const capacityFloor = 0.02;

/** What is known of the film coefficients and the heat capacity of a sink. */
export interface SinkKnowledge {
  /** Factor on all film coefficients. */
  readonly filmFactor: number;
  /** Standard deviation of its logarithm; null before a measurement, when the model says it for each state. */
  readonly uncertainty: number | null;
  /** J/K; null when the drawing or the scale says it. */
  readonly heatCapacity: number | null;
  readonly capacityUncertainty: number | null;
  /** Runs that count. */
  readonly counted: number;
  readonly notes: readonly Note[];
}

export const notMeasured: SinkKnowledge = {
  filmFactor: 1,
  uncertainty: null,
  heatCapacity: null,
  capacityUncertainty: null,
  counted: 0,
  notes: [],
};

/** Rise of the sensor's place over the plate's mean per watt in the resistor, K/W; 0 where the foot does not fit. */
function sensorRise(design: Design, run: BenchRunInput, sink: Sink): number {
  const { width, length, baseThickness } = design.sink;
  const film = sink.heat(run.air + usualRise, run.air) / (usualRise * sink.plateArea);
  const foot = { x: width / 2, y: length / 2, width: run.resistorWidth, length: run.resistorLength };
  const plate = { width, length, thickness: baseThickness, conductivity: sink.conductivity, film };
  const spread = plateSpread(plate, [foot]);
  if (!spread.ok) return 0;
  if (run.sensorPlace === 'corner') {
    return spread.value.pointRise(cornerShare * width, cornerShare * length, [1]);
  }
  const beside = Math.min(foot.x + foot.width / 2 + besideGap, width);
  return spread.value.pointRise(beside, foot.y, [1]);
}

/** Room air at each reading, K: as logged, the last one logged where a row has none; that of the run where no row has. */
function roomAir({ readings, air }: BenchRunInput): readonly number[] {
  let last = readings.find(({ room }) => room !== null)?.room ?? air;
  return readings.map(({ room }) => {
    last = room ?? last;
    return last;
  });
}

/** A run as the fit takes it: 90 % half-widths become standard deviations. */
function asRun(design: Design, run: BenchRunInput, sink: Sink): BenchRun {
  const power = run.kind === 'coolDown' ? 0 : run.power;
  const rooms = roomAir(run);
  const readings: readonly BenchReading[] = run.readings.map(({ time, temperature }, i) => ({
    time,
    plate: temperature,
    air: rooms[i]!,
  }));
  return {
    readings,
    power,
    sensorRise: sensorRise(design, run, sink),
    powerUncertainty: power > 0 ? run.powerDoubt / ninetyPercent : 0,
    temperatureUncertainty: run.sensorDoubt / ninetyPercent,
  };
}

function steadyFinding(model: BenchModel, run: BenchRun): Outcome<BenchFinding> {
  if (run.readings.length === 0) {
    return failure('tooFewReadings', 'A steady state needs at least one reading.', { readings: 0 });
  }
  const meanOf = (value: (reading: BenchReading) => number) =>
    run.readings.reduce((sum, reading) => sum + value(reading), 0) / run.readings.length;
  const found = fitSteady(model, {
    ...run,
    plate: meanOf(({ plate }) => plate),
    air: meanOf(({ air }) => air),
  });
  if (!found.ok) return found;
  return success(
    {
      ...found.value,
      heatCapacity: null,
      capacityUncertainty: null,
      lengthOverTime: null,
      scatter: null,
      counts: found.notes.length === 0,
    },
    found.notes,
  );
}

interface Examined {
  readonly run: BenchRun;
  readonly found: Outcome<BenchFinding>;
  readonly startPlate: number | null;
  readonly rejected: readonly number[];
}

function examine(model: BenchModel, kind: BenchRunInput['kind'], run: BenchRun): Examined {
  if (kind === 'steady') return { run, found: steadyFinding(model, run), startPlate: null, rejected: [] };
  const fit = fitRun(model, run);
  if (!fit.ok) return { run, found: fit, startPlate: null, rejected: [] };
  const { filmFactor, uncertainty, heatCapacity, capacityUncertainty, lengthOverTime, scatter } = fit.value;
  const found = success<BenchFinding>(
    {
      filmFactor,
      uncertainty,
      heatCapacity,
      capacityUncertainty,
      lengthOverTime,
      scatter,
      counts: fit.value.plausible,
    },
    fit.notes,
  );
  return { run, found, startPlate: fit.value.startPlate, rejected: fit.value.rejected };
}

function findingsThatCount(examined: readonly Examined[]): readonly BenchFinding[] {
  return examined.flatMap(({ found }) => (found.ok && found.value.counts ? [found.value] : []));
}

/** Mean of the logarithms, weighed by 1/σ²; what is known of the sink beforehand is in each run already. */
function joinedCapacity(findings: readonly BenchFinding[]) {
  let weight = 0;
  let sum = 0;
  for (const { heatCapacity, capacityUncertainty } of findings) {
    if (heatCapacity === null || capacityUncertainty === null) continue;
    const w = Math.max(capacityUncertainty, capacityFloor) ** -2;
    weight += w;
    sum += w * Math.log(heatCapacity);
  }
  if (weight === 0) return null;
  return { heatCapacity: Math.exp(sum / weight), uncertainty: Math.max(weight ** -0.5, capacityFloor) };
}

/** Doubt of the film before a run: as the model says where the runs are, the widest of them. */
function priorUncertainty(sink: Sink, runs: readonly BenchRunInput[]): number {
  const all = runs.flatMap(({ readings, air }) =>
    readings.length > 0 ? [sink.filmUncertainty(Math.max(...readings.map((r) => r.temperature)), air)] : [],
  );
  return Math.max(usualFilmUncertainty, ...all);
}

function reportRun(
  model: BenchModel,
  { run, found, startPlate, rejected }: Examined,
  joined: { readonly filmFactor: number; readonly heatCapacity: number },
): BenchRunReport {
  const { readings } = run;
  if (readings.length < 2 || readings.some(({ time }, i) => i > 0 && time <= readings[i - 1]!.time)) {
    return { found, curve: null };
  }
  const start = startPlate ?? readings[0]!.plate - run.sensorRise * run.power;
  return {
    found,
    curve: {
      time: readings.map(({ time }) => time),
      measured: readings.map(({ plate }) => plate),
      before: modelTemperatures(model, run, 1, model.heatCapacity, start),
      after: modelTemperatures(model, run, joined.filmFactor, joined.heatCapacity, start),
      rejected,
    },
  };
}

/**
 * What the bench runs of a design say of its sink, each alone and all together with the estimate.
 *
 * The film factor joins estimate and runs in its logarithm by 1/σ²; runs that are not plausible are left out and told.
 * The place of the thermometer is corrected by the plate's spreading for the resistor's foot in the middle of the plate.
 *
 * @param pressure Pa
 * @returns failures as `prepareSink`
 */
export function benchReport(design: Design, pressure: number): Outcome<BenchReport> {
  const description = sinkDescription(design.sink);
  if (!description.ok) return description;
  const sink = prepareSink(description.value, { pressure });
  if (!sink.ok) return sink;
  const model = benchModel(description.value, { pressure });
  if (!model.ok) return model;
  const examined = design.bench.map((run) => examine(model.value, run.kind, asRun(design, run, sink.value)));
  const sound = findingsThatCount(examined);
  const prior: FilmKnowledge = {
    filmFactor: 1,
    uncertainty: priorUncertainty(sink.value, design.bench),
  };
  const film = updateFilm(prior, sound);
  if (!film.ok) return film;
  const capacity = joinedCapacity(sound);
  const before = {
    uncertainty: prior.uncertainty,
    heatCapacity: model.value.heatCapacity,
    capacityUncertainty: model.value.capacityUncertainty ?? usualFilmUncertainty,
  };
  const joined = {
    filmFactor: film.value.filmFactor,
    heatCapacity: capacity?.heatCapacity ?? before.heatCapacity,
  };
  return success<BenchReport>({
    runs: examined.map((each) => reportRun(model.value, each, joined)),
    before,
    ...joined,
    uncertainty: film.value.uncertainty,
    capacityUncertainty: capacity?.uncertainty ?? before.capacityUncertainty,
    counted: sound.length,
    notes: reportNotes(examined, sound.length, joined.filmFactor),
  });
}

function reportNotes(examined: readonly Examined[], counted: number, filmFactor: number): readonly Note[] {
  const notes: Note[] = [];
  if (counted > 0) {
    const percent = Math.round(Math.abs(filmFactor - 1) * 100);
    const side = filmFactor >= 1 ? 'more' : 'less';
    notes.push(
      note(
        'information',
        'benchCorrected',
        `The sink is corrected by ${counted === 1 ? 'a bench run' : `${counted} bench runs`}: its film coefficients are ` +
          `${percent} % ${side} than the estimate.`,
        { filmFactor, counted },
      ),
    );
  }
  const left = examined.length - counted;
  if (left > 0) {
    notes.push(
      note(
        'limit',
        'benchLeftOut',
        `${left === 1 ? 'One bench run does' : `${left} bench runs do`} not count; the station of the runs says why.`,
        { left },
      ),
    );
  }
  return notes;
}

/** What the bench runs of a design say, in the air of its altitude; see `benchReport`. */
export function benchReportOf(design: Design): Outcome<BenchReport> {
  return benchReport(design, pressureAtAltitude(design.surroundings.altitude));
}

/** Results for the last few sinks and logs: the fit costs more than all the rest of a design. */
const kept = new Map<string, SinkKnowledge>();
const mostKept = 8;

/**
 * What is known of the sink of a design when its bench runs are taken in. The same sink and runs give the kept answer.
 *
 * @param pressure Pa
 */
export function sinkKnowledge(design: Design, pressure: number): SinkKnowledge {
  if (design.bench.length === 0) return notMeasured;
  const key = JSON.stringify([design.sink, design.bench, pressure]);
  const known = kept.get(key);
  if (known) return known;
  const report = benchReport(design, pressure);
  const found = report.ok ? knowledgeOf(report.value) : notMeasured;
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value ?? '');
  kept.set(key, found);
  return found;
}

function knowledgeOf(report: BenchReport): SinkKnowledge {
  if (report.counted === 0) return { ...notMeasured, notes: report.notes };
  const measuredCapacity = report.runs.some(
    ({ found }) => found.ok && found.value.counts && found.value.heatCapacity !== null,
  );
  return {
    filmFactor: report.filmFactor,
    uncertainty: report.uncertainty,
    heatCapacity: measuredCapacity ? report.heatCapacity : null,
    capacityUncertainty: measuredCapacity ? report.capacityUncertainty : null,
    counted: report.counted,
    notes: report.notes,
  };
}
