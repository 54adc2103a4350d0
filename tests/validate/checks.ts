import airTable from '../../reference-data/airTable.json' with { type: 'json' };
import { airProperties } from '../../src/engine/heat/air.ts';
import { outerWallHeat, steadyCaseAir } from '../../src/engine/heat/caseAir.ts';
import { ventHeat } from '../../src/engine/heat/caseVents.ts';
import { standardPressure } from '../../src/engine/heat/constants.ts';
import { ladderImpedance, ladderPeriodic } from '../../src/engine/heat/deviceLadder.ts';
import { finArrayHeat, prepareFinArray } from '../../src/engine/heat/finArray.ts';
import { finEfficiency } from '../../src/engine/heat/finEfficiency.ts';
import { teertstra } from '../../src/engine/heat/forcedAir.ts';
import { horizontalFaceDown } from '../../src/engine/heat/horizontalPlate.ts';
import { levelCylinder, pinHeat, preparePins } from '../../src/engine/heat/pins.ts';
import { plateSpread } from '../../src/engine/heat/plateSpread.ts';
import { spreaderResistance } from '../../src/engine/heat/spreader.ts';
import { barCohenRohsenow, optimumGap } from '../../src/engine/heat/verticalChannel.ts';
import { churchillChu } from '../../src/engine/heat/verticalPlate.ts';
import flow from '../engine/cases/flow.json' with { type: 'json' };
import heat from '../engine/cases/heat.json' with { type: 'json' };
import plates from '../engine/cases/plate.json' with { type: 'json' };
import transient from '../engine/cases/transient.json' with { type: 'json' };
import { resultOf } from '../engine/resultOf.ts';
import { warmedShare } from './ductFlow.ts';
import { type SpreaderOnPlate, spreaderByVolumes } from './finiteVolume.ts';
import { type PinField, pinDraught } from './pinDraught.ts';
import { stackFlow } from './stackFlow.ts';

/**
 * Where a figure comes from: measured or computed in another way (`independent`), or by the same formula in a book or
 * another program (`same formula`), which only shows that it is written down rightly. `factor set by it`: computed in
 * another way, but one factor of the model was chosen to meet it on the whole.
 */
export type Origin = 'independent' | 'factor set by it' | 'same formula';

/** One published value or independent case beside the model's. */
export interface Check {
  readonly part: 'air' | 'sink in still air' | 'fan' | 'plate' | 'time' | 'case';
  readonly item: string;
  readonly source: string;
  readonly origin: Origin;
  readonly given: number;
  readonly model: number;
  readonly unit: string;
  /** Share of the given value by which the model may differ, and why no less where it is much. */
  readonly allowed: number;
}

const plain = { pressure: standardPressure, filmFactor: 1, channelFactor: 1 };

/** Incropera, table A.4, at 300, 350 and 400 K. */
function airChecks(): Check[] {
  return airTable.rows.slice(1, 4).flatMap((row): Check[] => {
    const air = airProperties(row.temperature, airTable.pressure);
    const from = {
      part: 'air',
      source: 'Incropera, table A.4',
      origin: 'independent',
      allowed: 0.01,
    } as const;
    return [
      {
        ...from,
        item: `conductivity of air at ${row.temperature} K`,
        given: row.conductivity * 1e-3,
        model: air.conductivity,
        unit: 'W/(m K)',
      },
      {
        ...from,
        item: `kinematic viscosity at ${row.temperature} K, 1 bar`,
        given: row.kinematicViscosity * 1e-6,
        model: air.kinematicViscosity,
        unit: 'm²/s',
      },
    ];
  });
}

/** Cengel and Ghajar, example 9-3: plates 18 cm high at 80 °C in 30 °C air. */
function bookPlates() {
  const rayleigh = ((9.80665 / 328.15) * 50 * 0.18 ** 3 * 0.7215) / 1.847e-5 ** 2;
  const gap = optimumGap(0.18, rayleigh);
  const film = (barCohenRohsenow((rayleigh * gap ** 4) / 0.18 ** 4) * 0.02772) / gap;
  return { gap, film };
}

