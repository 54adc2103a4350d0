import type { Design } from '../../../shared/design/schema.ts';
import type { State } from '../../../shared/solution.ts';
import { joinUnit, writeNumber, writeQuantity } from '../quantity/write.ts';
import { phasedPoint } from '../supply/boostPhases.ts';
import { moduleLimitNote, moduleLimits } from '../supply/converterModule.ts';
import { fuseType } from '../supply/fuse.ts';
import type { DesignedConverter } from './designedConverter.ts';
import type { PowerPoint } from './feed.ts';
import type { SupplyFinding } from './supplyJudgement.ts';
import type { Electrics } from './supplySide.ts';
import { highestVoltage } from './supplyVoltage.ts';

/** Room below the saturation of the inductor; own choice. */
const leastSaturationMargin = 0.2;
/** Distances of a junction of the converter from the highest of its data, as those of the final. */
const designDistance = 40;
const closeDistance = 25;
/** 125 °C: where MIL-PRF-19500/498E says most users want to limit the junction, K. */
const usualLimit = 398.15;

const amperes = (value: number) => joinUnit(writeNumber(value, 3, true), 'A');
const volts = (value: number) => joinUnit(writeNumber(value, 3, true), 'V');
const percent = (share: number) => joinUnit(writeNumber(share * 100, 2, true), '%');
const watts = (value: number) => joinUnit(writeNumber(value, 3, true), 'W');
const celsius = (kelvin: number) => writeQuantity(kelvin, 'temperature', '°C');

/** Junctions of the converter's switch and rectifier in the worst service, K. */
export interface ConverterJunctions {
  readonly switch: number;
  readonly rectifier: number;
}

/** Everything that is not fine about the converter. */
export function judgeConverter(
  design: Design,
  electrics: Electrics,
  point: PowerPoint,
  junctions: ConverterJunctions | null,
): readonly SupplyFinding[] {
  const { feed } = electrics;
  return [
    ...moduleFindings(electrics, point),
    ...(feed.designed ? partFindings(design, feed.designed) : []),
    ...junctionFindings(design, junctions),
    ...highInput(design),
    ...railFuse(design),
  ];
}

function moduleFindings({ feed }: Electrics, point: PowerPoint): SupplyFinding[] {
  if (!feed.module || feed.designed) return [];
  const { inputCurrentLimit, outputCurrentLimit, powerLimit } = feed.module;
  if (inputCurrentLimit === null && outputCurrentLimit === null && powerLimit === null) {
    return [
      {
        key: 'converterNotRated',
        state: 'close',
        sentence: `The converter is asked for ${watts(point.dcPower)} and no limit of it is entered: whether it bears that is not judged.`,
        forbids: false,
      },
    ];
  }
  return moduleLimits(feed.module, point.mainCurrent, point.dcPower)
    .filter((limit) => limit.loading > 1 + 1e-9)
    .map((limit) => {
      const said = moduleLimitNote(limit);
      return { key: said.key, state: 'over', sentence: said.sentence, forbids: true };
    });
}

function partFindings(design: Design, converter: DesignedConverter): SupplyFinding[] {
  const { parts, pep, outputCurrent, currentLimit, saturationCurrent } = converter;
  const { greatestDuty } = design.converter.parts;
  const rail = design.converter.outputVoltage;
  const found: SupplyFinding[] = [];
  const add = (key: string, state: State, sentence: string, forbids: boolean) =>
    found.push({ key, state, sentence, forbids });
  if (pep.phase.switchDuty > greatestDuty) {
    add(
      'dutyBeyondController',
      'over',
      `${volts(rail)} from ${volts(converter.inputVoltage)} asks for a duty cycle of ${percent(pep.phase.switchDuty)}; the controller ends at ${percent(greatestDuty)}.`,
      true,
    );
  }
  const peak = pep.phase.inductorPeak;
  if (peak > currentLimit * (1 + 1e-9)) {
    add(
      'currentLimitCutsPeaks',
      'over',
      `The inductor peaks at ${amperes(peak)} and the controller ends the pulse at ${amperes(currentLimit)}: the rail falls at the peak of the envelope.`,
      true,
    );
  }
  const stressed = Math.max(peak, currentLimit);
  if (peak > saturationCurrent) {
    add(
      'inductorSaturates',
      'over',
      `The inductor saturates at ${amperes(saturationCurrent)} and peaks at ${amperes(peak)}: its current runs away in every cycle.`,
      true,
    );
  } else if (stressed > saturationCurrent * (1 + 1e-9)) {
    add(
      'inductorSaturatesAtLimit',
      'close',
      `The inductor saturates at ${amperes(saturationCurrent)}, before the controller’s limit of ${amperes(currentLimit)} helps.`,
      false,
    );
  } else if (saturationCurrent < (1 + leastSaturationMargin) * peak * (1 - 1e-9)) {
    add(
      'inductorNearSaturation',
      'close',
      `The inductor peaks at ${amperes(peak)}, ${percent(saturationCurrent / peak - 1)} below its saturation; ${percent(leastSaturationMargin)} is asked.`,
      false,
    );
  }
  return [...found, ...lowestInput(design, parts, outputCurrent)];
}

