import type { Design } from '../../../../shared/design/schema.ts';
import {
  connectorKinds,
  type FuseKind,
  fuseKinds,
  pathKinds,
} from '../../../../shared/design/supplyChoices.ts';
import { conductorBySize, wireSizesByArea } from '../../supply/conductor.ts';
import { type ConnectorClass, connectorClasses, connectorFigures } from '../../supply/connector.ts';
import { tidy } from './edits.ts';
import { type Change, listed, type Offer, type Offers, said, single } from './offer.ts';
import type { Judged } from './standing.ts';

/** Wires shorter than this do not leave a case. Own choice, m. */
const shortestRun = 0.2;
const runStep = 0.1;
/** How many times the present source. */
const sourceFactors = [1.5, 2, 3, 4];
const moduleFactors = [1.25, 1.5, 2, 3];
/** Along the wire; where 33 CFR 183.455 puts it, m. */
const fuseNear = 0.1;
const hookUpLimit = 378.15;

function thickerWire({ wiring }: Design): readonly Offer[] {
  const gauge = wiring.size.startsWith('AWG');
  const area = conductorBySize(wiring.size, wiring.material).area;
  const sizes = wireSizesByArea.filter(
    (size) => size.startsWith('AWG') === gauge && conductorBySize(size, wiring.material).area > area * 1.01,
  );
  return listed(
    'wire',
    'parts',
    sizes.map((size) => ({
      title: `Run ${size.replace('mm2', 'mm²')} wire instead of ${wiring.size.replace('mm2', 'mm²')}`,
      edits: [{ path: 'wiring.size', value: size }],
      sideEffects: ['Stiffer; lugs and holder must take it. A short draws more.'],
    })),
  );
}

function shorterRun({ wiring }: Design): readonly Offer[] {
  const first = Math.ceil(wiring.length / runStep - 1e-9);
  const count = first - Math.ceil(shortestRun / runStep);
  if (count < 1) return [];
  return [
    {
      key: 'run',
      effort: 'bench',
      count,
      at: (step) => {
        const length = tidy((first - step) * runStep);
        return {
          title: `Shorten the wire to ${said(length, 'length', 'm')}`,
          edits: [
            { path: 'wiring.length', value: length },
            ...(wiring.fuseDistance > length ? [{ path: 'wiring.fuseDistance', value: length }] : []),
          ],
          sideEffects: ['The source moves nearer.'],
        };
      },
    },
  ];
}

/** Classes above the present one, by rating; of equal ratings the one with less resistance. */
function higherClasses(kind: ConnectorClass): readonly ConnectorClass[] {
  const { rating, resistance } = connectorFigures(kind);
  return connectorClasses
    .filter((other) => {
      const figures = connectorFigures(other);
      return figures.rating > rating || (figures.rating === rating && figures.resistance < resistance);
    })
    .sort((a, b) => connectorFigures(a).rating - connectorFigures(b).rating);
}

function betterConnectors({ wiring }: Design): readonly Offer[] {
  return wiring.path.flatMap((part, place) => {
    if (part.kind !== 'connector') return [];
    const at = (key: string) => `wiring.path.${place}.${key}`;
    return listed(
      `connector.${place}`,
      'parts',
      higherClasses(part.connector).map((kind) => ({
        title: `Fit a better connector: ${connectorKinds[kind]} instead of ${connectorKinds[part.connector]}`,
        edits: [
          { path: at('connector'), value: kind },
          { path: at('aged'), value: false },
          { path: at('resistance'), value: null },
          { path: at('rating'), value: null },
        ],
        sideEffects: ['Both halves must be changed.'],
      })),
    );
  });
}

function newForOld({ wiring }: Design): readonly Offer[] {
  return wiring.path.flatMap((part, place) =>
    part.aged
      ? [
          single(`aged.${place}`, 'bench', {
            title: `Clean or renew what is worn: ${pathKinds[part.kind]}`,
            edits: [{ path: `wiring.path.${place}.aged`, value: false }],
            sideEffects: ['Measure it after: volts across it at full current.'],
          }),
        ]
      : [],
  );
}

