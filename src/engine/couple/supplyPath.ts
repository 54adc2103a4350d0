import partTable from '../../../reference-data/pathParts.json';
import type { Design } from '../../../shared/design/schema.ts';
import type { PathRow, State } from '../../../shared/solution.ts';
import { type Conductor, conductorBySize } from '../supply/conductor.ts';
import { type ConnectorClass, connectorFigures, connectorLoad } from '../supply/connector.ts';
import { type PathElement, type PathStep, sumPath } from '../supply/path.ts';

type PathInput = Design['wiring']['path'][number];

/** One thing the current passes from the source to the load and back, in order. */
export interface PathPiece extends PathStep {
  readonly kind: PathRow['kind'];
  /** Rated current, A; null where none is known. That of a wire is found by `ratedPath`. */
  readonly rating: number | null;
  readonly conductor: Conductor | null;
  readonly connector: {
    readonly kind: ConnectorClass;
    readonly count: number;
    readonly aged: boolean;
  } | null;
}

export interface SupplyPieces {
  readonly pieces: readonly PathPiece[];
  /** All of them, Ω. */
  readonly resistance: number;
  /** All but the main wire, Ω. */
  readonly otherResistance: number;
  /** Fixed drop of diodes, V. */
  readonly seriesDrop: number;
}

export interface PathQuestion {
  readonly design: Design;
  readonly conductor: Conductor;
  /** Of the main wire, K. */
  readonly temperature: number;
  /** Temperature of another piece of wire of a size, K. */
  readonly temperatureOf: (conductor: Conductor) => number;
  /** A; null when the kind is not made that large. */
  readonly fuseRating: number | null;
  /** Of the listed pieces those that depend on nothing but the design, see `fixedPieces`; null in place of the others. */
  readonly fixed?: readonly (PathPiece | null)[];
}

/** Rating put in the place of a fuse that cannot be had, A: its resistance hardly matters then. */
const nominalRating = 30;

/**
 * The path in order: what the design lists, the main wire behind the first fuse, or leading when no holder is listed
 * and the fuse is bolted to the source; the choke of the input filter last.
 */
export function supplyPieces(question: PathQuestion): SupplyPieces {
  const { design } = question;
  const { wiring, converter } = design;
  const listed = wiring.path.map((input, i) => question.fixed?.[i] ?? pieceOf(question, input));
  const firstFuse = wiring.path.findIndex((input) => input.kind === 'fuse');
  const bare = firstFuse < 0 ? [bareFuse(question)] : [];
  const choke = converter.kind !== 'none' && converter.filterResistance > 0 ? [filterChoke(design)] : [];
  const pieces = [
    ...bare,
    ...listed.slice(0, firstFuse + 1),
    mainWire(question),
    ...listed.slice(firstFuse + 1),
    ...choke,
  ];
  let resistance = 0;
  let otherResistance = 0;
  let seriesDrop = 0;
  for (const piece of pieces) {
    resistance += piece.resistance;
    seriesDrop += piece.drop;
    if (piece.kind !== 'mainWire') otherResistance += piece.resistance;
  }
  return { pieces, resistance, otherResistance, seriesDrop };
}

/** Pieces that neither warm nor follow the fuse, made once for a search that asks for the path again and again. */
export function fixedPieces({ wiring }: Design): readonly (PathPiece | null)[] {
  return wiring.path.map((input) =>
    input.kind === 'fuse' || input.kind === 'wire' ? null : fixedPiece(input, input.kind),
  );
}

function stepOf(...elements: readonly PathElement[]): PathStep {
  const { steps, resistance, seriesDrop } = sumPath(elements);
  return { name: steps[0]?.name ?? '', resistance, drop: seriesDrop };
}

function mainWire({ design, conductor, temperature }: PathQuestion): PathPiece {
  return {
    ...stepOf({ kind: 'wire', conductor, length: design.wiring.length, temperature }),
    kind: 'mainWire',
    rating: null,
    conductor,
    connector: null,
  };
}

function fuseElement({ design, fuseRating }: PathQuestion): PathElement {
  return { kind: 'fuse', fuse: design.wiring.fuse, rating: fuseRating ?? nominalRating };
}

function bareFuse(question: PathQuestion): PathPiece {
  return {
    ...stepOf(fuseElement(question)),
    kind: 'fuse',
    rating: null,
    conductor: null,
    connector: null,
  };
}

function filterChoke({ converter }: Design): PathPiece {
  return {
    name: 'filter choke',
    resistance: converter.filterResistance,
    drop: 0,
    kind: 'other',
    rating: null,
    conductor: null,
    connector: null,
  };
}

function counted(name: string, count: number): string {
  return count > 1 ? `${count} × ${name}` : name;
}

