import type { FinGeometry } from '../../../src/engine/heat/finArray.ts';

/** A reference sink as its file has it, m and W/(m K). */
export interface CaseGeometry {
  W: number;
  L: number;
  N: number;
  t: number;
  H: number;
  tb: number;
  k: number;
  eps: number;
  back?: boolean;
}

export function geometryOf(g: CaseGeometry): FinGeometry {
  return {
    width: g.W,
    length: g.L,
    baseThickness: g.tb,
    finCount: g.N,
    finHeight: g.H,
    finThickness: g.t,
    conductivity: g.k,
    emissivity: g.eps,
    backExposed: g.back ?? false,
  };
}
