import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Note, type Outcome, type Reason, success } from '../../../shared/outcome.ts';
import {
  type HeatNode,
  type Service,
  type ServiceResult,
  type Solution,
  type State,
  services,
} from '../../../shared/solution.ts';
import { putBench } from './benchValues.ts';
import { caseAirAt } from './caseStore.ts';
import type { Coupled } from './coupled.ts';
import { heatsMoreThanReceive } from './cycleHeat.ts';
import { type DutyLimit, safeShare } from './duty.ts';
import { summariseFinal } from './finalSummary.ts';
import { placesOf, putSink, stillFigures } from './heatValues.ts';
import { junctionState, worst } from './limits.ts';
import { cautionFigures, coolEnough, hottestJunction, judgePeople, touchOf, warn } from './people.ts';
import { putPeople } from './peopleValues.ts';
import { powerPaths } from './powerPath.ts';
import { notesOf, type Prepared, prepare } from './prepare.ts';
import { fallsShort } from './reachedPower.ts';
import { type CycleState, cycleAt, holdTimeOf } from './serviceCycle.ts';
import { dutyWords, serviceWords } from './serviceWords.ts';
import { type SupplyFinding, supplyState } from './supplyJudgement.ts';
import { supplyReport } from './supplyReport.ts';
import { putConverterJunctions, putDesigned, putSupply } from './supplyValues.ts';
import { putCoupled, putElectrics, putGiven, putPath, putService, ValueList } from './values.ts';
import { peopleVerdict, serviceVerdict, supplyVerdict } from './verdicts.ts';

type ByService<T> = Record<Service, T>;

function forEachService<T>(make: (service: Service) => T): ByService<T> {
  return { ssb: make('ssb'), cw: make('cw'), keyDown: make('keyDown') };
}

/** Limits that end the safe duty. */
export function dutyLimits(prepared: Prepared): readonly DutyLimit[] {
  const { design, limits } = prepared;
  const junction: DutyLimit = {
    key: 'junction',
    limit: limits.design,
    temperature: (point) => point.junctionPeak,
  };
  const threshold = touchOf(design, null).threshold;
  if (!design.limits.touchGoverns || threshold === null) return [junction];
  const touch: DutyLimit = {
    key: 'touch',
    limit: threshold,
    temperature: (point) => touchOf(design, point.platePeak).temperature ?? 0,
  };
  return [junction, touch];
}

const governingWords = {
  junction: 'The junction limit governs.',
  touch: 'The touch limit governs.',
  none: 'No limit is met even without a pause.',
} as const;

function serviceResult(
  prepared: Prepared,
  coupled: Coupled,
  service: Service,
  state: CycleState,
  forbidding: SupplyFinding | undefined,
  short: boolean,
): Outcome<ServiceResult> {
  const hold = holdTimeOf(coupled, service, prepared.limits.design);
  if (!hold.ok) return hold;
  const temperatureState = junctionState(state.junctionPeak, prepared.limits);
  if (forbidding) {
    return success({
      service,
      safeDuty: 0,
      governing: { key: forbidding.key, sentence: forbidding.sentence },
      holdTime: 0,
      state: 'over',
    });
  }
  const limits = dutyLimits(prepared);
  let guess = state.guess;
  const at = (share: number) => {
    const tried = cycleAt(coupled, service, share, guess);
    if (tried.ok) guess = tried.value.guess;
    return tried;
  };
  const found = safeShare(at, limits, heatsMoreThanReceive(coupled, state.load), state);
  if (!found.ok) return found;
  const key = found.value.governing ?? 'none';
  return success({
    service,
    safeDuty: found.value.share,
    governing: { key, sentence: governingWords[key] },
    holdTime: hold.value,
    state: worst([temperatureState, touchStateOf(limits, state), short ? 'close' : 'fine']),
  });
}

