import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import type { Service } from '../../../shared/solution.ts';
import { caseCapacityOf, closedCaseOf } from '../../../src/engine/couple/caseStore.ts';
import type { Coupled } from '../../../src/engine/couple/coupled.ts';
import { localRise } from '../../../src/engine/couple/heatPath.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { type CycleState, cycleAt, holdTimeOf } from '../../../src/engine/couple/serviceCycle.ts';
import { tabulateCase } from '../../../src/engine/heat/caseAir.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

/**
 * The direct periodic state, its peaks and the hold time against a plain time-stepping of all stores at once, from cold
 * until nothing changes any more: the sink with its exact heat law (no table), the case air if the sink stands in it, the
 * plate under the devices, the device stages, and every element of the keying. Written for the test alone.
 */

/** Heat held for a time: into one device, the whole plate and the case air, and of the converter at its place, W. */
interface Piece {
  readonly duration: number;
  readonly device: number;
  readonly plate: number;
  readonly air: number;
  readonly converter: number;
}

interface Stores {
  plate: number;
  air: number;
  local: number;
  stages: number[];
}

interface Bench {
  readonly coupled: Coupled;
  readonly inside: boolean;
  readonly boxHeat: (rise: number) => number;
  readonly boxCapacity: number;
}

const cold = ({ coupled }: Bench): Stores => ({
  plate: coupled.design.surroundings.ambient,
  air: coupled.design.surroundings.ambient,
  local: 0,
  stages: coupled.path.stages.map(() => 0),
});

function benchOf(coupled: Coupled): Bench {
  const { design } = coupled;
  const pressure = prepare(design).pressure;
  const box = tabulateCase(closedCaseOf(design), design.surroundings.ambient, pressure);
  return {
    coupled,
    inside: design.sink.placement === 'inside',
    boxHeat: box.heat,
    boxCapacity: caseCapacityOf(design, pressure),
  };
}

function slopes(bench: Bench, piece: Piece, plate: number, air: number): [number, number] {
  const { path, design } = bench.coupled;
  const shed = path.sink.heat(plate, air);
  const plateSlope = (piece.plate - shed) / path.sink.heatCapacity;
  if (!bench.inside) return [plateSlope, 0];
  const lost = bench.boxHeat(air - design.surroundings.ambient);
  return [plateSlope, (piece.air + shed - lost) / bench.boxCapacity];
}

function step(bench: Bench, stores: Stores, piece: Piece, dt: number): void {
  const { plate, air } = stores;
  const at = (k: [number, number], h: number) => slopes(bench, piece, plate + h * k[0], air + h * k[1]);
  const k1 = at([0, 0], 0);
  const k2 = at(k1, dt / 2);
  const k3 = at(k2, dt / 2);
  const k4 = at(k3, dt);
  stores.plate += (dt / 6) * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]);
  stores.air += (dt / 6) * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]);
  const { path } = bench.coupled;
  const follow = (before: number, settled: number, time: number) =>
    settled + (before - settled) * (time > 0 ? Math.exp(-dt / time) : 0);
  stores.local = follow(stores.local, localRise(path, piece.device, piece.converter), path.spreadingTime);
  stores.stages = path.stages.map(({ resistance, timeConstant }, i) =>
    follow(stores.stages[i]!, piece.device * resistance, timeConstant),
  );
}

const junctionOf = ({ plate, local, stages }: Stores) =>
  plate + local + stages.reduce((sum, rise) => sum + rise, 0);

/** Longest step of the integration, s. */
const longestStep = 0.5;

interface Highest {
  plate: number;
  junction: number;
}

function run(bench: Bench, stores: Stores, pieces: readonly Piece[], longest: number): Highest {
  const highest = { plate: 0, junction: 0 };
  for (const piece of pieces) {
    const steps = Math.ceil(piece.duration / longest);
    for (let i = 0; i < steps; i += 1) {
      step(bench, stores, piece, piece.duration / steps);
      highest.plate = Math.max(highest.plate, stores.plate);
      highest.junction = Math.max(highest.junction, junctionOf(stores));
    }
  }
  return highest;
}

type Heats = Pick<CycleState['load']['over'], 'deviceHeat' | 'networkHeat' | 'converterHeat' | 'boards'>;

function pieceOf({ design, loads, path }: Coupled, heats: Heats, duration: number): Piece {
  const toSink = design.amplifier.networkHeatToSink;
  const converter = loads.feed.heatToSink * heats.converterHeat;
  return {
    duration,
    device: heats.deviceHeat / path.deviceCount,
    plate: heats.deviceHeat + toSink * heats.networkHeat + converter,
    air: (1 - toSink) * heats.networkHeat + loads.feed.heatToCase * heats.converterHeat + heats.boards,
    converter,
  };
}

/** The share nearest to one asked for at which an over holds a whole number of patterns. */
function wholeShare(coupled: Coupled, service: Service, share: number): number {
  const load = resultOf(coupled.load(service, coupled.design.surroundings.ambient));
  const pattern = (load.signal.segments ?? []).reduce((sum, segment) => sum + segment.duration, 0);
  const { cycle } = coupled.design.service;
  if (pattern === 0) return share;
  return (Math.max(1, Math.round((share * cycle) / pattern)) * pattern) / cycle;
}

