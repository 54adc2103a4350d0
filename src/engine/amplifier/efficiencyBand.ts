import bands from '../../../reference-data/efficiency-bands.json' with { type: 'json' };

export type AmplifierClass = keyof typeof bands.classes;

export interface EfficiencyBand {
  /** Limit of the class without any loss (class C at about 100 degrees, class F with a third harmonic). */
  readonly ideal: number;
  /** Low and high end of what HF amplifiers of the class reach. */
  readonly low: number;
  readonly high: number;
  /** Value to begin with before anything is measured. */
  readonly start: number;
  /** 90 % half-width of a guess. */
  readonly halfWidth: number;
}

/** Drain efficiency at full output that HF amplifiers of a class reach, shares of 1; judgement, see the table. */
export function efficiencyBand(amplifierClass: AmplifierClass): EfficiencyBand {
  return bands.classes[amplifierClass];
}
