// What can be chosen on the 12 V side: key in the file -> words on the page. Apart from the schema, so that the engine can
// read them without the checker of files.

/** Sizes of the wire table: AWG by number, metric by nominal area of IEC 60228 class 5. */
export const wireSizes = {
  'AWG 20': 'AWG 20',
  'AWG 18': 'AWG 18',
  'AWG 16': 'AWG 16',
  'AWG 14': 'AWG 14',
  'AWG 12': 'AWG 12',
  'AWG 10': 'AWG 10',
  'AWG 8': 'AWG 8',
  'AWG 6': 'AWG 6',
  'AWG 4': 'AWG 4',
  'AWG 2': 'AWG 2',
  '0.5 mm2': '0.5 mm²',
  '0.75 mm2': '0.75 mm²',
  '1 mm2': '1 mm²',
  '1.5 mm2': '1.5 mm²',
  '2.5 mm2': '2.5 mm²',
  '4 mm2': '4 mm²',
  '6 mm2': '6 mm²',
  '10 mm2': '10 mm²',
  '16 mm2': '16 mm²',
  '25 mm2': '25 mm²',
  '35 mm2': '35 mm²',
} as const;

export type WireSize = keyof typeof wireSizes;

export const wireMaterials = {
  plain: 'copper, plain',
  tinned: 'copper, tinned',
  copperClad: 'aluminium, copper-clad',
} as const;

export type WireMaterial = keyof typeof wireMaterials;

export const connectorKinds = {
  barrel: 'coaxial barrel, 5.5 mm',
  screwTerminal: 'board screw terminal, 5 mm pitch',
  bullet2: '2 mm bullet',
  bullet35: 'moulded two-pole bullet, 3.5 mm gold',
  bullet45: '4.5 mm bullet',
  flat15: 'flat wiping contact, 15 A size',
  flat30: 'flat wiping contact, 30 A size',
  flat45: 'flat wiping contact, 45 A size',
  lighter: 'cigarette-lighter plug',
  ringLug: 'ring lug on a 6 mm stud',
} as const;

export const pathKinds = {
  fuse: 'fuse in its holder',
  connector: 'connector',
  switch: 'switch',
  relay: 'relay contact',
  joint: 'crimped or screwed joint',
  transistor: 'transistor against reversed leads',
  diode: 'series diode',
  wire: 'another piece of wire',
  other: 'something measured',
} as const;

export type PathKind = keyof typeof pathKinds;

export const fuseKinds = {
  bladeMedium: 'blade, medium',
  bladeHigh: 'blade, large (high current)',
  glassQuick: '5 × 20 mm quick (IEC)',
  glassLag: '5 × 20 mm time-lag (IEC)',
  cartridge: '6.3 × 32 mm cartridge (UL)',
} as const;

export type FuseKind = keyof typeof fuseKinds;
