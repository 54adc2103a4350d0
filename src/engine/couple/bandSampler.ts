import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { type Service, services } from '../../../shared/solution.ts';
import { tabulateHeat } from '../heat/heatTable.ts';
import type { Sink } from '../heat/sink.ts';
import { ninetyPercent, normalQuantile } from '../numerics/normalQuantile.ts';
import { type QuasiRandom, quasiRandom } from '../numerics/quasiRandom.ts';
import { type SinkKnowledge, sinkKnowledge } from './benchKnowledge.ts';
import { caseTableOf, insideStore, scaledTable } from './caseStore.ts';
import { sinkWith } from './correctedSink.ts';
import type { Coupled } from './coupled.ts';
import { type HeatPath, prepareHeatPath, spreadingAt } from './heatPath.ts';
import { type LoadResponse, loadResponse } from './loadResponse.ts';
import type { Prepared } from './prepare.ts';
import { type CycleState, cycleAt } from './serviceCycle.ts';
import { openStore } from './store.ts';
import { type Draft, nominalDraft, type Unknown, unknownsOf } from './unknowns.ts';

/** Nodes of a sample's heat table; enough for 1e-4 of the heat. */
const sampleNodes = 16;
/** Bound for the estimated error of a step through its cycle, K; the true error is below 0.01 K (tested). */
const sampleTolerance = 0.04;
/** Width to which the junction of a temperature-dependent final is settled in a sample, K. */
const sampleSettle = 0.01;

/** Draws possible truths of a design and makes each ready to be asked like the design itself. */
export interface BandSampler {
  readonly design: Design;
  readonly unknowns: readonly Unknown[];
  readonly knowledge: SinkKnowledge;
  /** Of the design as it stands. */
  readonly nominal: Readonly<Partial<Record<Service, CycleState>>>;
  /** The sample of this number; `places` receives the standard normal place of each unknown. */
  draw(index: number, places: Float64Array): Sample;
}

/** One possible truth. */
export interface Sample extends Coupled {
  /** Air inside the case for the mean heat released in it, the sink standing outside; K. */
  readonly caseAir: (heat: number) => number;
}

function cyclesAt(coupled: Coupled, share: number): Partial<Record<Service, CycleState>> {
  const found: Partial<Record<Service, CycleState>> = {};
  for (const service of services) {
    const state = cycleAt(coupled, service, share);
    if (state.ok) found[service] = state.value;
  }
  return found;
}

/**
 * Standard deviation of ln(film coefficient) in the hottest state of the design, planned or without a pause: a plan that
 * hardly warms the sink must not widen the doubt of a duty that does.
 */
function filmDeviation(sink: Sink, knowledge: SinkKnowledge, states: readonly CycleState[]): number {
  if (knowledge.uncertainty !== null) return knowledge.uncertainty;
  const hottest = states.reduce<CycleState | null>(
    (most, state) => (most && most.plateMean >= state.plateMean ? most : state),
    null,
  );
  return hottest ? sink.filmUncertainty(hottest.plateMean, hottest.sinkAir) : sink.filmUncertainty(340, 300);
}

function withSink(design: Design, draft: Draft): Design {
  return { ...design, sink: { ...design.sink, ...draft.sink } as Design['sink'] };
}

/** Logarithmic change of the spreading resistance by lengths and conductivity of the plate, a parabola in each. */
type SpreadResponse = (places: Float64Array) => number;

const plateUnknowns = ['sink.width', 'sink.length', 'sink.baseThickness', 'conductivity'];

/** Spreading resistance of a plate as drawn, K/W; null where parts or fins do not fit on it any more. */
function spreadingOf({ design, pressure }: Prepared, path: HeatPath, draft: Draft): number | null {
  if (draft.conductivity !== 1) {
    const spreading = spreadingAt(design, path, path.sink.conductivity * draft.conductivity);
    return spreading.ok ? spreading.value : null;
  }
  const moved = prepareHeatPath(withSink(design, draft), pressure);
  return moved.ok ? moved.value.spreading : null;
}

