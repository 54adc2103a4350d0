import { type Outcome, success } from '../../../shared/outcome.ts';
import { type Service, services } from '../../../shared/solution.ts';
import type { AveragePower } from './feed.ts';
import { type Loads, type ServiceLoad, serviceLoad } from './serviceLoad.ts';

/**
 * Distance of the junction temperatures at which a temperature-dependent load is worked out, K. Cubic between them: the
 * heat is right to 1e-6 of itself.
 */
const step = 10;

/** A load between two tabulated ones, with what it is made of. */
export interface MixedLoad extends ServiceLoad {
  readonly parts: readonly (readonly [load: ServiceLoad, weight: number])[];
}

export function isMixed(load: ServiceLoad): load is MixedLoad {
  return 'parts' in load;
}

/** Weights of the cubic through four points at -1, 0, 1 and 2, at t within 0 to 1. */
function cubicWeights(t: number): readonly [number, number, number, number] {
  return [
    (-t * (t - 1) * (t - 2)) / 6,
    ((t + 1) * (t - 1) * (t - 2)) / 2,
    (-(t + 1) * t * (t - 2)) / 2,
    ((t + 1) * t * (t - 1)) / 6,
  ];
}

function mixPowers(parts: MixedLoad['parts']): AveragePower {
  const sum: Record<keyof AveragePower, number> = { ...parts[0]![0].over };
  for (const key in sum) sum[key as keyof AveragePower] *= parts[0]![1];
  for (const [load, weight] of parts.slice(1)) {
    for (const key in sum) sum[key as keyof AveragePower] += weight * load.over[key as keyof AveragePower];
  }
  return sum;
}

/** A sum of loads is linear in every power, so the balance of energy holds in it too. */
function mix(parts: MixedLoad['parts'], junction: number): MixedLoad {
  const sumOf = (value: (load: ServiceLoad) => number) =>
    parts.reduce((sum, [load, weight]) => sum + weight * value(load), 0);
  return {
    over: mixPowers(parts),
    averageRatio: parts[0]![0].averageRatio,
    keyDownHeat: sumOf((load) => load.keyDownHeat),
    keyUpHeat: sumOf((load) => load.keyUpHeat),
    signal: parts[0]![0].signal,
    junction,
    parts,
  };
}

/**
 * Loads of a final whose heat depends on the temperature of its junctions, tabulated over it as they are asked for. A
 * place with a neighbour that has no load (power out of reach, supply collapsed) is worked out directly.
 */
export function tabulatedLoads(loads: Loads): (service: Service, junction: number) => Outcome<ServiceLoad> {
  const known = Object.fromEntries(
    services.map((service) => [service, new Map<number, Outcome<ServiceLoad>>()]),
  ) as Record<Service, Map<number, Outcome<ServiceLoad>>>;
  const nodeAt = (service: Service, index: number): Outcome<ServiceLoad> => {
    const found = known[service].get(index) ?? serviceLoad(loads, service, index * step);
    known[service].set(index, found);
    return found;
  };
  return (service, junction) => {
    const place = junction / step;
    const index = Math.floor(place);
    const weights = cubicWeights(place - index);
    const parts: [ServiceLoad, number][] = [];
    for (let i = 0; i < weights.length; i += 1) {
      const node = nodeAt(service, index - 1 + i);
      if (!node.ok) return serviceLoad(loads, service, junction);
      parts.push([node.value, weights[i]!]);
    }
    return success(mix(parts, junction), nodeNotes(nodeAt(service, index)));
  };
}

function nodeNotes(outcome: Outcome<ServiceLoad>) {
  return outcome.ok ? outcome.notes : [];
}
