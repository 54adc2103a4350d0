import type { Design } from '../../../../shared/design/schema.ts';
import { writeNumber } from '../../quantity/write.ts';
import { isLinearClass, prepareFinal } from '../final.ts';
import { tidy } from './edits.ts';
import { type Change, listed, type Offer, type Offers, optionWords, said, single } from './offer.ts';
import type { Judged } from './standing.ts';

/** Bias is looked for down to this share of the present one. Own choice: below it, voice splatters. */
const leastBiasShare = 0.2;
const biasSteps = 8;
/** The rail is looked for within these shares of the present one. Own choice. */
const leastRailShare = 0.6;
const greatestRailShare = 1.4;

function lowerBias({ amplifier }: Design): readonly Offer[] {
  const adjustable = amplifier.class === 'AB' && amplifier.calibration !== 'readings';
  if (!adjustable || !(amplifier.quiescentCurrent > 0)) return [];
  const changes = Array.from({ length: biasSteps }, (_, i) => {
    const share = 1 - ((1 - leastBiasShare) * (i + 1)) / biasSteps;
    const current = Number((amplifier.quiescentCurrent * share).toPrecision(2));
    return {
      title: `Lower the quiescent current to ${said(current, 'current', 'mA')}`,
      edits: [{ path: 'amplifier.quiescentCurrent', value: current }],
      sideEffects: [
        'Less bias distorts voice more: look at two tones. The efficiency at full power is taken to stay; measure it again.',
      ],
    };
  });
  return listed('bias', 'settings', changes, false);
}

/** The step of the trimmer, V. */
const railStep = (rail: number) => (rail >= 20 ? 0.5 : 0.1);

function lowerRail({ converter }: Design): readonly Offer[] {
  if (converter.kind === 'none') return [];
  const rail = converter.outputVoltage;
  const step = railStep(rail);
  const first = Math.ceil(rail / step - 1e-9);
  const count = first - Math.ceil((leastRailShare * rail) / step);
  if (count < 1) return [];
  return [
    {
      key: 'rail',
      effort: 'settings',
      count,
      keepsPower: true,
      at: (n) => {
        const volts = tidy((first - n) * step);
        return {
          title: `Lower the rail to ${said(volts, 'voltage', 'V')}`,
          edits: [{ path: 'converter.outputVoltage', value: volts }],
          sideEffects: [
            'No rail is left for peaks beyond the power asked for; look at the tops with two tones.',
          ],
        };
      },
    },
  ];
}

function higherRail({ design, solution }: Judged): readonly Offer[] {
  const { converter } = design;
  const short = solution.findings.supply.some((finding) => finding.key === 'railLimitsPower');
  if (converter.kind === 'none' || !short) return [];
  const rail = converter.outputVoltage;
  const step = railStep(rail);
  const first = Math.floor(rail / step + 1e-9);
  const count = Math.floor((greatestRailShare * rail) / step) - first;
  if (count < 1) return [];
  return [
    {
      key: 'railUp',
      effort: 'settings',
      count,
      at: (n) => {
        const volts = tidy((first + n) * step);
        return {
          title: `Raise the rail to ${said(volts, 'voltage', 'V')}`,
          edits: [{ path: 'converter.outputVoltage', value: volts }],
          sideEffects: ['More voltage at the devices and more heat below full power.'],
        };
      },
    },
  ];
}

const mostPrimaryTurns = 3;
const mostSecondaryTurns = 12;

/** Whole-turn ratios below the present one and not below the one that full swing needs, nearest first. */
function ratiosBetween(present: number, needed: number): readonly { ratio: number; words: string }[] {
  const found: { ratio: number; words: string }[] = [];
  for (let primary = 1; primary <= mostPrimaryTurns; primary += 1) {
    for (let secondary = 1; secondary <= mostSecondaryTurns; secondary += 1) {
      const ratio = secondary / primary;
      if (ratio >= present * 0.999 || ratio < needed) continue;
      if (!found.some((other) => other.ratio === ratio))
        found.push({ ratio, words: `${secondary} : ${primary}` });
    }
  }
  return found.sort((a, b) => b.ratio - a.ratio);
}

function otherTransformer({ design, solution }: Judged): readonly Offer[] {
  const { amplifier } = design;
  const { loadTurnsRatio, fullSwingRatio } = solution.values;
  if (!isLinearClass(amplifier.class) || amplifier.calibration === 'readings') return [];
  if (loadTurnsRatio === undefined || fullSwingRatio === undefined) return [];
  const changes: readonly Change[] = ratiosBetween(loadTurnsRatio, fullSwingRatio).map(
    ({ ratio, words }) => ({
      title: `Wind the output transformer ${words} (secondary to primary)`,
      edits: [{ path: 'amplifier.turnsRatio', value: tidy(ratio) }],
      sideEffects: [
        `The present load belongs to a ratio of ${writeNumber(loadTurnsRatio, 3, true)}. A higher load makes the power with more of the rail; bandwidth and stability must be looked at anew.`,
      ],
    }),
  );
  const made = changes.filter(({ edits }) => prepareFinal(withRatio(design, edits[0]!.value as number)).ok);
  return listed('transformer', 'bench', made, false).map((offer) => ({ ...offer, keepsPower: true }));
}

function withRatio(design: Design, turnsRatio: number): Design {
  return { ...design, amplifier: { ...design.amplifier, turnsRatio } };
}

function matchedAntenna({ amplifier }: Design): readonly Offer[] {
  if (amplifier.swr <= 1) return [];
  return [
    single('match', 'settings', {
      title: 'Match the antenna to an SWR of 1',
      edits: [{ path: 'amplifier.swr', value: 1 }],
      sideEffects: ['An antenna tuner loses some of the power.'],
    }),
  ];
}

/** Where the sensor of the bias can sit, better and better. */
const sensorPlaces = ['plate', 'case'] as const;
/** Resistors in series with each device, ohms. */
const biasResistors = [0.05, 0.1, 0.2, 0.3, 0.5];

/** What keeps a quiescent current from drifting or running away. */
function steadyBias({ design, solution }: Judged): readonly Offer[] {
  const restless = solution.findings.final.some(({ key }) => key === 'biasRunsAway' || key === 'biasDrifts');
  if (!restless) return [];
  const { amplifier } = design;
  const now = (sensorPlaces as readonly string[]).indexOf(amplifier.biasTracking);
  return [
    ...listed(
      'biasSensor',
      'bench',
      sensorPlaces.slice(now + 1).map((place) => ({
        title: `Let the bias follow the temperature of ${optionWords('amplifier.biasTracking', place)}`,
        edits: [{ path: 'amplifier.biasTracking', value: place }],
        sideEffects: ['Set it hot and cold: too much of it starves the devices.'],
      })),
    ),
    ...listed(
      'biasResistor',
      'parts',
      biasResistors
        .filter((resistance) => resistance > amplifier.biasResistance * 1.05)
        .map((resistance) => ({
          title: `Put ${said(resistance, 'resistance', 'Ω')} in series with each source or emitter`,
          edits: [{ path: 'amplifier.biasResistance', value: resistance }],
          sideEffects: ['Less gain and a little less output.'],
        })),
    ),
  ];
}

/** Bias, rail, transformer, match. */
export const amplifierRemedies: Offers = (base) => [
  ...steadyBias(base),
  ...lowerBias(base.design),
  ...lowerRail(base.design),
  ...higherRail(base),
  ...otherTransformer(base),
  ...matchedAntenna(base.design),
];