function touchStateOf(limits: readonly DutyLimit[], state: CycleState): State {
  const touch = limits.find((limit) => limit.key === 'touch');
  return touch && touch.temperature(state) > touch.limit ? 'over' : 'fine';
}

/** The hottest place a hand can reach in any service, K. */
function hottestMetal(cycles: ByService<Outcome<CycleState>>): number | null {
  const found = services.flatMap((service) => {
    const state = cycles[service];
    if (!state.ok) return [];
    return [state.value.nodes.find((node) => node.key === 'plateUnderDevice')?.peak ?? state.value.platePeak];
  });
  return found.length > 0 ? Math.max(...found) : null;
}

/** Time for the hottest metal to cool below what can be touched, s; the air at the fins is the warmest of the services. */
function coolingOf(coupled: Coupled, cycles: ByService<Outcome<CycleState>>, metal: number): number | null {
  const airs = services.flatMap((service) => {
    const state = cycles[service];
    return state.ok ? [state.value.sinkAir] : [];
  });
  return coupled.store.coolingTime(metal, coolEnough, Math.max(...airs));
}

function failureOf(outcome: Outcome<unknown>): Reason[] {
  return outcome.ok ? [] : [outcome.reason];
}

/** Reasons once each: a refused final would otherwise be told by every part that needs it. */
function distinct(reasons: readonly Reason[]): readonly Reason[] {
  return reasons.filter((reason, index) => reasons.findIndex((other) => other.key === reason.key) === index);
}

function nodesOf(cycle: Outcome<CycleState>): readonly HeatNode[] {
  return cycle.ok ? cycle.value.nodes : [];
}

function notCoupled(coupled: Outcome<Coupled>): Outcome<never> {
  return coupled.ok ? failure('none', '') : { ok: false, reason: coupled.reason };
}

function stateNotes(prepared: Prepared, cycles: ByService<Outcome<CycleState>>): readonly Note[] {
  const { path } = prepared;
  const cycle = services.map((service) => cycles[service]).find((found) => found.ok);
  if (!path.ok || !cycle?.ok) return [];
  return path.value.sink.notesAt(cycle.value.plateMean, cycle.value.sinkAir);
}

/**
 * Everything about a design, in one call.
 *
 * Never throws and never returns NaN or Infinity for a design the schema accepts: a part that cannot be computed is a
 * named reason and the other parts still stand.
 */
