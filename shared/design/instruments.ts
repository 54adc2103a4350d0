/** What an entry was measured with: key in the file -> words on the page. */
export const instruments = {
  caliper: 'caliper, ±0.1 mm',
  ruler: 'ruler, ±0.5 mm',
  guess: 'a guess, ±20 %',
} as const;

export type Instrument = keyof typeof instruments;

/** 90 % half-widths of the instruments: metres, metres, share of the value. Own choice. */
export const caliperDoubt = 0.1e-3;
export const rulerDoubt = 0.5e-3;
export const guessDoubt = 0.2;
