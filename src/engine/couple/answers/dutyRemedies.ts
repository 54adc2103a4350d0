import type { Design } from '../../../../shared/design/schema.ts';
import { writeDuration, writeNumber } from '../../quantity/write.ts';
import { isLinearClass } from '../final.ts';
import { tidy } from './edits.ts';
import { listed, type Offer, type Offers, optionWords, said, single } from './offer.ts';

/** A duty below this is no operating any more. Own choice. */
const leastDuty = 0.05;
/** More than this down is another transmitter: a quarter of the power is one S-unit. Own choice. */
const leastPowerShare = 0.25;
/** Shorter than this no over says anything, s. Own choice. */
const shortestOver = 5;
/** Overs that operators keep, s. */
const usualCycles = [3600, 1800, 1200, 600, 300, 180, 120, 60, 30, 15];

function lowerDuty({ service }: Design): readonly Offer[] {
  const now = Math.ceil(service.transmitShare * 100 - 1e-9);
  const count = now - Math.round(leastDuty * 100);
  if (count < 1) return [];
  const before = said(service.transmitShare, 'share', '%');
  return [
    {
      key: 'duty',
      effort: 'settings',
      count,
      at: (step) => {
        const share = (now - step) / 100;
        return {
          title: `Transmit ${said(share, 'share', '%')} of the time instead of ${before}`,
          edits: [{ path: 'service.transmitShare', value: share }],
          sideEffects: [
            `An over of ${writeDuration(share * service.cycle)}, then ${writeDuration((1 - share) * service.cycle)} of listening.`,
          ],
        };
      },
    },
  ];
}

function shorterOvers({ service }: Design): readonly Offer[] {
  const shorter = usualCycles.filter(
    (cycle) => cycle < service.cycle * 0.99 && cycle * service.transmitShare >= shortestOver,
  );
  return listed(
    'overs',
    'settings',
    shorter.map((cycle) => ({
      title: `Keep overs to ${writeDuration(cycle * service.transmitShare)}, with pauses of ${writeDuration(cycle * (1 - service.transmitShare))}`,
      edits: [{ path: 'service.cycle', value: cycle }],
      sideEffects: ['The duty stays; contacts go to and fro more often.'],
    })),
  );
}

/** The step in which a power is set on a meter, W. */
function powerStep(pep: number): number {
  if (pep >= 200) return 5;
  if (pep >= 20) return 1;
  if (pep >= 2) return 0.1;
  return pep / 20;
}

function lowerPower({ amplifier }: Design): readonly Offer[] {
  const step = powerStep(amplifier.pep);
  const first = Math.ceil(amplifier.pep / step - 1e-9);
  const count = first - Math.ceil((leastPowerShare * amplifier.pep) / step - 1e-9);
  if (count < 1) return [];
  const switching = !isLinearClass(amplifier.class) && amplifier.class !== 'C';
  return [
    {
      key: 'power',
      effort: switching ? 'bench' : 'settings',
      count,
      at: (n) => {
        const pep = tidy((first - n) * step);
        const decibels = writeNumber(10 * Math.log10(amplifier.pep / pep), 2, true);
        return {
          title: `Run ${said(pep, 'power', 'W')} PEP instead of ${said(amplifier.pep, 'power', 'W')}`,
          edits: [{ path: 'amplifier.pep', value: pep }],
          sideEffects: [
            `The signal is ${decibels}\u202fdB weaker.`,
            ...(switching
              ? ['A switching stage does not turn down: its network must be wound anew for this power.']
              : []),
          ],
        };
      },
    },
  ];
}

/** Kinds of speech, densest first. */
const speechOrder = ['heavy', 'compressed', 'unprocessed', 'relaxed'] as const;

function lighterSpeech({ service, amplifier }: Design): readonly Offer[] {
  const now = (speechOrder as readonly string[]).indexOf(service.speechKind);
  if (now < 0 || !isLinearClass(amplifier.class)) return [];
  return listed(
    'speech',
    'settings',
    speechOrder.slice(now + 1).map((kind) => ({
      title: `Process speech less: ${optionWords('service.speechKind', kind)}`,
      edits: [{ path: 'service.speechKind', value: kind }],
      sideEffects: ['Less average power: weaker in noise, easier on the ear.'],
    })),
  );
}

function biasOffInReceive({ amplifier }: Design): readonly Offer[] {
  if (!amplifier.biasInReceive || !(amplifier.class === 'A' || amplifier.class === 'AB')) return [];
  return [
    single('biasReceive', 'bench', {
      title: 'Switch the bias off while listening',
      edits: [{ path: 'amplifier.biasInReceive', value: false }],
      sideEffects: ['The bias needs a moment to settle at the start of each over.'],
    }),
  ];
}

function keyedBias({ amplifier }: Design): readonly Offer[] {
  if (amplifier.biasKeyed || !(amplifier.class === 'A' || amplifier.class === 'AB')) return [];
  return [
    single('biasKeyed', 'bench', {
      title: 'Let the bias follow the CW key',
      edits: [{ path: 'amplifier.biasKeyed', value: true }],
      sideEffects: ['Switch it before the first and after the last of the envelope, or the keying clicks.'],
    }),
  ];
}

/** Duty, overs, power, speech, bias between: what costs no more than a habit or a setting. */
export const dutyRemedies: Offers = ({ design }) => [
  ...lowerDuty(design),
  ...shorterOvers(design),
  ...lowerPower(design),
  ...lighterSpeech(design),
  ...biasOffInReceive(design),
  ...keyedBias(design),
];
