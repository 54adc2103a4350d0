import fanTable from '../../../../reference-data/usualFans.json' with { type: 'json' };
import type { Edit } from '../../../../shared/answers.ts';
import { knownField } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { hasFan, meanFinThickness, takesFan } from '../sinkDescription.ts';
import { tidy } from './edits.ts';
import { type Change, listed, type Offer, type Offers, optionWords, said, single } from './offer.ts';

/** How much more of the same profile is worth thinking of. Own choice. */
const greatestGrowth = 2.5;
const lengthStep = 0.005;
const heightStep = 0.001;
/** Vent areas looked at, m². */
const ventAreas = [0.002, 0.004, 0.006, 0.01, 0.015, 0.02];

const finned = ({ sink }: Design) => ['fins', 'finsBothSides', 'tunnel'].includes(sink.shape);
const stillAir = (design: Design) => !hasFan(design.sink) && design.sink.shape !== 'tunnel';

function greatest(path: string): number {
  const spec = knownField(path);
  return spec.kind === 'number' ? spec.max : Number.POSITIVE_INFINITY;
}

function upright({ sink }: Design): readonly Offer[] {
  if (sink.position === 'upright' || !stillAir({ sink } as Design)) return [];
  return [
    single('upright', 'bench', {
      title: 'Turn the sink so that plate and fins stand upright',
      edits: [{ path: 'sink.position', value: 'upright' }],
      sideEffects: ['Air must reach the lower edge and leave at the upper one.'],
    }),
  ];
}

function finish({ sink }: Design): readonly Offer[] {
  const coats = (['painted', 'anodised'] as const).filter((coat) => coat !== sink.finish);
  const dark = sink.finish === 'painted' || sink.finish === 'anodised';
  if (dark) return [];
  return coats.map((coat) =>
    single(`finish.${coat}`, coat === 'painted' ? 'bench' : 'parts', {
      title: coat === 'painted' ? 'Paint the sink thinly, any matt colour' : 'Have the sink anodised',
      edits: [{ path: 'sink.finish', value: coat }],
      sideEffects: [`Keep the seats of the devices bare. Was: ${optionWords('sink.finish', sink.finish)}.`],
    }),
  );
}

function clearance({ sink }: Design): readonly Offer[] {
  if (sink.shape === 'finsBothSides' || sink.shape === 'tunnel') return [];
  if (sink.backExposed) return [];
  return [
    single('clearance', 'metalwork', {
      title: 'Stand the sink off the case so that air reaches its back',
      edits: [
        { path: 'sink.backExposed', value: true },
        { path: 'sink.backShare', value: 0.7 },
      ],
      sideEffects: ['Counted with 70 % of the back free; spacers of 20 mm and more.'],
    }),
  ];
}

function outside({ sink }: Design): readonly Offer[] {
  if (sink.placement === 'outside') return [];
  return [
    single('outside', 'metalwork', {
      title: 'Move the sink out of the case into room air',
      edits: [{ path: 'sink.placement', value: 'outside' }],
      sideEffects: ['Hot metal comes within reach of hands.'],
    }),
  ];
}

function vents({ surroundings }: Design): readonly Offer[] {
  const now = surroundings.caseVents === 'vented' ? surroundings.ventArea : 0;
  const changes = ventAreas
    .filter((area) => area > now * 1.05)
    .map((area) => ({
      title: `Cut vents low and high in the case, ${said(area, 'area', 'cm²')} each`,
      edits: [
        { path: 'surroundings.caseVents', value: 'vented' },
        { path: 'surroundings.ventArea', value: area },
      ],
      sideEffects: ['Holes let radio noise and fingers through: perforated sheet, bonded all round.'],
    }));
  return listed('vents', 'metalwork', changes);
}

const sameFan = { fanMiddleFlow: null, fanMiddlePressure: null, fanVoltageShare: 1 };

function fans(design: Design): readonly Offer[] {
  const { sink } = design;
  if (!takesFan(sink.shape)) return [];
  const present = hasFan(sink) ? sink.fanFlow * sink.fanVoltageShare : 0;
  const changes = fanTable.rows
    .filter((row) => row.flow > present * 1.05)
    .map((row): Change => {
      const values = { fan: 'along', fanFlow: row.flow, fanPressure: row.pressure, ...sameFan };
      const edits: readonly Edit[] = Object.entries(values).map(([key, value]) => ({
        path: `sink.${key}`,
        value,
      }));
      const size = `${said(row.frame, 'length', 'mm')}, ${said(row.thickness, 'length', 'mm')} thick`;
      return {
        title: `Blow along the fins with a fan of ${size}: ${said(row.flow, 'volumeFlow', 'L/s')} free, ${said(row.pressure, 'pressure', 'Pa')} blocked`,
        edits,
        sideEffects: [
          'Noise, dust and a part that wears. When it stops the sink is what it was: switch off by temperature.',
          'A usual fan of that size, from memory; put in the figures of yours.',
        ],
      };
    });
  return listed('fan', 'parts', changes);
}

