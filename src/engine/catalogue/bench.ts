import type { QuantityEntry } from './types.ts';

/** What bench runs with the real sink correct. */
export const benchQuantities: readonly QuantityEntry[] = [
  {
    key: 'benchRunsCounted',
    symbol: 'n_b',
    label: 'Bench runs that correct the sink',
    dimension: 'count',
    station: 'sink',
    method: 'Runs whose fit is sound and plausible; the station of the runs says why others do not count.',
  },
  {
    key: 'filmFactor',
    symbol: 'f_h',
    label: 'Film coefficients over their estimate',
    dimension: 'number',
    station: 'sink',
    method:
      'Mean of the estimate (1) and of each run that counts, in the logarithm, weighed by 1/σ². Each run is fitted by the model of the sink it was logged on; one of another shape, position or fan than the present sink carries σ = 0.15 more, one whose gap was twice as wide or half as wide too, less for less (own choice). All film coefficients of the sink carry it. Without a run it is 1.',
    source: 'benchFit',
  },
  {
    key: 'filmDoubt',
    symbol: 'u_h',
    label: 'Film coefficients known to, 9 of 10',
    dimension: 'share',
    station: 'sink',
    method:
      'e^(1.645 σ) - 1, σ that of the logarithm: of the correlations at a rise of 50 K before a run, of estimate and runs together after, 3 % at least.',
    source: 'filmUncertainty',
  },
  {
    key: 'sinkCapacityEstimate',
    symbol: 'C_0',
    label: 'Heat capacity of the sink by drawing or scale',
    dimension: 'heatCapacity',
    station: 'sink',
    method: 'Mass times specific heat of the metal, before any run.',
    source: 'metals',
  },
  {
    key: 'capacityFactor',
    symbol: 'f_C',
    label: 'Heat capacity over that estimate',
    dimension: 'number',
    station: 'sink',
    formula: 'sinkHeatCapacity / sinkCapacityEstimate',
    source: 'benchFit',
  },
  {
    key: 'capacityDoubt',
    symbol: 'u_C',
    label: 'Heat capacity known to, 9 of 10',
    dimension: 'share',
    station: 'sink',
    method:
      'e^(1.645 σ) - 1, σ that of the logarithm: 3 % for a weighed sink, 10 % for a drawn one, from the runs where they show it, 2 % at least.',
    source: 'benchFit',
  },
];