/** The lowest input is what the parts are laid out for; own parts may not reach it. */
function lowestInput(
  design: Design,
  parts: DesignedConverter['parts'],
  outputCurrent: number,
): SupplyFinding[] {
  const { minimumInput, outputVoltage, parts: chosen } = design.converter;
  const low = phasedPoint(parts, minimumInput, outputVoltage, outputCurrent);
  if (low.ok && low.value.phase.switchDuty <= chosen.greatestDuty) return [];
  const why = low.ok
    ? `the duty cycle would be ${percent(low.value.phase.switchDuty)}`
    : 'the ratio is not reachable with these parts';
  return [
    {
      key: 'lowestInputNotReached',
      state: 'close',
      sentence: `At the lowest input of ${volts(minimumInput)} ${why}: the rail falls before the controller cuts out.`,
      forbids: false,
    },
  ];
}

function junctionFindings(design: Design, junctions: ConverterJunctions | null): SupplyFinding[] {
  if (!junctions) return [];
  const greatest = design.converter.parts.greatestJunction;
  const limit = Math.min(usualLimit, greatest - designDistance);
  const close = Math.max(limit, greatest - closeDistance);
  const judged = (key: string, name: string, temperature: number): SupplyFinding[] => {
    if (temperature <= limit) return [];
    const over = temperature > close;
    return [
      {
        key,
        state: over ? 'over' : 'close',
        sentence: `The ${name} of the converter reaches ${celsius(temperature)} in a long carrier; its limit is ${celsius(limit)}.`,
        forbids: over,
      },
    ];
  };
  return [
    ...judged('converterSwitchJunction', 'switch', junctions.switch),
    ...judged('converterRectifierJunction', 'rectifier', junctions.rectifier),
  ];
}

/** A step-up converter passes an input above its rail on to the final. */
function highInput(design: Design): SupplyFinding[] {
  const { converter } = design;
  const highest = highestVoltage(design);
  if (converter.kind === 'none' || highest < converter.outputVoltage) return [];
  return [
    {
      key: 'railBelowHighestInput',
      state: 'over',
      sentence: `The source can stand at ${volts(highest)}, the rail is set to ${volts(converter.outputVoltage)}: a step-up converter passes the higher voltage on.`,
      forbids: false,
    },
  ];
}

function railFuse(design: Design): SupplyFinding[] {
  const { railFuse: kind, outputVoltage, kind: converter } = design.converter;
  if (converter === 'none' || kind === 'none') return [];
  const made = fuseType(kind).voltage;
  if (made !== null && outputVoltage <= made) return [];
  return [
    {
      key: 'railFuseVoltage',
      state: made === null ? 'close' : 'over',
      sentence:
        made === null
          ? `The fuse in the rail carries an AC voltage only: ask its maker for a DC voltage of at least ${volts(outputVoltage)}.`
          : `The fuse in the rail is made for ${volts(made)} and the rail has ${volts(outputVoltage)}: it may not break the arc. Use one for 58 V or more.`,
      forbids: false,
    },
  ];
}