/** Every mark and space of one over that holds a whole number of patterns; one piece for an unbroken signal. */
function overPieces(coupled: Coupled, { load }: CycleState, duration: number): Piece[] {
  const { segments, keyUp, keyedShare } = load.signal;
  const { over } = load;
  if (segments === null) return [pieceOf(coupled, over, duration)];
  const rest = keyUp === 'receive' ? coupled.receive : { ...over, networkHeat: 0 };
  const sending = (key: keyof Heats) => (over[key] - (1 - keyedShare) * rest[key]) / keyedShare;
  const down = {
    deviceHeat: load.keyDownHeat,
    networkHeat: sending('networkHeat'),
    converterHeat: sending('converterHeat'),
    boards: sending('boards'),
  };
  const up = { ...rest, deviceHeat: load.keyUpHeat };
  const pattern = segments.reduce((sum, segment) => sum + segment.duration, 0);
  const count = Math.round(duration / pattern);
  return Array.from({ length: count }, () => segments)
    .flat()
    .map((segment) => pieceOf(coupled, segment.on ? down : up, segment.duration));
}

/** Highest plate and junction of the settled cycle: first the slow stores under mean heats, then every element. */
function settledPeaks(coupled: Coupled, state: CycleState): Highest {
  const bench = benchOf(coupled);
  const { cycle } = coupled.design.service;
  const over = state.share * cycle;
  const rest = pieceOf(coupled, coupled.receive, cycle - over);
  const stores = cold(bench);
  const slow = [pieceOf(coupled, state.load.over, over), rest];
  for (let before = 0; Math.abs(stores.plate - before) > 1e-4; ) {
    before = stores.plate;
    run(bench, stores, slow, 5);
  }
  const every = [...overPieces(coupled, state, over), rest].filter(({ duration }) => duration > 0);
  let highest = run(bench, stores, every, longestStep);
  for (let before = 0; Math.abs(highest.plate - before) > 0.002; ) {
    before = highest.plate;
    highest = run(bench, stores, every, longestStep);
  }
  return highest;
}

const names = ['field-station-60w', 'pocket-beacon-10w', 'data-final-100w', 'class-a-panel-8w'];

/** What is keyed, in words, and how a design gets there. */
const keyings: readonly (readonly [string, Service, Parameters<typeof change>[1]])[] = [
  ['speech', 'ssb', {}],
  ['two tones', 'ssb', { service: { speechKind: 'twoTone' } }],
  ['CW 20 wpm', 'cw', {}],
  ['CW 8 wpm, a call', 'cw', { service: { keyingSpeed: 8, keyingText: 'CQ TEST' } }],
  ['carrier', 'keyDown', {}],
  ['RTTY', 'keyDown', { service: { keyDownMode: 'rtty' } }],
  ['AM', 'keyDown', { service: { keyDownMode: 'am' } }],
  ['PSK', 'keyDown', { service: { keyDownMode: 'phaseShift' } }],
  ['FT8', 'keyDown', { service: { keyDownMode: 'FT8' } }],
  ['FT8, quarter of an hour', 'keyDown', { service: { keyDownMode: 'FT8', cycle: 900 } }],
  ['FT4', 'keyDown', { service: { keyDownMode: 'FT4' } }],
  ['WSPR', 'keyDown', { service: { keyDownMode: 'WSPR', cycle: 600 } }],
  ['WSPR, an hour', 'keyDown', { service: { keyDownMode: 'WSPR', cycle: 3600 } }],
];

const shares = [0.1, 0.4, 0.75];

function compare(design: Design, service: Service, share: number): void {
  const coupled = resultOf(prepare(design).coupled);
  const asked = coupled.load(service, design.surroundings.ambient);
  const whole = asked.ok ? wholeShare(coupled, service, share) : share;
  const found = cycleAt(coupled, service, whole);
  // A class that cannot carry the signal, or a heat that runs away, has no state to compare.
  if (!found.ok) {
    expect(['notLinear', 'runaway']).toContain(found.reason.key);
    return;
  }
  const state = found.value;
  const highest = settledPeaks(coupled, state);
  // The vowel of speech is a bound on top, not an element.
  const vowel = state.load.signal.spoken ? state.ripple : 0;
  expect(Math.abs(state.junctionPeak - highest.junction - vowel)).toBeLessThan(0.1);
  expect(Math.abs(state.platePeak - highest.plate)).toBeLessThan(0.1);
}

describe('periodic state and peaks agree with a full integration within 0.1 K', () => {
  for (const name of names) {
    describe(name, () => {
      it.each(keyings)('%s (%s)', (_, service, edits) => {
        const design = change(exampleOf(name), edits);
        for (const share of shares) compare(design, service, share);
      });
    });
  }

  it.each(keyings)('with the sink inside the case: %s (%s)', (_, service, edits) => {
    const inside = change(exampleOf('pocket-beacon-10w'), { sink: { placement: 'inside' } });
    compare(change(inside, edits), service, 0.5);
  });
});

describe('hold time from cold agrees within half a second', () => {
  it.each(names)('carrier, %s', (name) => {
    const prepared = prepare(exampleOf(name));
    const coupled = resultOf(prepared.coupled);
    const limit = prepared.limits.design;
    const found = resultOf(holdTimeOf(coupled, 'keyDown', limit));
    const load = resultOf(coupled.load('keyDown', limit));
    const bench = benchOf(coupled);
    const stores = cold(bench);
    // From cold the plate under the devices is taken to follow at once; so it is here.
    const carrier = pieceOf(coupled, load.over, 0);
    stores.local = localRise(coupled.path, carrier.device, carrier.converter);
    const dt = 0.1;
    let time = 0;
    while (junctionOf(stores) < limit && time < 7200) {
      step(bench, stores, carrier, dt);
      time += dt;
    }
    if (found === null) expect(time).toBeGreaterThanOrEqual(7200);
    else expect(Math.abs(found - time)).toBeLessThan(0.5);
  });
});
