import type { Design } from '../../../shared/design/schema.ts';
import type { PlatePart } from '../../../shared/plateLayout.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Steps of places, m: what a builder marks with a rule, and what a caliper tells apart. */
export const placeStep = 1e-3;
export const fineStep = 1e-4;

function onStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(9));
}

/** On the step and on the plate: a part larger than the plate stays in its middle. */
function kept(value: number, size: number, side: number, step: number): number {
  if (size >= side) return side / 2;
  return Math.min(Math.max(onStep(value, step), size / 2), side - size / 2);
}

/** The spot next to the one asked for at which the part lies on the plate. */
export function snapped({ sink }: Design, part: PlatePart, spot: Spot, step: number): Spot {
  return {
    x: kept(spot.x, part.source.width, sink.width, step),
    y: kept(spot.y, part.source.length, sink.length, step),
  };
}

/** The design with all parts at these spots, devices first. */
export function withSpots(design: Design, parts: readonly PlatePart[], spots: readonly Spot[]): Design {
  const places = spots.filter((_, i) => parts[i]?.key === 'device').map(({ x, y }) => ({ x, y }));
  const at = parts.findIndex((part) => part.key === 'converter');
  const converter = spots[at];
  const sink = converter
    ? { ...design.sink, converterPart: { ...design.sink.converterPart, x: converter.x, y: converter.y } }
    : design.sink;
  return { ...design, device: { ...design.device, places }, sink };
}

/** The design with one part moved; the others keep the places they have, written down from then on. */
export function withPartAt(design: Design, parts: readonly PlatePart[], index: number, spot: Spot): Design {
  const spots = parts.map(({ source }, i) => (i === index ? spot : { x: source.x, y: source.y }));
  return withSpots(design, parts, spots);
}

/** The design with no places stored: the sheet spreads the devices evenly and finds room for the converter. */
export function withoutSpots(design: Design): Design {
  return {
    ...design,
    device: { ...design.device, places: [] },
    sink: { ...design.sink, converterPart: { ...design.sink.converterPart, x: null, y: null } },
  };
}

/** Whether any place is stored. */
export function hasSpots({ device, sink }: Design): boolean {
  return device.places.length > 0 || sink.converterPart.x !== null;
}
