import type { Design } from '../../../shared/design/schema.ts';
import { type Note, type Outcome, type Reason, success } from '../../../shared/outcome.ts';
import type { WireRow } from '../../../shared/solution.ts';
import { type Ampacity, ampacity } from '../supply/ampacity.ts';
import { type Conductor, conductorBySize, loopResistance } from '../supply/conductor.ts';
import { type FaultCurrent, type FaultInput, faultCurrent } from '../supply/faultCurrent.ts';
import { type FuseLoad, neededRating, pickFuse } from '../supply/fuse.ts';
import { type FuseFinding, judgeFuse } from '../supply/fuseJudgement.ts';
import { wireTable } from '../supply/wireTable.ts';
import { wireTemperature } from '../supply/wireTemperature.ts';
import { type Feed, type PowerPoint, prepareFeed } from './feed.ts';
import type { Final } from './final.ts';
import { type Loads, prepareLoads, transmitPoint } from './serviceLoad.ts';

/** The supply pair lies together: there and back. */
const supplyPair = 2;
/** Rounds of wire temperature and current; each shrinks the error about a hundredfold. */
const wireRounds = 4;

/** The wire as it is while a long carrier runs. */
export interface WarmWire {
  readonly conductor: Conductor;
  /** K */
  readonly temperature: number;
  /** Both wires, holder, connectors and switch, Ω. */
  readonly pathResistance: number;
}

export interface Electrics {
  readonly wire: WarmWire;
  readonly feed: Feed;
  readonly loads: Loads;
  /** The instant at PEP with the junction at the design limit. */
  readonly pep: Outcome<PowerPoint>;
  readonly notes: readonly Note[];
}

function warmWire(design: Design, conductor: Conductor, temperature: number): WarmWire {
  const { wiring } = design;
  return {
    conductor,
    temperature,
    pathResistance: loopResistance(conductor, wiring.length, temperature) + wiring.otherResistance,
  };
}

/**
 * Prepares the electrical side: wire resistance at its own temperature under a long carrier (or under speech alone
 * when the transmitter is locked to SSB the carrier is still the bound), feed, final and keying.
 *
 * junction: K, at which a temperature-dependent final is taken while the wire is warmed; it moves the wire by little.
 */
export function prepareElectrics(
  design: Design,
  final: Final,
  pressure: number,
  junction: number,
): Outcome<Electrics> {
  const conductor = conductorBySize(design.wiring.size, design.wiring.tinned);
  const ambient = design.surroundings.ambient;
  const air = { ambient, together: supplyPair, pressure };
  let wire = warmWire(design, conductor, ambient);
  let notes: readonly Note[] = conductor.notes;
  for (let round = 0; ; round += 1) {
    const feed = prepareFeed(design, wire.pathResistance);
    const loads = prepareLoads(design, feed, final);
    if (!loads.ok) return loads;
    const pep = transmitPoint(loads.value, 1, junction);
    const done = { wire, feed, loads: loads.value, pep, notes };
    if (!pep.ok || round === wireRounds) return success(done);
    const heated = wireTemperature(conductor, pep.value.sourceCurrent, air);
    if (!heated.ok) {
      notes = [...notes, { kind: 'limit', ...heated.reason }];
      return success({ ...done, notes });
    }
    wire = warmWire(design, conductor, heated.value.conductor);
  }
}

export interface Protection {
  readonly ampacity: Ampacity;
  /** At the fuse, the source alone. */
  readonly nearFault: FaultCurrent | null;
  readonly fuseNeeded: number;
  readonly fuseRating: number | null;
  readonly fuseReason: Reason | null;
  readonly findings: readonly FuseFinding[];
  readonly wires: readonly WireRow[];
  readonly firstPassing: string | null;
  readonly notes: readonly Note[];
}

/**
 * Fuse, wire and fault current for a load.
 *
 * pepCurrent: A at the peak of the envelope; rmsCurrent: A, root mean square over the longest over.
 */
export function protect(
  design: Design,
  wire: WarmWire,
  pepCurrent: number,
  rmsCurrent: number,
  pressure: number,
): Protection {
  const { source, wiring, surroundings } = design;
  const heatingCurrent = wiring.ssbOnly ? rmsCurrent : pepCurrent;
  const load: FuseLoad = {
    kind: wiring.fuse,
    rmsCurrent: heatingCurrent,
    pepCurrent,
    ssbOnly: wiring.ssbOnly,
    ambient: surroundings.ambient,
  };
  const allowed = ampacity(
    wire.conductor,
    wiring.insulationLimit,
    surroundings.ambient,
    supplyPair,
    pressure,
  );
  const picked = pickFuse(load);
  const rating = wiring.fuseRating ?? (picked.ok ? picked.value.rating : null);
  const sourceSide: FaultInput = { ...source, pathResistance: wiring.otherResistance };
  const toFuse = loopResistance(
    wire.conductor,
    Math.min(wiring.fuseDistance, wiring.length),
    surroundings.ambient,
  );
  const near = faultCurrent({ ...source, pathResistance: toFuse });
  const far = faultCurrent({ ...source, pathResistance: wire.pathResistance });
  const table = wireTable({
    length: wiring.length,
    tinned: wiring.tinned,
    insulationLimit: wiring.insulationLimit,
    ambient: surroundings.ambient,
    pressure,
    pepCurrent,
    heatingCurrent,
    source: sourceSide,
    load,
    fuseRating: rating ?? neededRating(load),
    fitted: wiring.size,
  });
  const findings =
    rating !== null && near.ok && far.ok
      ? judgeFuse({
          load,
          rating,
          wireAmpacity: allowed.limit,
          farFault: far.value,
          nearFault: near.value,
          sourceVoltage: source.openVoltage,
          distance: wiring.fuseDistance,
          wireArea: wire.conductor.area,
          insulationLimit: wiring.insulationLimit,
        })
      : [];
  return {
    ampacity: allowed,
    nearFault: near.ok ? near.value : null,
    fuseNeeded: neededRating(load),
    fuseRating: rating,
    fuseReason: picked.ok ? null : picked.reason,
    findings,
    wires: table.rows,
    firstPassing: table.firstPassing,
    notes: [...allowed.notes, ...(picked.ok ? picked.notes : []), ...(near.ok ? near.notes : [])],
  };
}