function withoutDiode({ wiring }: Design): readonly Offer[] {
  return wiring.path.flatMap((part, place) =>
    part.kind === 'diode'
      ? [
          single(`diode.${place}`, 'parts', {
            title: 'Guard against reversed leads with a transistor instead of the series diode',
            edits: [
              { path: `wiring.path.${place}.kind`, value: 'transistor' },
              { path: `wiring.path.${place}.resistance`, value: null },
            ],
            sideEffects: ['A P-channel MOSFET, or an N-channel one with its driver, made for the current.'],
          }),
        ]
      : [],
  );
}

function apart({ wiring }: Design): readonly Offer[] {
  if (wiring.together <= 2) return [];
  return [
    single('apart', 'bench', {
      title: 'Run the supply pair by itself, away from other loaded wires',
      edits: [{ path: 'wiring.together', value: 2 }],
    }),
  ];
}

function copper({ wiring }: Design): readonly Offer[] {
  if (wiring.material !== 'copperClad') return [];
  return [
    single('copper', 'parts', {
      title: 'Use copper wire instead of copper-clad aluminium',
      edits: [{ path: 'wiring.material', value: 'plain' }],
    }),
  ];
}

function otherFuse({ wiring }: Design): readonly Offer[] {
  const others = (Object.keys(fuseKinds) as FuseKind[]).filter((kind) => kind !== wiring.fuse);
  const kinds = others.map((kind) =>
    single(`fuse.${kind}`, 'parts', {
      title: `Fit another kind of fuse: ${fuseKinds[kind]}, the rating that fits`,
      edits: [
        { path: 'wiring.fuse', value: kind },
        { path: 'wiring.fuseRating', value: null },
      ],
    }),
  );
  const rating =
    wiring.fuseRating === null
      ? []
      : [
          single('fuseRating', 'parts', {
            title: 'Fit the standard rating that the load asks for',
            edits: [{ path: 'wiring.fuseRating', value: null }],
          }),
        ];
  return [...rating, ...kinds];
}

function fusePlace({ wiring }: Design): readonly Offer[] {
  if (wiring.fuseDistance <= fuseNear) return [];
  return [
    single('fusePlace', 'bench', {
      title: `Move the fuse to within ${said(fuseNear, 'length', 'mm')} of the source terminal`,
      edits: [{ path: 'wiring.fuseDistance', value: fuseNear }],
    }),
  ];
}

function warmerInsulation({ wiring }: Design): readonly Offer[] {
  if (wiring.insulationLimit >= hookUpLimit) return [];
  return [
    single('insulation', 'parts', {
      title: 'Use wire marked for 105 °C',
      edits: [{ path: 'wiring.insulationLimit', value: hookUpLimit }],
      sideEffects: ['It may then run too hot to touch.'],
    }),
  ];
}

const isBattery = ({ source }: Design) =>
  source.kind === 'leadAcid' || source.kind === 'lithiumIronPhosphate';

function largerSource(design: Design): readonly Offer[] {
  const { source } = design;
  const what = isBattery(design) ? 'battery' : 'supply';
  const changes = sourceFactors.map((factor): Change => {
    const times = (value: number | null) => (value === null ? null : tidy(value * factor));
    return {
      title: `A ${what} ${factor} times as large`,
      edits: [
        { path: 'source.internalResistance', value: tidy(source.internalResistance / factor) },
        { path: 'source.continuousCurrent', value: times(source.continuousCurrent) },
        { path: 'source.peakCurrent', value: times(source.peakCurrent) },
      ],
      sideEffects: ['Taken with as much less internal resistance. A short draws more.'],
    };
  });
  return listed('source', 'parts', changes);
}

