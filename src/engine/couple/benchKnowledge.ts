import type { BenchFinding, BenchReport, BenchRunReport } from '../../../shared/bench.ts';
import { changedSince, loggedSink } from '../../../shared/design/loggedSink.ts';
import type { Design, LoggedSink, SinkInput } from '../../../shared/design/schema.ts';
import { type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { pressureAtAltitude } from '../heat/air.ts';
import { localRise, modelTemperatures } from '../heat/benchFit.ts';
import { drawnUncertainty, weighedUncertainty } from '../heat/benchModel.ts';
import { type FilmKnowledge, updateFilm } from '../heat/benchUpdate.ts';
import { prepareSink, type Sink } from '../heat/sink.ts';
import { usualFilmUncertainty } from '../heat/sinkLaws.ts';
import { keepLast } from '../numerics/keepLast.ts';
import { benchRunFit, type FittedRun } from './benchRunFit.ts';
import { hasFan, sinkDescription } from './sinkDescription.ts';

/** No number of runs makes the heat capacity better known than this: standard deviation of its logarithm (own choice). */
const capacityFloor = 0.02;

/**
 * Standard deviation of ln(film factor) added to a run that was logged on a sink cooled in another way: its factor then
 * says little more than that the builder's sinks cool better or worse than drawn. Own choice: as much as the estimate's,
 * so that such a run and the estimate weigh about the same.
 */
const otherCoolingUncertainty = usualFilmUncertainty;

/** The same where the channels are others by a factor of two in their gap, or in a length that acts like it. */
const otherGapUncertainty = usualFilmUncertainty;

/** What is known of the film coefficients and the heat capacity of a sink. */
export interface SinkKnowledge {
  /** Factor on all film coefficients. */
  readonly filmFactor: number;
  /** Standard deviation of its logarithm; null before a measurement, when the model says it for each state. */
  readonly uncertainty: number | null;
  /** Factor on the heat capacity that the drawing or the scale says; null when no run shows it. */
  readonly capacityFactor: number | null;
  readonly capacityUncertainty: number | null;
  /** Runs that count. */
  readonly counted: number;
  /** Fields in which the present sink is not the one of some run that counts: no run has taken their doubt in. */
  readonly changed: readonly (keyof LoggedSink)[];
  readonly notes: readonly Note[];
}

export const notMeasured: SinkKnowledge = {
  filmFactor: 1,
  uncertainty: null,
  capacityFactor: null,
  capacityUncertainty: null,
  counted: 0,
  changed: [],
  notes: [],
};

/** A run, the sink it was logged on, and its fit. */
interface Examined {
  readonly logged: LoggedSink;
  readonly fit: Outcome<FittedRun>;
  /** Shape, position, fan or the way its air is led is not that of the present sink: another law of cooling. */
  readonly otherCooling: boolean;
}

/** A run that counts. */
interface Sound extends Examined {
  readonly fitted: FittedRun;
  readonly finding: BenchFinding;
}

/** Whether air cools two sinks by different laws. Dimensions, finish and the fan's own figures are within one law. */
function coolsOtherwise(logged: LoggedSink, sink: SinkInput): boolean {
  const blown = hasFan(sink);
  if (logged.shape !== sink.shape || hasFan(logged) !== blown) return true;
  // Where a fan blows it does not matter which way is up; how its air is led does.
  if (blown) return sink.shape !== 'tunnel' && logged.fanPath !== sink.fanPath;
  return logged.position !== sink.position;
}

/**
 * Standard deviation of ln(film factor) added to a run for the channels it was logged on: what the correlations miss
 * there they need not miss at another Elenbaas number, s⁴/L. Own choice: grows with its logarithm up to a factor of two
 * in the gap.
 */
function channelUncertainty({ fitted, logged }: Sound, present: Sink, sink: SinkInput): number {
  const gaps = Math.log((present.gap ?? 1) / (fitted.sink.gap ?? 1));
  const change = Math.abs(gaps - Math.log(sink.length / logged.length) / 4);
  return otherGapUncertainty * Math.min(1, change / Math.LN2);
}

function examine(design: Design, pressure: number): readonly Examined[] {
  const present = loggedSink(design.sink);
  return design.bench.map((run) => {
    const logged = run.sink ?? present;
    return {
      logged,
      fit: benchRunFit({ ...run, sink: null }, logged, pressure),
      otherCooling: coolsOtherwise(logged, design.sink),
    };
  });
}

function runsThatCount(examined: readonly Examined[]): readonly Sound[] {
  return examined.flatMap((each) => {
    if (!each.fit.ok) return [];
    const fitted = each.fit.value;
    const { found } = fitted;
    return found.ok && found.value.counts ? [{ ...each, fitted, finding: found.value }] : [];
  });
}

/**
 * Factor on the heat capacity: mean of the logarithms, weighed by 1/σ²; what is known of the sink beforehand is in each
 * run already. A run on a drawn sink says less of a weighed one, and the other way round.
 */
function joinedCapacity(sound: readonly Sound[], weighed: boolean) {
  let weight = 0;
  let sum = 0;
  for (const { finding, fitted, logged } of sound) {
    const { heatCapacity, capacityUncertainty } = finding;
    if (heatCapacity === null || capacityUncertainty === null) continue;
    const other = (logged.mass !== null) === weighed ? 0 : drawnUncertainty;
    const w = Math.max(Math.hypot(capacityUncertainty, other), capacityFloor) ** -2;
    weight += w;
    sum += w * Math.log(heatCapacity / fitted.model.heatCapacity);
  }
  if (weight === 0) return null;
  return { factor: Math.exp(sum / weight), uncertainty: Math.max(weight ** -0.5, capacityFloor) };
}

/** Doubt of the film before a run: as the model says where the runs are, the widest of them. */
function priorUncertainty(present: Sink, examined: readonly Examined[]): number {
  const all = examined.flatMap(({ fit, otherCooling }) => {
    const readings = fit.ok ? fit.value.run.readings : [];
    if (!fit.ok || readings.length === 0) return [];
    const hottest = Math.max(...readings.map(({ plate }) => plate));
    const { air } = readings[0]!;
    const own = fit.value.sink.filmUncertainty(hottest, air);
    return otherCooling ? [own, present.filmUncertainty(hottest, air)] : [own];
  });
  return Math.max(usualFilmUncertainty, ...all);
}

/** All runs of a design joined: for its present sink, and for the sinks they were logged on. */
interface Joined {
  readonly examined: readonly Examined[];
  readonly present: Sink;
  readonly prior: FilmKnowledge;
  readonly film: FilmKnowledge;
  /** Factor for the sinks the runs were logged on. */
  readonly ownFilmFactor: number;
  readonly capacity: { readonly factor: number; readonly uncertainty: number } | null;
  readonly counted: number;
  readonly changed: readonly (keyof LoggedSink)[];
  readonly notes: readonly Note[];
}

function join(design: Design, pressure: number): Outcome<Joined> {
  const description = sinkDescription(design.sink);
  if (!description.ok) return description;
  const present = prepareSink(description.value, { pressure });
  if (!present.ok) return present;
  const examined = examine(design, pressure);
  const sound = runsThatCount(examined);
  const prior = { filmFactor: 1, uncertainty: priorUncertainty(present.value, examined) };
  const own = updateFilm(
    prior,
    sound.map(({ finding }) => finding),
  );
  if (!own.ok) return own;
  const film = updateFilm(
    prior,
    sound.map((run) => {
      const other = run.otherCooling
        ? otherCoolingUncertainty
        : channelUncertainty(run, present.value, design.sink);
      return { ...run.finding, uncertainty: Math.hypot(run.finding.uncertainty, other) };
    }),
  );
  if (!film.ok) return film;
  return success({
    examined,
    present: present.value,
    prior,
    film: film.value,
    ownFilmFactor: own.value.filmFactor,
    capacity: joinedCapacity(sound, design.sink.mass !== null),
    counted: sound.length,
    changed: [...new Set(sound.flatMap(({ logged }) => changedSince(logged, design.sink)))],
    notes: notesOf(present.value, examined, sound, film.value.filmFactor),
  });
}

function reportRun({ fit }: Examined, filmFactor: number, capacityFactor: number): BenchRunReport {
  if (!fit.ok) return { found: fit, curve: null };
  const { model, run, found, startPlate, rejected } = fit.value;
  const { readings } = run;
  if (readings.length < 2 || readings.some(({ time }, i) => i > 0 && time <= readings[i - 1]!.time)) {
    return { found, curve: null };
  }
  const start = startPlate ?? readings[0]!.plate - localRise(run, readings[0]!.time);
  return {
    found,
    curve: {
      time: readings.map(({ time }) => time),
      measured: readings.map(({ plate }) => plate),
      before: modelTemperatures(model, run, 1, model.heatCapacity, start),
      after: modelTemperatures(model, run, filmFactor, capacityFactor * model.heatCapacity, start),
      rejected,
    },
  };
}

/**
 * What the bench runs of a design say of its sink, each alone and all together with the estimate.
 *
 * Each run is fitted by the model of the sink it was logged on; the factors that come out are applied to the present
 * sink, so that a change of the sink changes what the model says it does and no more. The film factor joins estimate and
 * runs in its logarithm by 1/σ²; runs that are not plausible are left out and told. A run on a sink that is cooled in
 * another way carries an uncertainty of 0.15 more, one on channels of another gap up to as much (own choice).
 *
 * @param pressure Pa
 * @returns failures as `prepareSink`
 */
export function benchReport(design: Design, pressure: number): Outcome<BenchReport> {
  const joined = join(design, pressure);
  if (!joined.ok) return joined;
  const { examined, present, prior, film, ownFilmFactor, capacity, counted, notes } = joined.value;
  const before = {
    uncertainty: prior.uncertainty,
    heatCapacity: present.heatCapacity,
    capacityUncertainty: design.sink.mass === null ? drawnUncertainty : weighedUncertainty,
  };
  const capacityFactor = capacity?.factor ?? 1;
  return success<BenchReport>({
    runs: examined.map((each) => reportRun(each, ownFilmFactor, capacityFactor)),
    before,
    filmFactor: film.filmFactor,
    heatCapacity: capacityFactor * before.heatCapacity,
    uncertainty: film.uncertainty,
    capacityUncertainty: capacity?.uncertainty ?? before.capacityUncertainty,
    counted,
    notes,
  });
}

function notesOf(
  present: Sink,
  examined: readonly Examined[],
  sound: readonly Sound[],
  filmFactor: number,
): readonly Note[] {
  const counted = sound.length;
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
  notes.push(...otherSinkNotes(present, sound));
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

/** Heat that a sink gives off in one state and what it holds: two that agree in it are one sink. */
function sheds(sink: Sink): number {
  return sink.heat(350, 300) + sink.heatCapacity;
}

/** Tells where the present sink is not the one that was measured. */
function otherSinkNotes(present: Sink, sound: readonly Sound[]): readonly Note[] {
  const otherwise = sound.filter(({ otherCooling }) => otherCooling).length;
  if (otherwise > 0) {
    return [
      note(
        'limit',
        'benchOtherCooling',
        `${otherwise === 1 ? 'A bench run was' : `${otherwise} bench runs were`} logged on a sink of another shape, ` +
          'position or fan: the film coefficients follow it only part of the way and stay less well known.',
        { runs: otherwise },
      ),
    ];
  }
  if (sound.every(({ fitted }) => sheds(fitted.sink) === sheds(present))) return [];
  return [
    note(
      'information',
      'benchOtherSink',
      'The sink has changed since it was logged: what the bench run corrects is carried over to the sink as now given.',
    ),
  ];
}

/** What the bench runs of a design say, in the air of its altitude; see `benchReport`. */
export function benchReportOf(design: Design): Outcome<BenchReport> {
  return benchReport(design, pressureAtAltitude(design.surroundings.altitude));
}

interface KnowledgeQuestion {
  readonly design: Design;
  /** Pa */
  readonly pressure: number;
}

const knowledgeKept = 8;
const keptKnowledge = keepLast(
  findKnowledge,
  ({ design, pressure }: KnowledgeQuestion) => [design.sink, design.bench, pressure],
  knowledgeKept,
);

/**
 * What is known of the sink of a design when its bench runs are taken in. The same sink and runs give the kept answer.
 *
 * @param pressure Pa
 */
export function sinkKnowledge(design: Design, pressure: number): SinkKnowledge {
  return design.bench.length === 0 ? notMeasured : keptKnowledge({ design, pressure });
}

function findKnowledge({ design, pressure }: KnowledgeQuestion): SinkKnowledge {
  const joined = join(design, pressure);
  return joined.ok ? knowledgeOf(joined.value) : notMeasured;
}

function knowledgeOf({ film, capacity, counted, changed, notes }: Joined): SinkKnowledge {
  if (counted === 0) return { ...notMeasured, notes };
  return {
    filmFactor: film.filmFactor,
    uncertainty: film.uncertainty,
    capacityFactor: capacity?.factor ?? null,
    capacityUncertainty: capacity?.uncertainty ?? null,
    counted,
    changed,
    notes,
  };
}
