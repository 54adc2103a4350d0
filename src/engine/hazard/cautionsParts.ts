import type { CautionBuilder } from './cautionFigures.ts';
import { kilograms } from './cautionWords.ts';

/** From this mass a dropped sink is spoken of, and from this it is a caution, kg. Own choice. */
const heavyFrom = 1;
const cautionFrom = 4;

/** Joints that are greased by their nature. */
const greased: readonly string[] = ['grease', 'mica', 'alumina', 'aluminiumNitride', 'beryllia'];

const pieces = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;

/** Whether package or pad may hold beryllia. */
export function mayContainBeryllia(body: string, pad: string): boolean {
  return body === 'flangeCeramic' || body === 'stud' || pad === 'beryllia';
}

export const beryllia: CautionBuilder = ({ package: body, pad, deviceCount }) => {
  if (!mayContainBeryllia(body, pad)) return null;
  const isPad = pad === 'beryllia';
  return {
    key: 'beryllia',
    severity: 'warning',
    title: isPad ? 'Beryllia under the devices' : 'This package may contain beryllia',
    figure: pieces(deviceCount, isPad ? 'pad' : 'package'),
    sentence: isPad
      ? 'The pads are beryllia. Whole they do no more than conduct heat; their dust causes lung disease.'
      : 'The white ceramic under such a transistor is often beryllia; it cannot be told by eye. Its dust causes lung disease.',
    action:
      'Do not open, file, grind, drill or break it. Mount it flat, torque evenly, do not burn it or put it in the bin.',
    source: 'beryllia',
  };
};

export const grease: CautionBuilder = ({ pad, deviceCount }) => {
  if (!greased.includes(pad)) return null;
  return {
    key: 'grease',
    severity: 'note',
    title: 'Thermal grease',
    figure: pieces(deviceCount, 'joint'),
    sentence: 'Grit in the grease cracks ceramic and lifts the device; some kinds with zinc harm water life.',
    action: 'Wipe both faces clean, keep it out of eyes and food, wash your hands, no grease down the drain.',
    source: 'workshop',
  };
};

export const fan: CautionBuilder = ({ fan: fitted }) => {
  if (!fitted) return null;
  return {
    key: 'fan',
    severity: 'note',
    title: 'Fan',
    figure: 'starts by itself',
    sentence: 'A fan under a thermostat starts again by itself, with the transmitter off as well.',
    action: 'Finger guard on both faces; unplug before you reach in.',
    source: 'workshop',
  };
};

export const sharpFins: CautionBuilder = ({ finned }) => {
  if (!finned) return null;
  return {
    key: 'sharpFins',
    severity: 'note',
    title: 'Sharp fins',
    figure: 'sawn edges',
    sentence: 'Sawn and broken fins cut; chips fly when a salvaged sink is drilled.',
    action: 'Deburr edges and corners; gloves to carry it, eye protection to drill it.',
    source: 'workshop',
  };
};

export const heavySink: CautionBuilder = ({ sinkMass }) => {
  if (sinkMass === null || sinkMass < heavyFrom) return null;
  return {
    key: 'heavySink',
    severity: sinkMass >= cautionFrom ? 'caution' : 'note',
    title: 'Heavy sink',
    figure: kilograms(sinkMass),
    sentence: `The sink weighs ${kilograms(sinkMass)}: dropped it hurts a foot, and it tears a thin panel in transport.`,
    action: 'Carry it by the plate, not by the devices; screw it to something that bears it.',
    source: 'workshop',
  };
};