function largerModule({ converter }: Design): readonly Offer[] {
  const limits = [converter.inputCurrentLimit, converter.outputCurrentLimit, converter.powerLimit];
  if (converter.kind !== 'module' || limits.every((limit) => limit === null)) return [];
  const changes = moduleFactors.map((factor): Change => {
    const times = (value: number | null) => (value === null ? null : tidy(value * factor));
    return {
      title: `A converter rated ${factor} times as high`,
      edits: [
        { path: 'converter.inputCurrentLimit', value: times(converter.inputCurrentLimit) },
        { path: 'converter.outputCurrentLimit', value: times(converter.outputCurrentLimit) },
        { path: 'converter.powerLimit', value: times(converter.powerLimit) },
      ],
      sideEffects: ['Its efficiency is taken to be the same; put in its own.'],
    };
  });
  return listed('module', 'parts', changes);
}

/** Capacitors at the input of a converter that are commonly had, F. */
const usualCapacitors = [1e-4, 2.2e-4, 4.7e-4, 1e-3, 2.2e-3, 4.7e-3, 0.01];

function moreInputCapacitance({ design, solution }: Judged): readonly Offer[] {
  const restless = solution.findings.supply.some(({ key }) => key === 'inputFilterUnstable');
  if (!restless) return [];
  const now = design.converter.inputCapacitance ?? 0;
  return listed(
    'inputCapacitor',
    'parts',
    usualCapacitors
      .filter((capacitance) => capacitance > now * 1.05)
      .map((capacitance) => ({
        title: `Put ${said(capacitance, 'capacitance', 'µF')} at the input of the converter`,
        edits: [{ path: 'converter.inputCapacitance', value: capacitance }],
        sideEffects: ['A larger inrush when switched on.'],
      })),
  );
}

const mostPhases = 4;

function morePhases({ converter }: Design): readonly Offer[] {
  if (converter.kind !== 'designed') return [];
  const { phases } = converter.parts;
  return listed(
    'phases',
    'parts',
    Array.from({ length: Math.max(0, mostPhases - phases) }, (_, i) => ({
      title: `Build the converter with ${phases + i + 1} phases instead of ${phases}`,
      edits: [{ path: 'converter.parts.phases', value: phases + i + 1 }],
      sideEffects: ['As many chokes and switches again, and a control that shares the current.'],
    })),
    false,
  );
}

function synchronous({ converter }: Design): readonly Offer[] {
  if (converter.kind !== 'designed' || converter.parts.rectifier === 'synchronous') return [];
  const resistance = converter.parts.switchResistance ?? converter.parts.rectifierResistance;
  return [
    single('synchronous', 'parts', {
      title: 'Rectify with a second switch instead of the diode',
      edits: [
        { path: 'converter.parts.rectifier', value: 'synchronous' },
        { path: 'converter.parts.rectifierResistance', value: resistance },
      ],
      sideEffects: [
        `Taken with ${said(resistance, 'resistance', 'mΩ')} when hot. Its gate must never be on together with the other.`,
      ],
    }),
  ];
}

function moduleAir({ converter }: Design): readonly Offer[] {
  if (converter.kind !== 'module' || converter.powerLimit === null || converter.powerShare >= 1) return [];
  return [
    single('moduleAir', 'parts', {
      title: 'Give the converter the air flow that its data ask for',
      edits: [{ path: 'converter.powerShare', value: 1 }],
      sideEffects: ['A fan; when it stops the converter must be switched off.'],
    }),
  ];
}

/** Wire, connectors, fuse, source and converter. */
export const supplyRemedies: Offers = (base) => [...ofDesign(base.design), ...moreInputCapacitance(base)];

const ofDesign = (design: Design): readonly Offer[] => [
  ...fusePlace(design),
  ...newForOld(design),
  ...apart(design),
  ...copper(design),
  ...otherFuse(design),
  ...thickerWire(design),
  ...shorterRun(design),
  ...betterConnectors(design),
  ...withoutDiode(design),
  ...warmerInsulation(design),
  ...largerSource(design),
  ...moduleAir(design),
  ...largerModule(design),
  ...morePhases(design),
  ...synchronous(design),
];
