/**
 * Time-stepping simulation of the switched circuit of a step-up converter, apart from the formulas of the engine: the
 * switch follows a clock, the diode its current, inductor and capacitor the classical fourth-order Runge-Kutta method.
 */
export interface SwitchedCircuit {
  readonly Vg: number;
  readonly L: number;
  readonly rL: number;
  readonly Ron: number;
  readonly VD: number;
  readonly rD: number;
  readonly C: number;
  readonly esr: number;
  /** Load resistor, Ω. */
  readonly R: number;
  readonly fs: number;
  readonly D: number;
}

export interface Simulated {
  readonly Vo: number;
  readonly IL: number;
  readonly Ipk: number;
  readonly Ival: number;
  readonly ILrms: number;
  readonly IswRms: number;
  readonly IdRms: number;
  readonly ICoRms: number;
  readonly dVo: number;
  /** Share of the period in which the diode conducts. */
  readonly D2: number;
}

/** Runs from a guessed start until the capacitor has settled, then measures one period. */
export function simulate(
  circuit: SwitchedCircuit,
  startCurrent: number,
  startVoltage: number,
  periods: number,
  steps = 400,
): Simulated {
  const { Vg, L, rL, Ron, VD, rD, C, esr, R, fs, D } = circuit;
  const period = 1 / fs;
  const divider = R / (R + esr);
  const output = (v: number, into: number) => divider * (v + esr * into);
  let i = startCurrent;
  let v = startVoltage;
  const slopes = (on: boolean, conducts: boolean, ii: number, vv: number): readonly [number, number] => {
    if (on) return [(Vg - (rL + Ron) * ii) / L, -output(vv, 0) / R / C];
    if (!conducts) return [0, -output(vv, 0) / R / C];
    const vo = output(vv, ii);
    return [(Vg - (rL + rD) * ii - VD - vo) / L, (ii - vo / R) / C];
  };
  const advance = (on: boolean, conducts: boolean, h: number) => {
    const a = slopes(on, conducts, i, v);
    const b = slopes(on, conducts, i + (h / 2) * a[0], v + (h / 2) * a[1]);
    const c = slopes(on, conducts, i + (h / 2) * b[0], v + (h / 2) * b[1]);
    const d = slopes(on, conducts, i + h * c[0], v + h * c[1]);
    i += (h / 6) * (a[0] + 2 * b[0] + 2 * c[0] + d[0]);
    v += (h / 6) * (a[1] + 2 * b[1] + 2 * c[1] + d[1]);
  };
  const sums = { t: 0, vo: 0, il: 0, il2: 0, sw2: 0, d2: 0, co2: 0, conducting: 0 };
  let peak = -Infinity;
  let valley = Infinity;
  let highest = -Infinity;
  let lowest = Infinity;
  const observe = (on: boolean, conducts: boolean, h: number, before: readonly [number, number]) => {
    // Trapezium over the step; the currents are all but straight within it.
    for (const [ii, vv] of [before, [i, v]] as const) {
      const into = !on && conducts ? ii : 0;
      const vo = output(vv, into);
      const capacitor = into - vo / R;
      sums.vo += (h / 2) * vo;
      sums.il += (h / 2) * ii;
      sums.il2 += (h / 2) * ii * ii;
      if (on) sums.sw2 += (h / 2) * ii * ii;
      sums.d2 += (h / 2) * into * into;
      sums.co2 += (h / 2) * capacitor * capacitor;
      highest = Math.max(highest, vo);
      lowest = Math.min(lowest, vo);
      peak = Math.max(peak, ii);
      valley = Math.min(valley, ii);
    }
    if (!on && conducts) sums.conducting += h;
    sums.t += h;
  };
  for (let n = 0; n <= periods; n++) {
    const measured = n === periods;
    for (const on of [true, false]) {
      const whole = (on ? D : 1 - D) * period;
      const count = Math.max(1, Math.round(steps * (on ? D : 1 - D)));
      let conducts = !on && i > 0;
      for (let step = 0; step < count; step++) {
        let left = whole / count;
        while (left > 0) {
          const before = [i, v] as const;
          const h = left;
          advance(on, conducts, h);
          if (conducts && i < 0) {
            // The diode stops inside the step: go back and step to the zero of the current.
            const share = before[0] / (before[0] - i);
            i = before[0];
            v = before[1];
            advance(on, true, h * share);
            i = 0;
            if (measured) observe(on, true, h * share, before);
            conducts = false;
            left -= h * share;
            continue;
          }
          if (measured) observe(on, conducts, h, before);
          left = 0;
        }
      }
    }
  }
  const rms = (sum: number) => Math.sqrt(sum / sums.t);
  return {
    Vo: sums.vo / sums.t,
    IL: sums.il / sums.t,
    Ipk: peak,
    Ival: valley,
    ILrms: rms(sums.il2),
    IswRms: rms(sums.sw2),
    IdRms: rms(sums.d2),
    ICoRms: rms(sums.co2),
    dVo: highest - lowest,
    D2: sums.conducting / sums.t,
  };
}
