import type { Design } from '../../../shared/design/schema.ts';
import { type ConverterPartKey, converterFields, type PlatePart } from '../../../shared/plateLayout.ts';

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

type Sink = Design['sink'];

function withPart(sink: Sink, key: ConverterPartKey, x: number | null, y: number | null): Sink {
  const field = converterFields[key];
  return { ...sink, [field]: { ...sink[field], x, y } };
}

/** The design with all parts at these spots, devices first. */
export function withSpots(design: Design, parts: readonly PlatePart[], spots: readonly Spot[]): Design {
  const places: Spot[] = [];
  let { sink } = design;
  parts.forEach(({ key }, i) => {
    const { x, y } = spots[i]!;
    if (key === 'device') places.push({ x, y });
    else sink = withPart(sink, key, x, y);
  });
  return { ...design, device: { ...design.device, places }, sink };
}

/** The design with one part moved; the others keep the places they have, written down from then on. */
export function withPartAt(design: Design, parts: readonly PlatePart[], index: number, spot: Spot): Design {
  const spots = parts.map(({ source }, i) => (i === index ? spot : { x: source.x, y: source.y }));
  return withSpots(design, parts, spots);
}

/** The design with a part turned by a quarter: the sides of its face change places; all devices and their spreaders together. */
export function withPartTurned(design: Design, key: PlatePart['key']): Design {
  if (key !== 'device') {
    const field = converterFields[key];
    const { width, length } = design.sink[field];
    return {
      ...design,
      sink: { ...design.sink, [field]: { ...design.sink[field], width: length, length: width } },
    };
  }
  const { contactWidth, contactLength, spreaderWidth, spreaderLength } = design.device;
  return {
    ...design,
    device: {
      ...design.device,
      contactWidth: contactLength,
      contactLength: contactWidth,
      spreaderWidth: spreaderLength,
      spreaderLength: spreaderWidth,
    },
  };
}

const converterParts: readonly ConverterPartKey[] = ['converter', 'switch', 'rectifier'];

/** The design with no places stored: the sheet spreads the devices evenly and finds room for the converter. */
export function withoutSpots(design: Design): Design {
  const sink = converterParts.reduce((so, key) => withPart(so, key, null, null), design.sink);
  return { ...design, device: { ...design.device, places: [] }, sink };
}

/** Whether any place is stored. */
export function hasSpots({ device, sink }: Design): boolean {
  return device.places.length > 0 || converterParts.some((key) => sink[converterFields[key]].x !== null);
}
