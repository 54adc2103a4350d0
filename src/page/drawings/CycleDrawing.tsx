import { createMemo } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import type { Service, ServiceWords } from '../../../shared/solution.ts';
import { writeDuration } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';
import { Dimension } from './Dimension.tsx';

type Marks = ServiceWords['marks'];

const left = 10;
const span = 380;
const baseLine = 96;
const full = 56;

/** One cycle at the planned duty: the over with the envelope of the service, then listening. */
export function CycleDrawing() {
  const sheet = useSheet();
  const plan = () => sheet.store.view.service;
  const overWidth = () => span * plan().transmitShare;
  const marks = () => sheet.results.solution()?.words[sheet.service()].marks ?? null;
  const envelope = createMemo(() => envelopePath(sheet.store.view, sheet.service(), overWidth(), marks()));
  const over = () => plan().cycle * plan().transmitShare;
  return (
    <svg
      class="drawing"
      viewBox="0 0 400 176"
      role="img"
      aria-label={`One cycle of ${writeDuration(plan().cycle)}: ${writeDuration(over())} of ${sheet.nameOf(sheet.service())}, then listening.`}
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
function envelopePath(design: Design, service: Service, width: number, marks: Marks): string {
  if (width < 1) return '';
  if (marks) return keyed(marks, width);
  if (service === 'cw') return '';
  if (service === 'keyDown') return steady(design.service.keyDownMode, design.service.modulationDepth, width);
  return design.service.speechKind === 'twoTone' ? waves(width, (x) => Math.abs(Math.cos(x))) : speech(width);
}

/** A dot is never drawn thinner than this. */
const thinnestMark = 2.4;

/** Marks and spaces in proportion; as many as fit. */
function keyed(segments: NonNullable<Marks>, width: number): string {
  const whole = segments.reduce((sum, segment) => sum + segment.duration, 0);
  const shortest = Math.min(...segments.map((segment) => segment.duration));
  // One whole pattern over the width for text, four slots for timed modes.
  const repeats = segments.length > 2 ? 1 : 4;
  const scale = Math.max(width / (repeats * whole), segments.length > 2 ? thinnestMark / shortest : 0);
  let x = left;
  let path = '';
  for (let index = 0; x < left + width - 0.01; index++) {
    const segment = segments[index % segments.length]!;
    const length = segment.duration * scale;
    const shown = Math.min(length, left + width - x);
    if (segment.on) path += `M${x.toFixed(1)} ${baseLine}v${-full}h${shown.toFixed(1)}v${full}z`;
    x += length;
  }
  return path;
}

type Mode = Design['service']['keyDownMode'];

/** Every third symbol of the drawn text does not turn the phase. */
const drawnReversals = 2;

function steady(mode: Mode, depth: number, width: number): string {
  if (mode === 'am') return waves(width, (x) => 0.5 * (1 + depth * Math.cos(2 * x)));
  if (mode === 'phaseShiftIdle') return waves(width, (x) => Math.abs(Math.cos(x)));
  if (mode === 'phaseShift') {
    return waves(width, (x) =>
      Math.floor(x / Math.PI + 0.5) % drawnReversals === 0 ? 1 : Math.abs(Math.cos(x)),
    );
  }
  return `M${left} ${baseLine}v${-full}h${width}v${full}z`;
}

/** An envelope that repeats every 24 units of the drawing. */
function waves(width: number, at: (phase: number) => number): string {
  const steps = Math.max(8, Math.round(width));
  const points = Array.from({ length: steps + 1 }, (_, index) => {
    const x = (index * width) / steps;
    return `L${(left + x).toFixed(1)} ${(baseLine - full * at((Math.PI * x) / 24)).toFixed(1)}`;
  });
  return `M${left} ${baseLine}${points.join('')}L${left + width} ${baseLine}z`;
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