function pieceOf(question: PathQuestion, input: PathInput): PathPiece {
  const { kind, count, resistance: own } = input;
  if (kind === 'fuse') {
    const step = stepOf(fuseElement(question));
    return {
      kind,
      conductor: null,
      connector: null,
      name: counted(`${step.name} in its holder`, count),
      // One that was measured was measured with its fuse in.
      resistance: count * (own ?? step.resistance + partTable.parts.fuseHolder.resistance),
      drop: 0,
      rating: input.rating ?? partTable.holderRating[question.design.wiring.fuse],
    };
  }
  if (kind !== 'wire') return fixedPiece(input, kind);
  const conductor = conductorBySize(input.size, question.design.wiring.material);
  const temperature = question.temperatureOf(conductor);
  return {
    kind,
    rating: input.rating,
    connector: null,
    conductor,
    ...stepOf({ kind: 'wire', conductor, length: input.length, temperature }),
  };
}

function fixedPiece(input: PathInput, kind: Exclude<PathInput['kind'], 'fuse' | 'wire'>): PathPiece {
  const base = { kind, rating: input.rating, conductor: null, connector: null } as const;
  const { count, resistance: own } = input;
  switch (kind) {
    case 'connector':
      return connectorPiece(input);
    case 'diode':
      return { ...base, ...stepOf({ kind: 'diode', drop: input.drop, resistance: own ?? 0 }) };
    case 'other':
      return { ...base, name: 'measured part', resistance: count * (own ?? 0), drop: 0 };
    default: {
      const part = partTable.parts[partNames[kind]];
      return {
        ...base,
        name: counted(part.name, count),
        resistance: count * (own ?? part.resistance),
        drop: 0,
      };
    }
  }
}

const partNames = {
  switch: 'switchContact',
  relay: 'relayContact',
  joint: 'crimpedJoint',
  transistor: 'reverseTransistor',
} as const;

function connectorPiece(input: PathInput): PathPiece {
  const { connector, count, aged, resistance: own } = input;
  const figures = connectorFigures(connector);
  const usual = stepOf({ kind: 'connector', connector, poles: count, aged });
  return {
    name: `${figures.name}, ${count} ${count === 1 ? 'pole' : 'poles'}${aged ? ', old' : ''}`,
    resistance: own === null ? usual.resistance : count * own,
    drop: 0,
    kind: 'connector',
    rating: input.rating ?? figures.rating,
    conductor: null,
    connector: { kind: connector, count, aged },
  };
}

/** The path with the allowed current of its wires. ampacityOf: A. */
export function ratedPath(path: SupplyPieces, ampacityOf: (conductor: Conductor) => number): SupplyPieces {
  return {
    ...path,
    pieces: path.pieces.map((piece) =>
      piece.conductor && piece.rating === null ? { ...piece, rating: ampacityOf(piece.conductor) } : piece,
    ),
  };
}

/** What each piece does at the currents of the design. Currents A: at PEP, and the highest that lasts. */
export function pathRows(path: SupplyPieces, pepCurrent: number, longCurrent: number): readonly PathRow[] {
  const weakest = weakestPiece(path);
  return path.pieces.map((piece) => {
    const contact = piece.connector
      ? connectorLoad(
          piece.connector.kind,
          piece.connector.count,
          piece.connector.aged,
          longCurrent,
          pepCurrent,
        )
      : null;
    return {
      kind: piece.kind,
      name: piece.name,
      resistance: piece.resistance,
      drop: pepCurrent * piece.resistance + piece.drop,
      heat: pepCurrent * (pepCurrent * piece.resistance + piece.drop),
      rating: piece.rating,
      rise: contact?.rise ?? null,
      state: stateOf(piece, pepCurrent, longCurrent),
      weakest: piece === weakest,
    };
  });
}

/**
 * The piece with the smallest rated current; the fuse must not be larger. null when no rating is known.
 * withWire: the main wire counted; it is judged apart by its own rules.
 */
export function weakestPiece(path: SupplyPieces, withWire = true): PathPiece | null {
  let weakest: PathPiece | null = null;
  for (const piece of path.pieces) {
    if (!withWire && piece.kind === 'mainWire') continue;
    if (piece.rating !== null && (weakest?.rating ?? Infinity) > piece.rating) weakest = piece;
  }
  return weakest;
}

/** Contacts run warm: for long at three quarters of their rating. Own choice. */
const contactShare = 0.75;

function stateOf(piece: PathPiece, pepCurrent: number, longCurrent: number): State {
  const { rating } = piece;
  if (rating === null) return 'fine';
  const greatest = piece.connector ? pepCurrent : longCurrent;
  if (greatest > rating * (1 + 1e-9)) return 'over';
  return piece.connector && longCurrent > contactShare * rating * (1 + 1e-9) ? 'close' : 'fine';
}