function bookChecks(): Check[] {
  const { gap, film } = bookPlates();
  const book = { part: 'sink in still air', origin: 'same formula', allowed: 0.012 } as const;
  return [
    {
      ...book,
      item: 'best gap of upright plates',
      source: 'Cengel & Ghajar, ex. 9-3',
      given: 7.45e-3,
      model: gap,
      unit: 'm',
    },
    {
      ...book,
      item: 'film coefficient there',
      source: 'Cengel & Ghajar, ex. 9-3',
      given: 4.863,
      model: film,
      unit: 'W/(m² K)',
    },
    {
      ...book,
      item: 'Nu of an upright plate, 0.6 m',
      source: 'Cengel & Ghajar, ex. 9-2',
      given: 113.3,
      model: churchillChu(((9.80665 / 333.15) * 60 * 0.6 ** 3 * 0.7202) / 1.896e-5 ** 2, 0.7202),
      unit: '',
    },
    {
      ...book,
      item: 'Nu of a plate facing down',
      source: 'Cengel & Ghajar, ex. 9-2',
      given: 15.87,
      model: horizontalFaceDown(1.195e7),
      unit: '',
    },
    {
      ...book,
      item: 'Nu of a level pipe',
      source: 'Incropera, ex. 9.4, from memory',
      given: 23.3,
      model: levelCylinder(5.073e6, 0.697),
      unit: '',
    },
    {
      ...book,
      item: 'fin efficiency at m L = 1',
      source: 'Cengel & Ghajar, table 3-5',
      given: 0.762,
      model: finEfficiency(100, 100, 0.02, 0.1),
      unit: '',
    },
  ];
}

/** Flow simulation of one pitch against the channel model without its factor of 0.92. */
function simulationChecks(): Check[] {
  return flow.cases.map((row) => {
    const count = 11;
    const prepared = prepareFinArray({
      width: (count - 1) * row.gap + count * row.finThickness,
      length: row.finLength,
      baseThickness: 0,
      finCount: count,
      finHeight: row.finHeight,
      finThickness: row.finThickness,
      conductivity: 1e6,
      emissivity: 1e-6,
      backExposed: false,
    });
    const found = finArrayHeat(prepared, row.ambient + row.rise, row.ambient, row.ambient, {
      ...plain,
      channelFactor: 0.92,
    });
    const perPitch =
      (found.filmCoefficient * row.rise * (prepared.channelFinArea + prepared.channelBaseArea)) / (count - 1);
    return {
      part: 'sink in still air',
      item: `fins ${row.gap * 1e3} mm apart, ${row.finHeight * 1e3} mm high, ${row.rise} K`,
      source: 'flow simulation, own computation, ±8 %',
      origin: 'factor set by it',
      given: row.heatPerPitch,
      model: perPitch,
      unit: 'W a pitch',
      allowed: 0.4,
    } as const;
  });
}

const pinFields: readonly (readonly [string, Omit<PinField, 'air' | 'plate' | 'width' | 'length'>])[] = [
  ['10 × 10 pins of 3 mm', { thickness: 0.003, height: 0.025, columns: 10, rows: 10 }],
  ['14 × 14 pins of 3 mm', { thickness: 0.003, height: 0.025, columns: 14, rows: 14 }],
  ['20 × 20 pins of 2 mm', { thickness: 0.002, height: 0.02, columns: 20, rows: 20 }],
  ['6 × 6 pins of 3 mm, sparse', { thickness: 0.003, height: 0.025, columns: 6, rows: 6 }],
];

