import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type { PlateSource } from '../heat/plateSeries.ts';

/**
 * Where the devices sit on the plate: evenly in as few rows as the width allows, centred. x across the fins, y along
 * them, m from the lower left corner.
 *
 * Fails with `devicesDoNotFit` when their contact faces take more than the plate.
 */
export function devicePlaces(design: Design): Outcome<readonly PlateSource[]> {
  const { device, sink } = design;
  const columns = Math.min(device.count, Math.floor(sink.width / device.contactWidth + 1e-9));
  const rows = columns > 0 ? Math.ceil(device.count / columns) : 0;
  if (columns < 1 || rows * device.contactLength > sink.length * (1 + 1e-9)) return doNotFit(design);
  const places: PlateSource[] = [];
  for (let i = 0; i < device.count; i += 1) {
    const row = Math.floor(i / columns);
    const inRow = Math.min(columns, device.count - row * columns);
    places.push({
      x: (sink.width * ((i % columns) + 0.5)) / inRow,
      y: (sink.length * (row + 0.5)) / rows,
      width: device.contactWidth,
      length: device.contactLength,
    });
  }
  return success(places);
}

function doNotFit(design: Design): Outcome<never> {
  const { device, sink } = design;
  const millimetres = (length: number) => Number((length * 1000).toPrecision(3));
  return failure(
    'devicesDoNotFit',
    `${device.count} devices of ${millimetres(device.contactWidth)} × ${millimetres(device.contactLength)} mm do not fit on a plate of ${millimetres(sink.width)} × ${millimetres(sink.length)} mm.`,
    { count: device.count },
  );
}
