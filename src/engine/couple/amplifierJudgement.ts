import type { Design } from '../../../shared/design/schema.ts';
import { type Note, note } from '../../../shared/outcome.ts';
import { type State, services } from '../../../shared/solution.ts';
import { designLoopGain } from '../amplifier/bias.ts';
import { joinUnit, writeNumber } from '../quantity/write.ts';
import type { BiasState } from './biasState.ts';

/** One thing the final is found to be, with how it stands. */
export interface AmplifierFinding {
  readonly key: string;
  readonly state: State;
  readonly sentence: string;
  /** It forbids transmitting at any duty. */
  readonly forbids: boolean;
}

type Values = Readonly<Record<string, number>>;

const volts = (value: number) => joinUnit(writeNumber(value, 3, true), 'V');
const watts = (value: number) => joinUnit(writeNumber(value, 3, true), 'W');
const plain = (value: number) => writeNumber(value, 2, true);

/** What ends a runaway, by where the bias looks for its temperature. */
const biasCures: Readonly<Record<Design['amplifier']['biasTracking'], string>> = {
  nothing: 'Let the bias follow the temperature of the devices, or add source or emitter resistors.',
  plate: 'Put the sensor on the case of a device, or add source or emitter resistors.',
  case: 'Add source or emitter resistors, lower the quiescent current, or lower the rail.',
};

function biasFindings(design: Design, bias: BiasState | null): readonly AmplifierFinding[] {
  if (!bias || bias.loopGain <= designLoopGain) return [];
  const cure = biasCures[design.amplifier.biasTracking];
  if (bias.loopGain >= 1) {
    return [
      {
        key: 'biasRunsAway',
        state: 'over',
        sentence: `The quiescent current runs away: it heats the device faster than the heat leaves (stability factor ${plain(bias.loopGain)}, 1 is the end). ${cure}`,
        forbids: true,
      },
    ];
  }
  return [
    {
      key: 'biasDrifts',
      state: 'close',
      sentence: `The stability factor of the bias is ${plain(bias.loopGain)}: a rise of the quiescent current is multiplied by ${plain(1 / (1 - bias.loopGain))}. Design for 0.5 or less. ${cure}`,
      forbids: false,
    },
  ];
}

function voltageFindings(design: Design, values: Values): readonly AmplifierFinding[] {
  const rating = design.device.maximumVoltage;
  const peak = values.drainPeakVoltage;
  const reflection = values.reflectionAtDevices;
  if (rating === null || peak === undefined || reflection === undefined || peak <= rating) return [];
  const matched = matchedPeak(design, values, peak, reflection);
  if (matched > rating) {
    return [
      {
        key: 'drainVoltage',
        state: 'over',
        sentence: `The voltage at a device reaches ${volts(matched)} into a matched load and its data sheet allows ${volts(rating)}.`,
        forbids: true,
      },
    ];
  }
  return [
    {
      key: 'drainVoltageMismatched',
      state: 'close',
      sentence: `With this SWR the voltage at a device can reach ${volts(peak)}; its data sheet allows ${volts(rating)}. Fold back earlier, or use devices for a higher voltage.`,
      forbids: false,
    },
  ];
}

/** The same peak without a mismatch, V. */
function matchedPeak(design: Design, values: Values, peak: number, reflection: number): number {
  if (design.amplifier.class === 'D') return peak;
  if (design.amplifier.class === 'E') return peak / (1 + reflection);
  const rail = values.railVoltagePep ?? 0;
  return rail + (peak - rail) / (1 + reflection);
}

function deratingFindings(values: Values): readonly AmplifierFinding[] {
  const worst = services
    .map((service) => ({
      allowed: values[`${service}.allowedHeat`] ?? Number.POSITIVE_INFINITY,
      heat: values[`${service}.heatPerDevice`] ?? 0,
    }))
    .sort((a, b) => b.heat - b.allowed - (a.heat - a.allowed))[0];
  if (!worst || worst.heat <= worst.allowed) return [];
  return [
    {
      key: 'derating',
      state: 'over',
      sentence: `A device takes ${watts(worst.heat)} and its data sheet allows ${watts(worst.allowed)} at the temperature its case reaches.`,
      forbids: false,
    },
  ];
}

/** Everything that is not fine about the final, the worst first. */
export function judgeAmplifier(
  design: Design,
  values: Values,
  bias: BiasState | null,
): readonly AmplifierFinding[] {
  const found = [
    ...biasFindings(design, bias),
    ...voltageFindings(design, values),
    ...deratingFindings(values),
  ];
  return found.sort((a, b) => Number(b.forbids) - Number(a.forbids));
}

/** The findings as remarks beside the figures. */
export function findingNotes(findings: readonly AmplifierFinding[]): readonly Note[] {
  return findings.map((finding) => note('limit', finding.key, finding.sentence));
}
