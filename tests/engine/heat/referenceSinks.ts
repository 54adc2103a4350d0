import type { FinGeometry } from '../../../src/engine/heat/finArray.ts';
import type { SinkDescription } from '../../../src/engine/heat/sink.ts';

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

/** A black extrusion of a hand's size, for tests of anything that needs a sink. */
export const blackSink: SinkDescription = {
  shape: 'fins',
  width: 0.1,
  length: 0.1,
  baseThickness: 0.005,
  finCount: 10,
  finHeight: 0.025,
  finThickness: 0.002,
  alloy: 'extruded',
  finish: 'anodised',
  emissivity: 0.8,
  backExposed: false,
  mass: null,
};

/** A reference sink of extruded metal, described as a builder does. */
export function descriptionOf(g: CaseGeometry): SinkDescription {
  return {
    shape: 'fins',
    width: g.W,
    length: g.L,
    baseThickness: g.tb,
    finCount: g.N,
    finHeight: g.H,
    finThickness: g.t,
    alloy: 'extruded',
    finish: 'own',
    emissivity: g.eps,
    backExposed: g.back ?? false,
    mass: null,
  };
}
