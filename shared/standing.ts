/** Standing text: the short lines that are always on the page and in print, in this order. */
export const standingLines: readonly string[] = [
  'Fuse within a hand’s width of the source. Take off rings and watches before working on the supply.',
  'Power on: do not touch the antenna, feed line or matching parts.',
  'Distances and temperatures are estimates for planning, not a survey.',
];

/** Standing disclaimer. */
export const disclaimer =
  'These are planning estimates from the values you entered and from simple models. They do not replace the maker’s data, your own measurement or the rules of your country: the laws, electrical codes and licence conditions where you live decide, and where they ask for a competent or licensed person, use one. Build in steps, try each step at low power from a current-limited supply, and have somebody near who can switch it off.';
