import copperTable from '../../../reference-data/copper.json';
import class5Table from '../../../reference-data/iec60228Class5.json';
import insulationTable from '../../../reference-data/wireInsulation.json';
import {
  type WireMaterial,
  type WireSize,
  wireMaterials,
  wireSizes,
} from '../../../shared/design/supplyChoices.ts';
import { type Note, note } from '../../../shared/outcome.ts';

const zeroCelsius = 273.15;
const referenceTemperature = 20 + zeroCelsius;
const squareMillimetre = 1e-6;
const millimetre = 1e-3;

/** Resistivity of annealed copper at 20 °C, Ω m. IEC 60028. */
export const copperResistivity = copperTable.resistivity20 * squareMillimetre;
/** Rise of the resistance of copper over its value at 20 °C, 1/K. */
export const copperCoefficient = copperTable.coefficient20;
/** Heat capacity of copper by volume, J/(K m³). IEC 60364-5-54. */
export const copperVolumetricHeat = copperTable.volumetricHeat;

/** Share of the outline of a stranded conductor that is copper. Own choice. */
const strandFill = 0.75;

/**
 * Resistance of tinned gauge wire over plain wire: the two columns of IEC 60228 class 5 stand 1.02 to 1.03 apart,
 * and the gauge definition knows no tin. Own choice after that table.
 */
const tinnedGaugeFactor = 1.03;

/**
 * Conductivity of copper-clad aluminium over copper: 62 to 68 % of IACS by trade figures, the lower one. k of the
 * adiabatic formula for aluminium over copper: 76/115 and 94/143, IEC 60364-5-54 table 54.2, from memory.
 */
const cladConductivity = 0.62;
const cladAdiabaticShare = 0.66;

/** Resistance of gauge wire over that of plain copper. */
const gaugeFactors: Readonly<Record<WireMaterial, number>> = {
  plain: 1,
  tinned: tinnedGaugeFactor,
  copperClad: 1 / cladConductivity,
};

function metricResistance(row: { plain: number; tinned: number }, material: WireMaterial): number {
  if (material === 'tinned') return row.tinned;
  return material === 'copperClad' ? row.plain / cladConductivity : row.plain;
}

function adiabaticArea(area: number, material: WireMaterial): number {
  return material === 'copperClad' ? area * cladAdiabaticShare : area;
}

const gaugeDiameterBase = 0.127 * millimetre;
const gaugeRatio = 92;

/** A conductor of a standard size. */
export interface Conductor {
  readonly size: WireSize;
  readonly material: WireMaterial;
  readonly system: 'gauge' | 'metric';
  /** Gauge number, or nominal area in mm². */
  readonly number: number;
  /** Copper cross-section, m² (nominal for metric sizes). */
  readonly area: number;
  /** Diameter of the solid round wire of the same area, m. */
  readonly diameter: number;
  /** Outline of the strands, m. */
  readonly strandedDiameter: number;
  /** Outside of the insulation, m: a typical figure. */
  readonly outsideDiameter: number;
  /** Area of the copper conductor that bears the same short-circuit heat, m². */
  readonly adiabaticArea: number;
  /** Ω/m at 20 °C, one conductor. */
  readonly resistancePerLength: number;
  /** Key into the sources of the supply tables. */
  readonly source: 'awg' | 'class5';
  readonly notes: readonly Note[];
}

/**
 * Diameter of a solid wire of American wire gauge, m.
 *
 * d = 0.127 mm · 92^((36 − n)/39); n = 0 for 1/0, −1 for 2/0, −2 for 3/0, −3 for 4/0.
 * Source: ASTM B258, gauge definition.
 */
export function gaugeDiameter(gauge: number): number {
  return gaugeDiameterBase * gaugeRatio ** ((36 - gauge) / 39);
}

/** Area of a solid wire of American wire gauge, m². */
export function gaugeArea(gauge: number): number {
  return (Math.PI / 4) * gaugeDiameter(gauge) ** 2;
}

/** Resistance of one metre of a solid copper wire of American wire gauge at 20 °C, Ω/m. */
export function gaugeResistance(gauge: number): number {
  return copperResistivity / gaugeArea(gauge);
}

/**
 * Resistance of copper at a temperature over its resistance at 20 °C: 1 + 0.00393 (T − 293.15 K).
 *
 * T: temperature, K. Good from −50 to 200 °C within about 1 %; never below a small positive figure.
 * Source: IEC 60028.
 */
export function copperFactor(temperature: number): number {
  return Math.max(1 + copperCoefficient * (temperature - referenceTemperature), 0.05);
}

