import { type EnvelopeTable, envelopeTable, panelNodes } from './envelopeTable.ts';

const nodesPerPanel = 24;
const carrier = envelopeTable([[1, 1]]);

/** Unbroken carrier, also FM, FSK and one digital tone: the amplitude stays at PEP. */
export function carrierEnvelope(): EnvelopeTable {
  return carrier;
}

/**
 * Two equal tones in single sideband, also PSK31 when idle: r = |cos x|, x uniform. Mean 2/pi, mean square 1/2.
 *
 * @param breaks amplitudes at which the function to be averaged has a kink
 */
export function twoToneEnvelope(breaks: readonly number[] = []): EnvelopeTable {
  const kinks = breaks.filter((r) => r > 0 && r < 1).map((r) => Math.acos(r));
  return envelopeTable(panelNodes(() => 2 / Math.PI, 0, Math.PI / 2, kinks, nodesPerPanel, Math.cos));
}

/**
 * Amplitude modulation by one tone, carrier at half the amplitude of PEP: r = (1 + m cos x)/2, x uniform.
 * Mean 1/2, mean square (1 + m^2/2)/4.
 *
 * @param depth modulation depth m, 0 to 1; values outside are taken as the nearest end
 * @param breaks amplitudes at which the function to be averaged has a kink
 */
export function amplitudeModulationEnvelope(depth: number, breaks: readonly number[] = []): EnvelopeTable {
  const m = Math.min(1, Math.max(0, depth));
  if (m === 0) return envelopeTable([[0.5, 1]]);
  const kinks = breaks.map((r) => (2 * r - 1) / m).filter((x) => x > -1 && x < 1);
  const amplitudeOf = (x: number) => 0.5 * (1 + m * Math.cos(x));
  return envelopeTable(
    panelNodes(() => 1 / Math.PI, 0, Math.PI, kinks.map(Math.acos), nodesPerPanel, amplitudeOf),
  );
}

/**
 * PSK31: a phase reversal passes through zero as two tones do, a symbol without one is a carrier.
 * Mean square 1 - share/2.
 *
 * @param reversalShare share of the symbols with a reversal, 0 to 1 (1 when idle)
 */
export function phaseShiftEnvelope(reversalShare: number, breaks: readonly number[] = []): EnvelopeTable {
  const share = Math.min(1, Math.max(0, reversalShare));
  const reversals = twoToneEnvelope(breaks);
  const nodes: [number, number][] = [[1, 1 - share]];
  reversals.amplitude.forEach((r, i) => {
    nodes.push([r, share * reversals.weight[i]!]);
  });
  return envelopeTable(nodes);
}