function pinChecks(): Check[] {
  return pinFields.map(([item, field]) => {
    const whole = { ...field, width: 0.1, length: 0.1, plate: 348.15, air: 298.15 };
    const model = pinHeat(
      preparePins({
        ...field,
        width: 0.1,
        length: 0.1,
        baseThickness: 0,
        section: 'round',
        pinThickness: field.thickness,
        pinHeight: field.height,
        conductivity: 1e6,
        emissivity: 1e-6,
        backExposed: false,
      }),
      348.15,
      298.15,
      298.15,
      plain,
    ).convection;
    return {
      part: 'sink in still air',
      item,
      source: 'rising air marched row by row, own computation',
      origin: 'independent',
      given: pinDraught(whole),
      model,
      unit: 'W',
      allowed: 0.5,
    } as const;
  });
}

/** Air warmed between plates, by length over (D Re Pr); the relation counts an entrance that still develops. */
function tunnelChecks(): Check[] {
  return [0.01, 0.03, 0.1, 0.3].map((graetz) => {
    const prandtl = 0.7;
    const reynolds = 1 / (4 * graetz * prandtl);
    return {
      part: 'fan',
      item: `air in a closed channel, L/(D Re Pr) ${graetz}`,
      source: 'developed flow by finite differences, own computation',
      origin: 'independent',
      given: warmedShare(graetz),
      model: (2 * teertstra(reynolds, prandtl)) / (reynolds * prandtl),
      unit: 'of the greatest heat',
      allowed: 0.1,
    } as const;
  });
}

function plateChecks(): Check[] {
  return plates.cases.map((row) => {
    const { a, b, t, k, h } = row.plate;
    const spread = resultOf(
      plateSpread(
        { width: a, length: b, thickness: t, conductivity: k, film: h },
        row.sources.map((s) => ({ x: s.xc, y: s.yc, width: s.c, length: s.d })),
      ),
    );
    const first = spread.meanMatrix[0]!.reduce(
      (sum, value, j) => sum + (value + spread.uniform) * row.sources[j]!.Q,
      0,
    );
    return {
      part: 'plate',
      item: `${row.sources.length === 1 ? 'one source' : `${row.sources.length} sources`} on ${a * 1e3} × ${b * 1e3} mm, mean rise`,
      source: 'finite volumes, extrapolated, own computation',
      origin: 'independent',
      given: row.richardson[0]!,
      model: first,
      unit: 'K',
      allowed: 0.005,
    } as const;
  });
}

const spreaders: readonly (readonly [string, number, number, number])[] = [
  ['copper, 5 mm', 401, 0.005, 0.05],
  ['copper, 3 mm', 401, 0.003, 0.02],
  ['aluminium sheet, 4 mm', 140, 0.004, 0.1],
];

function spreaderChecks(): Check[] {
  const side = 0.03;
  return spreaders.map(([item, conductivity, thickness, joint]) => {
    const at = (cell: number, layers: number) =>
      spreaderByVolumes({
        plate: { width: 0.06, length: 0.05, thickness: 0.005 },
        spreader: { width: side / 2, length: side / 2, thickness },
        face: { width: 0.005, length: 0.0075 },
        plateConductivity: 200,
        spreaderConductivity: conductivity,
        film: 60,
        joint: joint * side * side,
        cell,
        layers,
      } satisfies SpreaderOnPlate);
    const coarse = at(2.5e-3, 4);
    const fine = at(1.25e-3, 8);
    const local = resultOf(
      plateSpread({ width: 0.12, length: 0.1, thickness: 0.005, conductivity: 200, film: 60 }, [
        { x: 0.06, y: 0.05, width: side, length: side },
      ]),
    ).meanMatrix[0]![0]!;
    const through = resultOf(
      spreaderResistance(
        {
          width: side,
          length: side,
          thickness,
          metal: { conductivity, density: 1, specificHeat: 1 },
          joint,
          faceWidth: 0.01,
          faceLength: 0.015,
        },
        local,
      ),
    );
    return {
      part: 'plate',
      item: `part on a spreader, ${item}`,
      source: 'finite volumes, extrapolated, own computation',
      origin: 'independent',
      given: fine + (fine - coarse) / 3,
      model: local + through,
      unit: 'K/W',
      allowed: 0.03,
    } as const;
  });
}

