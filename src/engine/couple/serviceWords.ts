import type { Design } from '../../../shared/design/schema.ts';
import type { Service, ServiceWords } from '../../../shared/solution.ts';
import { keepLast } from '../numerics/keepLast.ts';
import { joinUnit, writeDuration, writeNumber } from '../quantity/write.ts';
import { keyingPattern } from '../signal/keying.ts';
import { signalOf, slotsOf, speechRatio } from './serviceSignal.ts';

const percent = (share: number) => joinUnit(writeNumber(share * 100, 2, true), '%');
const seconds = (value: number) => joinUnit(writeNumber(value, 4, true), 's');

type Mode = Design['service']['keyDownMode'];

/** What is said of a key-down mode without slots: its name on the curve and what it is. */
const steadyModes: Readonly<Record<Exclude<Mode, 'FT8' | 'FT4' | 'WSPR' | 'am'>, [string, string]>> = {
  carrier: ['key-down', 'an unbroken carrier at PEP for the whole over'],
  fm: ['FM', 'an unbroken carrier at PEP for the whole over, whatever is said'],
  rtty: ['RTTY', 'a carrier at PEP for the whole over that only shifts its frequency'],
  sstv: ['slow-scan TV', 'a carrier at PEP for the whole over that only shifts its frequency'],
  phaseShift: ['phase-shift', 'a carrier that dips to nothing at half of its symbols (text)'],
  phaseShiftIdle: ['phase-shift idle', 'a carrier that dips to nothing at each symbol, like two tones'],
};

type Words = Omit<ServiceWords, 'marks'>;

function speechWords({ service }: Design): Words {
  if (service.speechKind === 'twoTone') {
    return { name: 'two-tone', definition: 'two equal tones for the whole over, PEP at their common peaks' };
  }
  const pauses = service.speechActivity < 1 ? `, ${percent(service.speechActivity)} of the over spoken` : '';
  return {
    name: 'SSB',
    definition: `speech for the whole over with an average of ${percent(speechRatio(service))} of PEP${pauses}`,
  };
}

function keyedWords({ service, amplifier }: Design): Words {
  const { keyingText, keyingSpeed, keyingWeight } = service;
  const pattern = keyingPattern(keyingSpeed, { text: keyingText, weight: keyingWeight });
  const text = keyingText.trim().toUpperCase();
  const what = text === 'PARIS' ? 'PARIS' : `“${text}”`;
  const share = pattern.ok ? `, key down ${percent(pattern.value.keyedShare)} of it` : '';
  const bias = amplifier.class === 'A' || amplifier.class === 'AB';
  const held = bias ? (amplifier.biasKeyed ? ', bias keyed' : ', bias held between') : '';
  const speed = `${writeNumber(keyingSpeed, 2, true)} words a minute`;
  return { name: 'CW', definition: `${what} over and over at ${speed} for the whole over${share}${held}` };
}

function modeWords({ service }: Design): Words {
  const mode = service.keyDownMode;
  const slots = slotsOf(mode);
  if (slots) {
    return {
      name: mode,
      definition: `a carrier at PEP for ${seconds(slots.onTime)} of every ${seconds(slots.slot)}, slot after slot for the whole over`,
    };
  }
  if (mode === 'am') {
    const depth = service.modulationDepth;
    const tone = depth > 0 ? `modulated ${percent(depth)} by a steady tone` : 'not modulated';
    return {
      name: 'AM',
      definition: `a carrier of a quarter of PEP for the whole over, ${tone}`,
    };
  }
  const [name, definition] = steadyModes[mode as keyof typeof steadyModes];
  return { name, definition };
}

/** Name and definition of each service of a design, for legends, tables and print. */
export const serviceWords = keepLast(
  findWords,
  ({ service, amplifier }: Design) => [service, amplifier.class, amplifier.biasKeyed],
  1,
);

function findWords(design: Design): Readonly<Record<Service, ServiceWords>> {
  const marksOf = (service: Service) => {
    const signal = signalOf(design, service, []);
    return signal.ok ? signal.value.segments : null;
  };
  return {
    ssb: { ...speechWords(design), marks: null },
    cw: { ...keyedWords(design), marks: marksOf('cw') },
    keyDown: { ...modeWords(design), marks: marksOf('keyDown') },
  };
}

/** What the duty is, at the cycle of a design. */
export function dutyWords({ service }: Design): string {
  return `Duty is the share of a cycle of ${writeDuration(service.cycle)} spent transmitting; the over comes first, then listening.`;
}