function spreadResponse(prepared: Prepared, path: HeatPath, unknowns: readonly Unknown[]): SpreadResponse {
  const terms = unknowns.flatMap((unknown, i) => {
    if (!plateUnknowns.includes(unknown.key) || !(path.spreading > 0)) return [];
    const at = (place: number) => {
      const draft = nominalDraft();
      unknown.draw(place, draft);
      const spreading = spreadingOf(prepared, path, draft);
      return spreading !== null && spreading > 0 ? Math.log(spreading / path.spreading) : 0;
    };
    const down = at(-ninetyPercent);
    const up = at(ninetyPercent);
    return [{ i, slope: (up - down) / 2, bend: (up + down) / 2 }];
  });
  return (places) => {
    let change = 0;
    for (const { i, slope, bend } of terms) {
      const z = places[i]! / ninetyPercent;
      change += slope * z + bend * z * z;
    }
    return Math.exp(change);
  };
}

/** The joint of a sample; a spreader plate under it is known from its dimensions. */
function jointOf(path: HeatPath, draft: Draft): number {
  return (path.padResistance - path.spreaderResistance) * draft.pad + path.spreaderResistance;
}

/** Junction to case and joint scaled each; the time constants stay. */
function stagesOf(path: HeatPath, draft: Draft): HeatPath['stages'] {
  const last = path.padResistance > 0 ? path.stages.length - 1 : path.stages.length;
  const joint = path.padResistance > 0 ? jointOf(path, draft) / path.padResistance : 1;
  return path.stages.map((stage, i) => ({
    ...stage,
    resistance: stage.resistance * (i < last ? draft.junctionToCase : joint),
  }));
}

/** Makes a design ready for sampling. Fails where the design itself has no heat path or load. */
export function bandSampler(prepared: Prepared, seed: number): Outcome<BandSampler> {
  const { coupled, design, pressure } = prepared;
  if (!coupled.ok) return coupled;
  const base = coupled.value;
  const { path } = base;
  const knowledge = sinkKnowledge(design, pressure);
  const nominal = cyclesAt(base, design.service.transmitShare);
  const states = [...Object.values(nominal), ...Object.values(cyclesAt(base, 1))];
  const response: LoadResponse = loadResponse(prepared, base);
  const unknowns = unknownsOf(design, response, knowledge, filmDeviation(path.sink, knowledge, states));
  const spread = spreadResponse(prepared, path, unknowns);
  const next: QuasiRandom = quasiRandom(unknowns.length, seed);
  const ambient = design.surroundings.ambient;
  const nominalBox = caseTableOf(design, pressure);

  function sinkOf(draft: Draft): Sink {
    const known = { ...knowledge, filmFactor: knowledge.filmFactor * draft.film };
    // What runs have measured holds with the metal as it is; of its conductivity only the spreading is in doubt then.
    const conductivity =
      knowledge.uncertainty === null ? path.sink.conductivity * draft.conductivity : path.sink.conductivity;
    const drawn = sinkWith(withSink(design, draft), pressure, known, true, conductivity);
    // Fins that overlap by a guess of their thickness are no sink: the lengths as entered then stand.
    const sink = drawn.ok ? drawn : sinkWith(design, pressure, known);
    const found = sink.ok ? sink.value : path.sink;
    return { ...found, heatCapacity: found.heatCapacity * draft.capacity };
  }

  return {
    ok: true,
    notes: [],
    value: {
      design,
      unknowns,
      knowledge,
      nominal,
      draw(index, places) {
        next(index, places);
        const draft = nominalDraft();
        unknowns.forEach((unknown, i) => {
          places[i] = normalQuantile(places[i]!);
          unknown.draw(places[i]!, draft);
        });
        const sink = sinkOf(draft);
        const laws = sink.branches.map((law) => (rise: number) => law(ambient + rise, ambient));
        const spreading = spread(places);
        const sampled: HeatPath = {
          ...path,
          sink,
          table: tabulateHeat(laws, sampleNodes),
          padResistance: jointOf(path, draft),
          junctionToCase: path.junctionToCase * draft.junctionToCase,
          spreading: path.spreading * spreading,
          rows: path.rows.map(({ own, converter }) => ({
            own: own * spreading,
            converter: converter * spreading,
          })),
          stages: stagesOf(path, draft),
        };
        const box = scaledTable(nominalBox, draft.caseCooling);
        const store =
          design.sink.placement === 'inside'
            ? insideStore(design, sampled, pressure, box)
            : openStore(sampled, ambient, sampleTolerance);
        return {
          ...response.at(draft.load, { ...base, path: sampled, store, settleTolerance: sampleSettle }),
          caseAir: (heat) => ambient + box.rise(heat),
        };
      },
    },
  };
}
