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
import {
  fixedPieces,
  type PathPiece,
  ratedPath,
  type SupplyPieces,
  supplyPieces,
  weakestPiece,
} from './supplyPath.ts';

/** Rounds of wire temperature and current; each shrinks the error about a hundredfold. */
const wireRounds = 4;

/** The wire as it is while a long carrier runs. */
export interface WarmWire {
  readonly conductor: Conductor;
  /** K */
  readonly temperature: number;
  readonly path: SupplyPieces;
  /** The fuse fitted, or the standard rating that carries the load so far known, A; null when there is none. */
  readonly fuseRating: number | null;
}

export interface Electrics {
  readonly wire: WarmWire;
  readonly feed: Feed;
  readonly loads: Loads;
  /** The instant at PEP with the junction at the design limit. */
  readonly pep: Outcome<PowerPoint>;
  readonly notes: readonly Note[];
}

interface WireQuestion {
  readonly design: Design;
  readonly conductor: Conductor;
  readonly pressure: number;
  readonly fixed: readonly (PathPiece | null)[];
}

function warmWire(
  { design, conductor, pressure, fixed }: WireQuestion,
  current: number,
  temperature: number,
  fuseRating: number | null,
): WarmWire {
  const { wiring, surroundings } = design;
  const air = { ambient: surroundings.ambient, together: wiring.together, pressure };
  const path = supplyPieces({
    design,
    conductor,
    temperature,
    fuseRating,
    fixed,
    temperatureOf(piece) {
      const heated = wireTemperature(piece, current, air);
      return heated.ok ? heated.value.conductor : Math.max(wiring.insulationLimit, surroundings.ambient);
    },
  });
  return { conductor, temperature, path, fuseRating };
}

/** The fuse fitted, or a picked one that never shrinks between rounds, so that the search for it ends. */
function fuseFor(design: Design, current: number, before: number | null): number | null {
  if (design.wiring.fuseRating !== null) return design.wiring.fuseRating;
  const picked = pickFuse({ ...fuseLoad(design, current, 0), ssbOnly: design.wiring.ssbOnly });
  return picked.ok ? Math.max(picked.value.rating, before ?? 0) : null;
}

function fuseLoad(design: Design, pepCurrent: number, rmsCurrent: number): FuseLoad {
  return {
    kind: design.wiring.fuse,
    rmsCurrent,
    pepCurrent,
    ssbOnly: design.wiring.ssbOnly,
    ambient: design.surroundings.ambient,
  };
}

/**
 * Prepares the electrical side: wire resistance at its own temperature under a long carrier (or under speech alone
 * when the transmitter is locked to SSB the carrier is still the bound), fuse, feed, final and keying.
 *
 * junction: K, at which a temperature-dependent final is taken while the wire is warmed; it moves the wire by little.
 */
export function prepareElectrics(
  design: Design,
  final: Final,
  pressure: number,
  junction: number,
): Outcome<Electrics> {
  const conductor = conductorBySize(design.wiring.size, design.wiring.material);
  const question = { design, conductor, pressure, fixed: fixedPieces(design) };
  const ambient = design.surroundings.ambient;
  const air = { ambient, together: design.wiring.together, pressure };
  let wire = warmWire(question, 0, ambient, fuseFor(design, 0, null));
  let notes: readonly Note[] = conductor.notes;
  for (let round = 0; round < wireRounds; round += 1) {
    const feed = prepareFeed(design, wire.path, final, junction, true);
    const loads = prepareLoads(design, feed, final);
    if (!loads.ok) return loads;
    const pep = transmitPoint(loads.value, 1, junction);
    if (!pep.ok) return success({ wire, feed, loads: loads.value, pep, notes });
    const current = pep.value.sourceCurrent;
    const heated = wireTemperature(conductor, current, air);
    if (!heated.ok) {
      notes = [...notes, { kind: 'limit', ...heated.reason }];
      break;
    }
    wire = warmWire(question, current, heated.value.conductor, fuseFor(design, current, wire.fuseRating));
  }
  const feed = prepareFeed(design, wire.path, final, junction);
  const loads = prepareLoads(design, feed, final);
  if (!loads.ok) return loads;
  return success({ wire, feed, loads: loads.value, pep: transmitPoint(loads.value, 1, junction), notes });
}

export interface Protection {
  readonly ampacity: Ampacity;
  /** The path with the allowed currents of its wires. */
  readonly path: SupplyPieces;
  readonly load: FuseLoad;
  readonly farFault: FaultCurrent | null;
  /** Rated current of the weakest part of the path but the wire, and its name; null when no rating is known. */
  readonly weakest: { readonly name: string; readonly rating: number } | null;
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
  const load = fuseLoad(design, pepCurrent, heatingCurrent);
  const ampacityOf = (conductor: Conductor) =>
    ampacity(conductor, wiring.insulationLimit, surroundings.ambient, wiring.together, pressure);
  const allowed = ampacityOf(wire.conductor);
  const path = ratedPath(wire.path, (conductor) =>
    conductor === wire.conductor ? allowed.limit : ampacityOf(conductor).limit,
  );
  const picked = pickFuse(load);
  const rating =
    wiring.fuseRating ?? (picked.ok ? Math.max(picked.value.rating, wire.fuseRating ?? 0) : null);
  const sourceSide: FaultInput = { ...source, pathResistance: wire.path.otherResistance };
  const toFuse = loopResistance(
    wire.conductor,
    Math.min(wiring.fuseDistance, wiring.length),
    surroundings.ambient,
  );
  const near = faultCurrent({ ...source, pathResistance: toFuse });
  const far = faultCurrent({ ...source, pathResistance: wire.path.resistance });
  const table = wireTable({
    length: wiring.length,
    material: wiring.material,
    together: wiring.together,
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
          sourceVoltage: Math.max(source.openVoltage, source.chargingVoltage ?? 0),
          distance: wiring.fuseDistance,
          wireArea: wire.conductor.adiabaticArea,
          insulationLimit: wiring.insulationLimit,
        })
      : [];
  const weakest = weakestPiece(path, false);
  return {
    ampacity: allowed,
    path,
    load,
    farFault: far.ok ? far.value : null,
    weakest: weakest && weakest.rating !== null ? { name: weakest.name, rating: weakest.rating } : null,
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
