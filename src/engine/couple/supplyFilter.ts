import type { Design } from '../../../shared/design/schema.ts';
import { conductorBySize } from '../supply/conductor.ts';
import {
  type DampingBranch,
  dampingBranch,
  filterDamping,
  leastInputCapacitance,
  pairInductance,
} from '../supply/inputFilter.ts';
import { inrush } from '../supply/inrush.ts';
import type { SupplyPath } from '../supply/sourceOperatingPoint.ts';

/** Inductance of the supply line up to the input capacitors, H: the pair of wires, touching, and the filter choke. */
export function supplyInductance(design: Design): number {
  const { wiring, converter } = design;
  const conductor = conductorBySize(wiring.size, wiring.material);
  const wires = wiring.length * pairInductance(conductor.outsideDiameter, conductor.diameter);
  let other = 0;
  for (const piece of wiring.path) {
    if (piece.kind !== 'wire') continue;
    const own = conductorBySize(piece.size, wiring.material);
    other += piece.length * pairInductance(own.outsideDiameter, own.diameter);
  }
  return wires + other + converter.filterInductance;
}

/** Least input capacitance for a stable supply at an input voltage and power, F; null where no capacitor helps. */
export function leastCapacitance(
  design: Design,
  path: SupplyPath,
  voltage: number,
  power: number,
): number | null {
  const resistance = path.internalResistance + path.pathResistance;
  return leastInputCapacitance(supplyInductance(design), resistance, voltage, power);
}

export interface InputFilter {
  /** H */
  readonly inductance: number;
  /** Input resistance of the converter at PEP, the amount of a negative one, Ω. */
  readonly negativeResistance: number;
  /** F; null when no capacitor makes the supply stable. */
  readonly leastCapacitance: number | null;
  /** Greatest real part of the eigenvalues, 1/s: negative when stable; null when the capacitance is not known. */
  readonly damping: number | null;
  /** A capacitor with a resistor across the input capacitors that calms the filter; null when they are not known. */
  readonly branch: DampingBranch | null;
}

/** Capacitance of the damping branch over that of the input capacitors. Own choice. */
const branchRatio = 4;

/** How the input filter stands against the converter's negative input resistance. voltage, power: at the converter. */
export function inputFilter(
  design: Design,
  path: SupplyPath,
  voltage: number,
  power: number,
  capacitance: number | null,
): InputFilter {
  const inductance = supplyInductance(design);
  const resistance = path.internalResistance + path.pathResistance;
  const negativeResistance = (voltage * voltage) / power;
  const least = leastCapacitance(design, path, voltage, power);
  // Without inductance nothing can ring; without resistance nothing damps.
  const damping =
    capacitance === null || !(inductance > 0) || !(capacitance > 0)
      ? null
      : filterDamping(
          {
            inductance,
            resistance,
            capacitance,
            // The formula of the damping needs a series resistance below the negative one.
            capacitorResistance: Math.min(
              design.converter.inputCapacitorResistance,
              0.9 * negativeResistance,
            ),
          },
          voltage,
          power,
        );
  const branch = damping === null ? null : dampingBranch(inductance, capacitance!, branchRatio);
  return { inductance, negativeResistance, leastCapacitance: least, damping, branch };
}

/** Switching the supply on: source and path charge all capacitors behind them together. */
export function switchOn(design: Design, path: SupplyPath, capacitance: number) {
  const resistance = Math.max(path.internalResistance + path.pathResistance, leastLoopResistance);
  return inrush(path.openVoltage, resistance, capacitance, supplyInductance(design));
}

/** No loop has less, Ω: it bounds the inrush when the design says zero. Own choice. */
const leastLoopResistance = 1e-3;