export function solve(design: Design): Solution {
  const prepared = prepare(design);
  const { electrics, path, coupled } = prepared;
  const list = new ValueList();
  putGiven(list, prepared);
  if (electrics.ok) putElectrics(list, electrics.value, prepared.limits.design);
  if (path.ok) putPath(list, path.value, design);
  if (path.ok) putSink(list, path.value, design);
  if (path.ok) putBench(list, path.value, design, prepared.pressure);
  if (coupled.ok) putCoupled(list, coupled.value, prepared.limits.design);

  const cycles = forEachService((service): Outcome<CycleState> => {
    if (!coupled.ok) return notCoupled(coupled);
    return cycleAt(coupled.value, service, design.service.transmitShare);
  });
  const point = electrics.ok && electrics.value.pep.ok ? electrics.value.pep.value : null;
  const side =
    electrics.ok && point
      ? supplyReport(prepared, electrics.value, point, cycles, (state) => caseAirOf(prepared, state))
      : null;
  if (electrics.ok && electrics.value.feed.designed) putDesigned(list, design, electrics.value.feed.designed);

  const final = summariseFinal(list, prepared, cycles);
  const forbidding = [...(side?.findings ?? []), ...final.findings].find((finding) => finding.forbids);
  const short = fallsShort(design, point?.antenna);
  const results = forEachService((service): Outcome<ServiceResult> => {
    const cycle = cycles[service];
    if (!cycle.ok) return cycle;
    if (!coupled.ok) return notCoupled(coupled);
    return serviceResult(prepared, coupled.value, service, cycle.value, forbidding, short);
  });
  for (const service of services) {
    const cycle = cycles[service];
    const result = results[service];
    if (!cycle.ok || !coupled.ok) continue;
    putService(list, service, cycle.value, coupled.value, prepared.limits.design);
    list.put(`${service}.caseAir`, caseAirOf(prepared, cycle.value));
    const { platePeak, sinkAir } = cycle.value;
    list.put(`${service}.coolDownTime`, coupled.value.store.coolingTime(platePeak, coolEnough, sinkAir));
    if (!result.ok) continue;
    list.put(`${service}.safeDuty`, result.value.safeDuty);
    list.put(`${service}.holdTime`, result.value.holdTime);
  }
  if (side) {
    putSupply(list, design, side);
    putConverterJunctions(list, side);
  }
  const still = stillFigures(list, prepared);
  const metal = hottestMetal(cycles);
  const people = judgePeople(design, metal);
  const figures = cautionFigures(design, people, {
    faultCurrent: side?.protection.nearFault?.current ?? null,
    fuseRating: side?.protection.fuseRating ?? null,
    wireTemperature: electrics.ok ? electrics.value.wire.temperature : null,
    inputCurrent: point?.sourceCurrent ?? null,
    coolingTime: coupled.ok && metal !== null ? coolingOf(coupled.value, cycles, metal) : null,
    ...hottestJunction(list.values, serviceWords(design)),
    junctionEdge: null,
    railVoltage: point?.railVoltage ?? null,
    sinkMass: path.ok ? path.value.sink.mass : null,
  });
  putPeople(list, design, people, figures);

  return {
    values: list.values,
    reasons: distinct([
      ...failureOf(electrics),
      ...(electrics.ok ? failureOf(electrics.value.pep) : []),
      ...failureOf(path),
    ]),
    notes: [
      ...notesOf([electrics, path, coupled, ...services.map((service) => cycles[service])]),
      ...(electrics.ok ? [...electrics.value.feed.notes, ...electrics.value.notes] : []),
      ...(side?.protection.notes ?? []),
      ...final.notes,
      ...stateNotes(prepared, cycles),
      ...still,
      ...(people.exposure.ok ? people.exposure.notes : []),
    ],
    services: results,
    words: serviceWords(design),
    dutyWords: dutyWords(design),
    verdicts: [
      ...services.map((service) => serviceVerdict(service, results[service], design, list.values)),
      supplyVerdict(
        {
          state: side ? supplyState(side.findings) : 'over',
          complaints: side?.findings.map((finding) => finding.sentence) ?? [],
          failure: supplyFailure(prepared),
          wireSize: design.wiring.size,
          suggestedWire: side?.protection.firstPassing ?? null,
          names: serviceWords(design),
        },
        list.values,
      ),
      peopleVerdict(people.judgement, list.values),
    ],
    findings: { supply: side?.findings ?? [], final: final.findings },
    ...warn(figures),
    exposure: people.bands,
    contacts: people.contacts,
    burns: people.burns,
    heatPath: forEachService((service) => nodesOf(cycles[service])),
    powerPath: powerPaths(point, cycles),
    wires: side?.protection.wires ?? [],
    path: side?.rows ?? [],
    supply: side?.findings.map(({ key, state, sentence }) => ({ key, state, sentence })) ?? [],
    places: path.ok ? placesOf(path.value) : [],
    iterations: services.reduce((sum, service) => {
      const cycle = cycles[service];
      return sum + (cycle.ok ? cycle.value.iterations : 0);
    }, 0),
  };
}

/** Air inside the case at the planned duty, K. */
function caseAirOf(prepared: Prepared, state: CycleState): number {
  const inside = prepared.design.sink.placement === 'inside';
  return inside ? state.sinkAir : caseAirAt(prepared.design, state.caseHeat, prepared.pressure);
}

function supplyFailure({ electrics }: Prepared): Reason | null {
  if (!electrics.ok) return electrics.reason;
  return electrics.value.pep.ok ? null : electrics.value.pep.reason;
}
