import { createMemo } from 'solid-js';
import type { Service } from '../../../shared/solution.ts';
import { writeDuration } from '../../engine/quantity/write.ts';
import { serviceNames, useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

const left = 10;
const span = 380;
const baseLine = 96;
const full = 56;

/** One cycle at the planned duty: the over with the envelope of the service, then listening. */
export function CycleDrawing() {
  const sheet = useSheet();
  const plan = () => sheet.store.view.service;
  const overWidth = () => span * plan().transmitShare;
  const envelope = createMemo(() => envelopePath(sheet.service(), overWidth()));
  const over = () => plan().cycle * plan().transmitShare;
  return (
    <svg
      class="drawing"
      viewBox="0 0 400 176"
      role="img"
      aria-label={`One cycle of ${writeDuration(plan().cycle)}: ${writeDuration(over())} of ${serviceNames[sheet.service()]}, then listening.`}
    >
      <path class={`signal service-fill-${sheet.service()}`} d={envelope()} />
      <path class="outline" d={`M${left} ${baseLine}H${left + span}`} />
      <path
        class="thin"
        d={`M${left} ${baseLine}V${baseLine - full - 14}M${left + overWidth()} ${baseLine}V${baseLine - full - 14}`}
      />
      <text x={left + overWidth() / 2} y={baseLine - full - 16} text-anchor="middle">
        {overWidth() > 40 ? writeDuration(over()) : ''}
      </text>
      <text
        class="caption"
        x={left + overWidth() + (span - overWidth()) / 2}
        y={baseLine - 10}
        text-anchor="middle"
      >
        {span - overWidth() > 70 ? `listening ${writeDuration(plan().cycle - over())}` : ''}
      </text>
      <Dimension
        path="service.transmitShare"
        from={[left, baseLine]}
        to={[left + overWidth(), baseLine]}
        off={24}
      />
      <Dimension path="service.cycle" from={[left, baseLine]} to={[left + span, baseLine]} off={50} />
      <text class="caption" x="0" y="172">
        The envelope is drawn without scale in time.
      </text>
    </svg>
  );
}

/** A picture of the envelope, the same every time. */
function envelopePath(service: Service, width: number): string {
  if (width < 1) return '';
  if (service === 'keyDown') return `M${left} ${baseLine}v${-full}h${width}v${full}z`;
  return service === 'cw' ? keyed(width) : speech(width);
}

/** Dots and dashes of PARIS in dot lengths: on, off, on, off. */
const paris = [1, 1, 3, 1, 3, 1, 1, 3, 1, 1, 3, 3, 1, 1, 3, 1, 1, 3, 1, 1, 1, 3, 1, 1, 1, 1, 1, 7];

function keyed(width: number): string {
  const dots = paris.reduce((sum, length) => sum + length, 0);
  const unit = Math.max(width / dots, 2.4);
  let x = left;
  let path = '';
  for (let index = 0; x < left + width; index++) {
    const length = paris[index % paris.length]! * unit;
    const shown = Math.min(length, left + width - x);
    if (index % 2 === 0) path += `M${x.toFixed(1)} ${baseLine}v${-full}h${shown.toFixed(1)}v${full}z`;
    x += length;
  }
  return path;
}

function speech(width: number): string {
  const steps = Math.max(4, Math.round(width / 3));
  const heights = Array.from({ length: steps }, (_, index) => {
    const syllable = Math.abs(Math.sin(index * 0.41) * Math.sin(index * 0.13 + 0.6));
    const grain = 0.72 + 0.28 * Math.sin(index * 2.7);
    return full * Math.min(1, 1.15 * syllable * grain);
  });
  const top = heights.map(
    (height, index) =>
      `L${(left + ((index + 0.5) * width) / steps).toFixed(1)} ${(baseLine - height).toFixed(1)}`,
  );
  return `M${left} ${baseLine}${top.join('')}L${left + width} ${baseLine}z`;
}