function fanVoltage({ sink }: Design): readonly Offer[] {
  if (!hasFan(sink) || sink.fanVoltageShare >= 1) return [];
  const first = Math.floor(sink.fanVoltageShare * 20 + 1e-9);
  const changes = Array.from({ length: 20 - first }, (_, i) => {
    const share = (first + i + 1) / 20;
    return {
      title: `Run the fan at ${said(share, 'share', '%')} of its voltage`,
      edits: [{ path: 'sink.fanVoltageShare', value: share }],
      sideEffects: ['Louder.'],
    };
  });
  return listed('fanVoltage', 'settings', changes);
}

function duct({ sink }: Design): readonly Offer[] {
  if (!hasFan(sink) || sink.shape === 'tunnel' || sink.fanPath === 'duct') return [];
  return [
    single('duct', 'metalwork', {
      title: 'Lead all of the air through the fins by a duct',
      edits: [{ path: 'sink.fanPath', value: 'duct' }],
      sideEffects: ['Sheet over the tips of the fins, tight at the sides.'],
    }),
  ];
}

/** A weighed mass belongs to the sink as it was. */
function grown(sink: Design['sink'], edits: readonly Edit[], growth: number): readonly Edit[] {
  if (sink.mass === null) return edits;
  return [...edits, { path: 'sink.mass', value: Math.min(greatest('sink.mass'), tidy(sink.mass * growth)) }];
}

function longer({ sink }: Design): readonly Offer[] {
  if (sink.shape === 'panel') return [];
  const limit = Math.min(greatest('sink.length'), sink.length * greatestGrowth);
  const count = Math.floor((limit - sink.length) / lengthStep + 1e-9);
  if (count < 1) return [];
  return [
    {
      key: 'longer',
      effort: 'metalwork',
      count,
      at: (step) => {
        const length = tidy(sink.length + step * lengthStep);
        return {
          title: `Use ${said(length, 'length', 'mm')} of the same profile instead of ${said(sink.length, 'length', 'mm')}`,
          edits: grown(sink, [{ path: 'sink.length', value: length }], length / sink.length),
          sideEffects: ['The longer the fins, the less the last part of them helps.'],
        };
      },
    },
  ];
}

/** More fins at the same pitch. */
function wider(design: Design): readonly Offer[] {
  const { sink } = design;
  if (!finned(design) || sink.finCount < 2) return [];
  const pitch = (sink.width - meanFinThickness(sink)) / (sink.finCount - 1);
  if (!(pitch > 0)) return [];
  const limit = Math.min(greatest('sink.width'), sink.width * greatestGrowth);
  const count = Math.min(
    Math.floor((limit - sink.width) / pitch + 1e-9),
    greatest('sink.finCount') - sink.finCount,
  );
  if (count < 1) return [];
  return [
    {
      key: 'wider',
      effort: 'metalwork',
      count,
      at: (step) => {
        const width = tidy(Math.round((sink.width + step * pitch) * 1e4) / 1e4);
        const fins = sink.finCount + step;
        return {
          title: `Use a sink ${said(Math.round(width * 1000) / 1000, 'length', 'mm')} wide with ${fins} such fins instead of ${sink.finCount}`,
          edits: grown(
            sink,
            [
              { path: 'sink.width', value: width },
              { path: 'sink.finCount', value: fins },
            ],
            width / sink.width,
          ),
          sideEffects: ['Two sinks side by side on one plate do the same if the joint is good.'],
        };
      },
    },
  ];
}

function taller(design: Design): readonly Offer[] {
  const { sink } = design;
  if (!finned(design)) return [];
  const limit = Math.min(greatest('sink.finHeight'), sink.finHeight * greatestGrowth);
  const count = Math.floor((limit - sink.finHeight) / heightStep + 1e-9);
  if (count < 1) return [];
  return [
    {
      key: 'taller',
      effort: 'metalwork',
      count,
      steady: false,
      at: (step) => {
        const height = tidy(sink.finHeight + step * heightStep);
        return {
          title: `Use fins ${said(height, 'length', 'mm')} high instead of ${said(sink.finHeight, 'length', 'mm')}`,
          edits: [
            { path: 'sink.finHeight', value: height },
            ...(sink.mass === null ? [] : [{ path: 'sink.mass', value: null }]),
          ],
          sideEffects: ['Another profile with the same gaps and thickness.'],
        };
      },
    },
  ];
}

function converterOff({ converter, sink }: Design): readonly Offer[] {
  if (converter.kind === 'none' || converter.heatTo !== 'amplifierSink') return [];
  return (['outside', 'caseAir'] as const).map((place) =>
    single(`converterOff.${place}`, 'metalwork', {
      title: `Take the converter off this sink: its heat into ${optionWords('converter.heatTo', place)}`,
      edits: [{ path: 'converter.heatTo', value: place }],
      sideEffects: [
        place === 'outside'
          ? 'It needs a sink of its own.'
          : sink.placement === 'inside'
            ? 'It warms the air at the fins.'
            : 'The air in the case and everything in it gets warmer.',
      ],
    }),
  );
}

/** Position, finish, clearance, air, fan, size of the sink, and what else heats it. */
export const sinkRemedies: Offers = ({ design }) => [
  ...upright(design),
  ...finish(design),
  ...clearance(design),
  ...outside(design),
  ...vents(design),
  ...fanVoltage(design),
  ...fans(design),
  ...duct(design),
  ...longer(design),
  ...wider(design),
  ...taller(design),
  ...converterOff(design),
];
