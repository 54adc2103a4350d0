import type { Design } from '../../../shared/design/schema.ts';
import type { SwitchingNoise } from '../../../shared/supplyCurves.ts';
import { bandEdges } from '../hazard/amateurBands.ts';
import { joinUnit, writeNumber, writeQuantity } from '../quantity/write.ts';
import {
  bestClock,
  clearance,
  type FrequencyRange,
  harmonicsInRanges,
  placedHarmonics,
  sectionAttenuation,
  shownAttenuation,
  trapezoidHarmonic,
} from '../supply/switchingNoise.ts';
import type { Feed } from './feed.ts';

/** How far from the present frequency another one is looked for, either way. Own choice. */
const searchShare = 0.15;
/** Harmonics named one by one. */
const named = 6;

/** Harmonics of the converter on the chosen band; null without a frequency or a band in the region. */
export function switchingNoise(design: Design, feed: Feed): SwitchingNoise | null {
  const { converter, antenna } = design;
  const frequency = feed.designed?.parts.frequency ?? converter.frequency;
  const edges = bandEdges(antenna.band, converter.region);
  if (converter.kind === 'none' || frequency === null || !edges) return null;
  const range: FrequencyRange = { name: antenna.band, from: edges[0], to: edges[1] };
  const tolerance = converter.clockTolerance;
  const inside = harmonicsInRanges(frequency, tolerance, [range]);
  const placed = placedHarmonics(tolerance);
  const suggestion = inside.length > 0 ? suggest(frequency, tolerance, range, placed) : null;
  const first = inside[0];
  return {
    frequency,
    band: antenna.band,
    from: range.from,
    to: range.to,
    harmonics: inside.slice(0, named).map(({ harmonic, frequency: at }) => ({ harmonic, frequency: at })),
    count: inside.length,
    amplitude: first ? amplitudeOf(design, feed, frequency, first.harmonic) : null,
    attenuation: attenuationOf(design, feed, range.from),
    suggestion,
    sentence: words(inside.length, frequency, tolerance, range, placed, suggestion),
  };
}

/**
 * A frequency that keeps the band clear, where the clock is good enough to place the harmonic and the band narrow
 * enough to lie between two.
 */
function suggest(
  frequency: number,
  tolerance: number,
  range: FrequencyRange,
  placed: number | null,
): SwitchingNoise['suggestion'] {
  const from = frequency * (1 - searchShare);
  const to = frequency * (1 + searchShare);
  if (!isWorthPlacing(to, range, placed)) return null;
  const best = bestClock(from, to, tolerance, [range]);
  return best.clearance > 0 && best.clearance > clearance(frequency, tolerance, [range]) ? best : null;
}

function isWorthPlacing(highest: number, range: FrequencyRange, placed: number | null): boolean {
  if (range.to - range.from >= highest) return false;
  return placed === null || range.from / highest <= placed;
}

function amplitudeOf(design: Design, feed: Feed, frequency: number, harmonic: number): number | null {
  if (!feed.designed) return null;
  const { phase } = feed.designed.pep;
  const edge = (design.converter.parts.turnOnTime + design.converter.parts.turnOffTime) / 2;
  return trapezoidHarmonic(phase.switchVoltage, phase.switchDuty, edge, frequency, harmonic);
}

function attenuationOf({ converter }: Design, feed: Feed, frequency: number): number | null {
  const capacitance = feed.designed?.suggestion.parts.inputCapacitance ?? converter.inputCapacitance;
  if (!(converter.filterInductance > 0) || capacitance === null) return null;
  const found = sectionAttenuation(
    frequency,
    converter.filterInductance,
    capacitance,
    converter.inputCapacitorResistance,
  );
  return Math.min(found, shownAttenuation);
}

function words(
  count: number,
  frequency: number,
  tolerance: number,
  range: FrequencyRange,
  placed: number | null,
  suggestion: SwitchingNoise['suggestion'],
): string {
  if (count === 0) return `No harmonic of the converter falls on ${range.name}.`;
  const clock = joinUnit(`±${writeNumber(tolerance * 100, 2, true)}`, '%');
  if (range.to - range.from >= frequency) {
    return `${range.name} is wider than the switching frequency: whatever it is, a harmonic lies in the band. Filter and screen.`;
  }
  if (placed !== null && range.from / frequency > placed) {
    return `With ${clock} the clock places no more than ${placed} harmonics, and ${range.name} begins at the ${Math.ceil(range.from / frequency)}th: no choice of frequency keeps it clear. Filter and screen, or use a crystal clock.`;
  }
  if (suggestion) {
    return `At ${writeQuantity(suggestion.frequency, 'frequency', 'kHz', 5)} every harmonic stays ${writeQuantity(suggestion.clearance, 'frequency', 'kHz', 2)} off ${range.name}.`;
  }
  return `No frequency within ${joinUnit(String(searchShare * 100), '%')} keeps all harmonics off ${range.name}. Filter and screen.`;
}