interface Step {
  readonly name: string;
  readonly t_s?: readonly number[];
  readonly Zth_matrix_exponential?: readonly number[];
  readonly segments?: readonly (readonly number[])[];
  readonly junction_theta_at_segment_boundaries_K?: readonly number[];
}

function timeChecks(): Check[] {
  const stages = transient.foster.r.map((resistance, i) => ({
    resistance,
    timeConstant: transient.foster.tau[i]!,
  }));
  const rows = transient.cases as unknown as readonly Step[];
  const step = rows.find(({ name }) => name.startsWith('T1'))!;
  const keyed = rows.find(({ name }) => name.startsWith('T3'))!;
  const at = step.t_s!.findIndex((time) => time >= 1);
  const period = ladderPeriodic(
    stages,
    keyed.segments!.map(([power, duration]) => ({ power: power!, duration: duration! })),
  );
  const from = {
    part: 'time',
    source: 'matrix exponential and Radau integration, own computation',
    origin: 'independent',
    allowed: 1e-6,
  } as const;
  return [
    {
      ...from,
      item: 'step of a four-stage ladder',
      given: step.Zth_matrix_exponential![at]!,
      model: ladderImpedance(stages, step.t_s![at]!),
      unit: 'K/W',
    },
    {
      ...from,
      item: 'highest of a keyed pattern',
      given: Math.max(...keyed.junction_theta_at_segment_boundaries_K!),
      model: period.highest,
      unit: 'K',
    },
  ];
}

function caseChecks(): Check[] {
  const book = outerWallHeat(
    { width: 0.3, depth: 0.4, height: 0.15, emissivity: 0.85, bottomFree: false },
    338.15,
    308.15,
    standardPressure,
  );
  const row = heat.box.rows.find(({ Q }) => Q === 25)!;
  const box = { width: 0.25, depth: 0.2, height: 0.1, emissivity: 0.85, bottomFree: true };
  const inside = 318.15;
  const outside = 298.15;
  const carried =
    stackFlow(1e-3, 0.05, inside, outside, standardPressure, 0.6) *
    airProperties(inside, standardPressure).specificHeat *
    (inside - outside);
  return [
    {
      part: 'case',
      item: 'box 30 × 40 × 15 cm, wall 65 °C',
      source: 'Cengel, from memory; simplified films',
      origin: 'same formula',
      given: 112.7,
      model: book.total,
      unit: 'W',
      allowed: 0.06,
    },
    {
      part: 'case',
      item: 'air in a closed box with 25 W',
      source: 'second program, own computation',
      origin: 'same formula',
      given: row.T_air_eps085,
      model: steadyCaseAir(box, 25, 298.15, standardPressure).air,
      unit: 'K',
      allowed: 1e-6,
    },
    {
      part: 'case',
      item: 'vents of 10 cm², 20 K (a guess)',
      source: 'balance of mass in two openings, own computation',
      origin: 'independent',
      given: carried,
      model: ventHeat({ area: 1e-3, height: 0.05 }, inside, outside, standardPressure),
      unit: 'W',
      allowed: 0.06,
    },
  ];
}

/** Every published value and independent case of the heat path beside the model. */
export function allChecks(): readonly Check[] {
  return [
    ...airChecks(),
    ...bookChecks(),
    ...simulationChecks(),
    ...pinChecks(),
    ...tunnelChecks(),
    ...plateChecks(),
    ...spreaderChecks(),
    ...timeChecks(),
    ...caseChecks(),
  ];
}

/** How far the model is off, as a share of the given value. */
export function errorOf({ given, model }: Check): number {
  return (model - given) / given;
}
