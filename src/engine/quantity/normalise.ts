/** Longest text a quantity field accepts; longer is a pasted mistake. */
export const longestText = 100;

const vulgarFractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Signs that keyboards, data sheets and word processors write in more than one way -> the one the scanner knows. */
const oneSpelling: readonly (readonly [RegExp, string])[] = [
  [/[\u00a0\u2000-\u200a\u202f\u205f\u3000\t\r\n]+/g, ' '],
  [/[\u200b-\u200f\u2060\ufeff]/g, ''],
  [/[\u2212\u2010-\u2015\ufe63\uff0d]/g, '-'],
  [/[\u00b5\u03bc]/g, 'u'],
  [/[\u2126\u03a9]/g, 'ohm'],
  [/\u2103/g, '°C'],
  [/\u2109/g, '°F'],
  [/[\u00ba\u02da]/g, '°'],
  [/° (?=[CcFf])/g, '°'],
  [/''|[\u201c\u201d\u201e\u2033\uff02]/g, '"'],
  [/[\u2018\u2019\u2032]/g, "'"],
  [/[\u2044\u2215\u00f7]/g, '/'],
  [/[\u00d7\u22c5\u00b7\u2217]/g, '*'],
  [/²/g, '2'],
  [/³/g, '3'],
  [/₂/g, '2'],
  [/⁻¹/g, '^-1'],
];

/**
 * Brings typed text to one spelling: micro, ohm, degree, minus, inch and fraction signs, spaces.
 * It changes no meaning; what cannot be read afterwards is the scanner's to say.
 */
export function normalise(text: string): string {
  let plain = text;
  for (const [sign, fraction] of Object.entries(vulgarFractions)) {
    plain = plain.replaceAll(sign, ` ${fraction}`);
  }
  for (const [pattern, replacement] of oneSpelling) plain = plain.replace(pattern, replacement);
  return plain.replace(/ {2,}/g, ' ').trim();
}
