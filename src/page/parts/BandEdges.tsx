import { createMemo, Show } from 'solid-js';
import type { Edges } from '../../../shared/band.ts';
import type { Dimension } from '../../../shared/design/fields.ts';
import { quantities } from '../../engine/catalogue/index.ts';
import { joinUnit, thinSpace, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';

/** Figures that get a band; their line keeps room for it, so that nothing moves when it comes. */
const banded = new Set([
  'junctionPeak',
  'junctionMargin',
  'junctionMean',
  'platePeak',
  'plateMean',
  'safeDuty',
  'holdTime',
  'deviceHeatOver',
  'deviceHeatCycle',
  'plateHeat',
  'sinkResistance',
  'ratingHeat',
  'ratingResistance',
  'sinkHeatCapacity',
  'padResistance',
]);

const minute = 60;
const hour = 3600;

/** A length of time in one unit, short enough to stand beside another. */
function writeTime(seconds: number): string {
  if (seconds < 1.5 * minute) return joinUnit(writeNumber(seconds, 2, true), 's');
  if (seconds < 1.5 * hour) return joinUnit(writeNumber(seconds / minute, 2, true), 'min');
  return joinUnit(writeNumber(seconds / hour, 2, true), 'h');
}

function writeEdge(value: number, dimension: Dimension): string {
  if (dimension === 'time') return writeTime(value);
  if (dimension === 'share') return writeQuantity(Math.floor(value * 100 + 1e-6) / 100, 'share', '%', 2);
  if (dimension === 'temperature') return writeQuantity(Math.round(value - 0.15) + 0.15, dimension);
  if (dimension === 'temperatureDifference')
    return writeQuantity(Math.round(value), dimension, 'K', Math.abs(value) < 10 ? 1 : 3);
  return writeQuantity(value, dimension);
}

/** "110 to 143 °C": the unit once where both edges have the same. */
export function writeEdges({ low, high }: Edges, dimension: Dimension): string {
  if (!Number.isFinite(low)) return 'no limit';
  const from = writeEdge(low, dimension);
  if (high === null) return `${from} and more`;
  const to = writeEdge(high, dimension);
  if (from === to) return from;
  const unit = to.slice(to.lastIndexOf(thinSpace));
  return `${from.endsWith(unit) ? from.slice(0, -unit.length) : from} to ${to}`;
}

const nothing = '\u00a0';

/**
 * The band under or beside a found figure, smaller; an empty line of the same height until it is there. While a newer
 * one is on its way the last one keeps its room, so that no row moves at an edit; the column hides it (`band-coming`).
 */
export function BandEdges(props: { name: string }) {
  const sheet = useSheet();
  const name = () => props.name.slice(props.name.indexOf('.') + 1);
  const text = createMemo<string>((last) => {
    const band = sheet.results.band();
    if (band === undefined) return last;
    const edges = band.edges[props.name];
    const entry = quantities[name()];
    return edges && entry ? writeEdges(edges, entry.dimension) : nothing;
  }, nothing);
  return (
    <Show when={banded.has(name())}>
      <span class="found-band">{text()}</span>
    </Show>
  );
}
