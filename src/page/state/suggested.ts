/** Fields that may be left empty for the sheet to suggest, and the figure of the solution that stands in then. */
const suggestions: Readonly<Record<string, string>> = {
  'wiring.fuseRating': 'fuseRating',
  'converter.frequency': 'switchingFrequency',
  'converter.inputCapacitance': 'inputCapacitance',
  'converter.outputCapacitance': 'outputCapacitance',
  'converter.parts.inductance': 'inductance',
  'converter.parts.inductorResistance': 'inductorResistance',
  'converter.parts.saturationCurrent': 'saturationCurrent',
  'converter.parts.currentLimit': 'currentLimit',
  'converter.parts.switchResistance': 'switchResistanceCold',
  'converter.parts.outputCapacitorResistance': 'outputCapacitorResistance',
};

/** Key of the value the sheet takes when the field at this path is empty; undefined where it suggests nothing. */
export function suggestionKey(path: string): string | undefined {
  return suggestions[path];
}
