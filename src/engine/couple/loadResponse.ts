import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import { type Service, services } from '../../../shared/solution.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import { type Coupled, couple } from './coupled.ts';
import { prepareFinal } from './final.ts';
import { efficiencyEdges, type LoadDoubts, loadDoubts } from './loadDoubts.ts';
import type { Prepared } from './prepare.ts';
import type { ServiceLoad } from './serviceLoad.ts';
import { prepareElectrics } from './supplySide.ts';

/** 90 % half-width of a module's efficiency, points as a share of 1. Own choice: two ordinary meters. */
export const converterDoubt = 0.02;
/** 90 % half-width of the losses of a converter from parts. Own choice: data-sheet figures at another current and heat. */
export const designedDoubt = 0.25;
const efficiencyRange = { lowest: 0.3, highest: 0.995 } as const;

/** Distance of the junction temperatures at which a temperature-dependent load is worked out, K; straight between. */
const gridStep = 10;

/** Where in the doubts of the load a sample lies, in standard deviations: 0 is the nominal load. */
export interface LoadPlace {
  /** Positive: more efficient. */
  readonly efficiency: number;
  readonly converter: number;
  /** Positive: speech makes more heat. */
  readonly speech: number;
}

/** What of a load the heat path feels, W: device, network, converter, boards, key down, key up, hottest amplitude. */
type HeatRow = Float64Array;
const rowLength = 7;

interface Variant {
  /** null where the load does not exist there (class refused, source exhausted). */
  row(service: Service, junction: number): HeatRow | null;
  readonly receive: HeatRow;
}

function rowOf(coupled: Coupled, load: ServiceLoad): HeatRow {
  const { over, keyDownHeat, keyUpHeat } = load;
  const hottest = load.signal.spoken ? (coupled.hottest(load.junction)?.heat ?? over.deviceHeat) : 0;
  const { deviceHeat, networkHeat, converterHeat, boards } = over;
  return Float64Array.of(deviceHeat, networkHeat, converterHeat, boards, keyDownHeat, keyUpHeat, hottest);
}

/** A load with its rows kept: one a service, or one every ten kelvin where the final feels its temperature. */
function variantOf(coupled: Coupled): Variant {
  const feels = coupled.loads.final.feelsTemperature;
  const kept = new Map<string, HeatRow | null>();
  const node = (service: Service, step: number): HeatRow | null => {
    const key = `${service} ${step}`;
    const known = kept.get(key);
    if (known !== undefined) return known;
    const load = coupled.load(service, step * gridStep);
    const row = load.ok ? rowOf(coupled, load.value) : null;
    kept.set(key, row);
    return row;
  };
  const { deviceHeat, networkHeat, converterHeat, boards } = coupled.receive;
  return {
    receive: Float64Array.of(deviceHeat, networkHeat, converterHeat, boards, 0, 0, 0),
    row(service, junction) {
      if (!feels) return node(service, Math.round(coupled.design.surroundings.ambient / gridStep));
      const place = junction / gridStep;
      const step = Math.floor(place);
      const low = node(service, step);
      const high = node(service, step + 1);
      if (!low || !high) return null;
      const share = place - step;
      return low.map((value, i) => value + share * (high[i]! - value));
    },
  };
}

/** The electrical side of a changed design over the same heat path; null where it cannot be. */
function variantFor(prepared: Prepared, base: Coupled, design: Design): Variant | null {
  const final = prepareFinal(design);
  if (!final.ok) return null;
  const electrics = prepareElectrics(design, final.value, prepared.pressure, prepared.limits.design);
  if (!electrics.ok || !electrics.value.pep.ok) return null;
  const coupled = couple(
    design,
    electrics.value.loads,
    base.path,
    base.store,
    electrics.value.pep.value.railVoltage,
  );
  return coupled.ok ? variantOf(coupled.value) : null;
}

/** The design with the efficiency of its bought converter moved, points as a share of 1. */
/** A converter from parts with everything that makes its losses moved by a share. */
function withLosses(design: Design, change: number): Design {
  const { parts } = design.converter;
  const factor = 1 + change;
  const moved = {
    ...parts,
    alternatingFactor: parts.alternatingFactor * factor,
    hotFactor: parts.hotFactor * factor,
    turnOnTime: parts.turnOnTime * factor,
    turnOffTime: parts.turnOffTime * factor,
    switchCapacitance: parts.switchCapacitance * factor,
    gateCharge: parts.gateCharge * factor,
    rectifierDrop: parts.rectifierDrop * factor,
    rectifierResistance: parts.rectifierResistance * factor,
    recoveryCharge: parts.recoveryCharge * factor,
    fixedPower: parts.fixedPower * factor,
  };
  return { ...design, converter: { ...design.converter, parts: moved } };
}

/** The design at an edge of what is known of its converter: efficiency of a bought one, losses of one from parts. */
function atConverterEdge(design: Design, edge: -1 | 1): Design {
  return design.converter.kind === 'designed'
    ? withLosses(design, -edge * designedDoubt)
    : withConverter(design, edge * converterDoubt);
}

