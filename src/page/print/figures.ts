/** What the build sheet shows of the figures, by catalogue key. */

/** One value for each service. */
export const serviceFigures = [
  'junctionPeak',
  'platePeak',
  'deviceHeatOver',
  'safeDuty',
  'holdTime',
  'runTime',
] as const;

/** The 12 V side: source, wire, fuse, converter. */
export const supplyFigures = [
  'inputCurrentPep',
  'fuseRating',
  'wireAmpacity',
  'pathDropPep',
  'terminalVoltagePep',
  'inputVoltagePep',
  'inputVoltageEmpty',
  'faultCurrent',
] as const;