/** Outline of a stranded conductor of copper area A: √(4 A/(π · 0.75)), m. */
export function strandedDiameter(area: number): number {
  return Math.sqrt((4 * area) / (Math.PI * strandFill));
}

/**
 * Typical outside diameter of a single insulated flexible wire, m: outline of the strands plus two walls, the wall
 * interpolated over the logarithm of the area between tabulated wires and held at the ends. From memory.
 */
export function insulatedDiameter(area: number): number {
  const rows = insulationTable.outside;
  const wall = (row: { area: number; outside: number }) =>
    (row.outside * millimetre - strandedDiameter(row.area * squareMillimetre)) / 2;
  const x = Math.log(area / squareMillimetre);
  let lower = rows[0]!;
  for (const row of rows) {
    if (Math.log(row.area) >= x) {
      const span = Math.log(row.area) - Math.log(lower.area);
      const share = span > 0 ? Math.max(0, (x - Math.log(lower.area)) / span) : 0;
      return strandedDiameter(area) + 2 * (wall(lower) + share * (wall(row) - wall(lower)));
    }
    lower = row;
  }
  return strandedDiameter(area) + 2 * wall(lower);
}

function gaugeConductor(size: WireSize, gauge: number, material: WireMaterial): Conductor {
  const area = gaugeArea(gauge);
  return {
    size,
    material,
    system: 'gauge',
    number: gauge,
    area,
    diameter: gaugeDiameter(gauge),
    strandedDiameter: strandedDiameter(area),
    outsideDiameter: insulatedDiameter(area),
    adiabaticArea: adiabaticArea(area, material),
    resistancePerLength: gaugeResistance(gauge) * gaugeFactors[material],
    source: 'awg',
    notes: [
      ...(material === 'copperClad' ? [cladNote()] : []),
      note(
        'assumed',
        'gaugeResistance',
        'Gauge wire is taken as copper of the exact gauge area. Stranded and tinned makes may have up to a quarter more resistance: measure yours if the drop is close.',
      ),
    ],
  };
}

function metricConductor(size: WireSize, nominal: number, material: WireMaterial): Conductor | null {
  const row = class5Table.rows.find((entry) => entry.area === nominal);
  if (!row) return null;
  const area = nominal * squareMillimetre;
  return {
    size,
    material,
    system: 'metric',
    number: nominal,
    area,
    diameter: Math.sqrt((4 * area) / Math.PI),
    strandedDiameter: strandedDiameter(area),
    outsideDiameter: insulatedDiameter(area),
    adiabaticArea: adiabaticArea(area, material),
    resistancePerLength: metricResistance(row, material) / 1000,
    source: 'class5',
    notes: material === 'copperClad' ? [cladNote()] : [],
  };
}

function cladNote(): Note {
  return note(
    'from memory',
    'copperClad',
    'Copper-clad aluminium has about 1.6 times the resistance of copper, breaks when bent and corrodes in crimps: copper is worth its price here.',
  );
}

function buildConductor(size: WireSize, material: WireMaterial): Conductor {
  const number = Number.parseFloat(size.replace('AWG ', ''));
  const metric = size.startsWith('AWG') ? null : metricConductor(size, number, material);
  return metric ?? gaugeConductor(size, number, material);
}

/** All sizes of the wire table, thinnest first. */
export const wireSizesByArea: readonly WireSize[] = (Object.keys(wireSizes) as WireSize[])
  .map((size) => buildConductor(size, 'plain'))
  .sort((first, second) => first.area - second.area)
  .map((conductor) => conductor.size);

function conductorsOf(material: WireMaterial): ReadonlyMap<WireSize, Conductor> {
  return new Map(wireSizesByArea.map((size) => [size, buildConductor(size, material)]));
}

const conductors = Object.fromEntries(
  (Object.keys(wireMaterials) as WireMaterial[]).map((material) => [material, conductorsOf(material)]),
) as Readonly<Record<WireMaterial, ReadonlyMap<WireSize, Conductor>>>;

/**
 * The conductor of a standard size: area, diameters and resistance per metre at 20 °C.
 *
 * Gauge sizes follow ASTM B258 with copper of IEC 60028; metric sizes take the greatest resistance of IEC 60228
 * class 5, which is 1.11 to 1.16 times that of ideal copper of the nominal area. Copper-clad aluminium: that over 0.62.
 */
export function conductorBySize(size: WireSize, material: WireMaterial = 'plain'): Conductor {
  return conductors[material].get(size) ?? buildConductor(size, material);
}

/**
 * Resistance of the wire there and back, Ω.
 *
 * length: one way, m; temperature: of the copper, K.
 */
export function loopResistance(conductor: Conductor, length: number, temperature: number): number {
  return 2 * length * conductor.resistancePerLength * copperFactor(temperature);
}