export function withConverter(design: Design, change: number): Design {
  const points = design.converter.points.map((point) => ({
    ...point,
    efficiency: Math.min(
      Math.max(point.efficiency + change, efficiencyRange.lowest),
      efficiencyRange.highest,
    ),
  }));
  return { ...design, converter: { ...design.converter, points } };
}

/** Adds the parabola through the rows at both edges and the middle; towards a missing edge nothing changes. */
function addParabola(
  into: HeatRow,
  middle: HeatRow,
  less: HeatRow | null,
  more: HeatRow | null,
  place: number,
): void {
  if (place === 0 || (place < 0 ? !less : !more)) return;
  const z = place / ninetyPercent;
  for (let i = 0; i < rowLength; i++) {
    const m = middle[i]!;
    const down = less ? less[i]! - m : m - more![i]!;
    const up = more ? more[i]! - m : m - less![i]!;
    into[i]! += ((up - down) * z + (up + down) * z * z) / 2;
  }
}

export interface LoadResponse {
  readonly doubts: LoadDoubts;
  readonly hasConverter: boolean;
  /** The design at a place in its doubts, with the load of that place over the given heat path and store. */
  at(place: LoadPlace, base: Coupled): Coupled;
}

/**
 * How the heat of a design answers to efficiency, converter and law of speech: worked out once at the edges of each, a
 * parabola between, so that a sample costs no solution of the electrical side. Within 0.3 % of the heat of a solution
 * (tested).
 */
export function loadResponse(prepared: Prepared, base: Coupled): LoadResponse {
  const { design } = prepared;
  const doubts = loadDoubts(design);
  const edges = efficiencyEdges(design);
  const hasConverter = design.converter.kind !== 'none';
  const nominal = variantOf(base);
  const lessEfficient = variantFor(prepared, base, edges.lessEfficient);
  const moreEfficient = variantFor(prepared, base, edges.moreEfficient);
  const lossy = hasConverter ? variantFor(prepared, base, atConverterEdge(design, -1)) : null;
  const frugal = hasConverter ? variantFor(prepared, base, atConverterEdge(design, 1)) : null;

  function blended(place: LoadPlace, pick: (variant: Variant) => HeatRow | null): HeatRow | null {
    const middle = pick(nominal);
    if (!middle) return null;
    const row = Float64Array.from(middle);
    const of = (variant: Variant | null) => (variant ? pick(variant) : null);
    addParabola(row, middle, of(lessEfficient), of(moreEfficient), place.efficiency);
    addParabola(row, middle, of(lossy), of(frugal), place.converter);
    return row.map((value) => Math.max(0, value));
  }

  const ambient = design.surroundings.ambient;
  const patterns = new Map(services.map((service) => [service, base.load(service, ambient)] as const));
  const spoken = services.find((service) => {
    const load = patterns.get(service);
    return load?.ok && load.value.signal.spoken;
  });
  const hottestPattern = base.hottest(ambient);

  return {
    doubts,
    hasConverter,
    at(place, sample) {
      const speech = (1 + doubts.speechHeat) ** (place.speech / ninetyPercent);
      const rowAt = (service: Service, junction: number) =>
        blended(place, (variant) => variant.row(service, junction));
      const loadAt = (service: Service, junction: number): Outcome<ServiceLoad> => {
        const pattern = patterns.get(service)!;
        const row = pattern.ok ? rowAt(service, junction) : null;
        // Where the row is missing the load itself says why.
        return pattern.ok && row
          ? success(movedLoad(pattern.value, row, speech, junction))
          : base.load(service, junction);
      };
      const kept = new Map<Service, Outcome<ServiceLoad>>();
      const received = blended(place, (variant) => variant.receive)!;
      return {
        ...sample,
        receive: {
          ...sample.receive,
          deviceHeat: received[0]!,
          networkHeat: received[1]!,
          converterHeat: received[2]!,
          boards: received[3]!,
        },
        hottest(junction) {
          if (!hottestPattern || !spoken) return hottestPattern;
          return { ...hottestPattern, heat: rowAt(spoken, junction)?.[6] ?? hottestPattern.heat };
        },
        load(service, junction) {
          if (base.loads.final.feelsTemperature) return loadAt(service, junction);
          const known = kept.get(service) ?? loadAt(service, junction);
          kept.set(service, known);
          return known;
        },
      };
    },
  };
}

function movedLoad(load: ServiceLoad, row: HeatRow, speech: number, junction: number): ServiceLoad {
  const factor = load.signal.spoken ? speech : 1;
  return {
    ...load,
    over: {
      ...load.over,
      deviceHeat: row[0]! * factor,
      networkHeat: row[1]!,
      converterHeat: row[2]!,
      boards: row[3]!,
    },
    keyDownHeat: row[4]!,
    keyUpHeat: row[5]!,
    junction,
  };
}
