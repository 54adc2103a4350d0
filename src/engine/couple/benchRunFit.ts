import type { BenchFinding } from '../../../shared/bench.ts';
import type { BenchRunInput, LoggedSink } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { type BenchReading, type BenchRun, fitRun } from '../heat/benchFit.ts';
import { type BenchModel, benchModel } from '../heat/benchModel.ts';
import { fitSteady } from '../heat/benchUpdate.ts';
import { plateSpread } from '../heat/plateSpread.ts';
import { prepareSink, type Sink } from '../heat/sink.ts';
import { keepLast } from '../numerics/keepLast.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import { sinkDescription } from './sinkDescription.ts';

/** Rise at which the plate's film is taken for the place of the sensor, K. */
const usualRise = 50;
/** A thermometer beside the resistor sits this far from its foot, m; one in a corner this share of the plate inside. */
const besideGap = 0.004;
const cornerShare = 0.06;

/** A bench run and what it says of the sink it was logged on. */
export interface FittedRun {
  /** The estimate of that sink, before any run. */
  readonly sink: Sink;
  readonly model: BenchModel;
  readonly run: BenchRun;
  readonly found: Outcome<BenchFinding>;
  readonly startPlate: number | null;
  /** Readings left out as outliers, by their place in the log. */
  readonly rejected: readonly number[];
}

/** Rise of the sensor's place over the plate's mean per watt in the resistor, K/W; 0 where the foot does not fit. */
function sensorRise(logged: LoggedSink, run: BenchRunInput, air: number, sink: Sink): number {
  const { width, length, baseThickness } = logged;
  const film = sink.heat(air + usualRise, air) / (usualRise * sink.plateArea);
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

/** Room air of a run, K: as logged first, that of the run where no row has one; null where neither says it. */
function firstAir({ readings, air }: BenchRunInput): number | null {
  return readings.find(({ room }) => room !== null)?.room ?? air;
}

/** Room air at each reading, K: as logged, the last one logged where a row has none. */
function roomAir({ readings }: BenchRunInput, first: number): readonly number[] {
  let last = first;
  return readings.map(({ room }) => {
    last = room ?? last;
    return last;
  });
}

/** What only the builder can say of a run: power in the resistor, W, and room air, K. */
interface Said {
  readonly power: number;
  readonly air: number;
}

function saidOf(run: BenchRunInput): Outcome<Said> {
  const power = run.kind === 'coolDown' ? 0 : run.power;
  const air = firstAir(run);
  if (power === null) {
    return failure(
      'benchPowerMissing',
      'Enter the power in the resistor as you measured it: volts times amperes.',
    );
  }
  if (air === null) {
    return failure(
      'benchAirMissing',
      'Enter the room air during the run, or log it in a column “room [°C]”.',
    );
  }
  return success({ power, air });
}

/** A run as the fit takes it: 90 % half-widths become standard deviations. */
function asRun(logged: LoggedSink, run: BenchRunInput, { power, air }: Said, sink: Sink): BenchRun {
  const rooms = roomAir(run, air);
  const readings: readonly BenchReading[] = run.readings.map(({ time, temperature }, i) => ({
    time,
    plate: temperature,
    air: rooms[i]!,
  }));
  return {
    readings,
    power,
    sensorRise: sensorRise(logged, run, air, sink),
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

type Finding = Pick<FittedRun, 'found' | 'startPlate' | 'rejected'>;

function findingOf(model: BenchModel, kind: BenchRunInput['kind'], run: BenchRun): Finding {
  if (kind === 'steady') return { found: steadyFinding(model, run), startPlate: null, rejected: [] };
  const fit = fitRun(model, run);
  if (!fit.ok) return { found: fit, startPlate: null, rejected: [] };
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
  return { found, startPlate: fit.value.startPlate, rejected: fit.value.rejected };
}

interface FitQuestion {
  readonly input: BenchRunInput;
  readonly logged: LoggedSink;
  /** Pa */
  readonly pressure: number;
}

function fitted({ input, logged, pressure }: FitQuestion): Outcome<FittedRun> {
  const said = saidOf(input);
  if (!said.ok) return said;
  const description = sinkDescription(logged);
  if (!description.ok) return description;
  const sink = prepareSink(description.value, { pressure });
  if (!sink.ok) return sink;
  const model = benchModel(description.value, { pressure });
  if (!model.ok) return model;
  const run = asRun(logged, input, said.value, sink.value);
  return success({
    sink: sink.value,
    model: model.value,
    run,
    ...findingOf(model.value, input.kind, run),
  });
}

/** A fit costs more than all the rest of a design, and no edit of the sink changes it. */
const fitsKept = 12;
const keptFit = keepLast(fitted, (question) => question, fitsKept);

/**
 * What a run says of the sink it was logged on, by the model of that sink; the present sink has no say in it.
 * The place of the thermometer is corrected by the plate's spreading for the resistor's foot in the middle of the plate.
 * The same run and sink give the kept answer.
 *
 * @param pressure Pa
 * @returns failures as `sinkDescription` and `prepareSink`, where the sink it was logged on is none; `benchPowerMissing` and
 * `benchAirMissing` where the run does not say them
 */
export function benchRunFit(input: BenchRunInput, logged: LoggedSink, pressure: number): Outcome<FittedRun> {
  return keptFit({ input, logged, pressure });
}
