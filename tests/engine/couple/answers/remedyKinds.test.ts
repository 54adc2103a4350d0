import { describe, expect, it } from 'vitest';
import type { Remedy, VerdictKey } from '../../../../shared/answers.ts';
import { parseDesign } from '../../../../shared/design/file.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { part } from '../../../../shared/design/start.ts';
import { remedies } from '../../../../src/engine/couple/answers/remedies.ts';
import { solve } from '../../../../src/engine/index.ts';
import { change, exampleOf } from '../designs.ts';

/** The example that does not fit. */
const failing = exampleOf('data-final-100w');

type Edits = Parameters<typeof change>[1];
type Entries = Readonly<Record<string, unknown>>;

/** What a builder types into the file after reading the title of a remedy: numbers of the title, in order. */
type ByHand = (numbers: readonly number[], remedy: Remedy, design: Design) => Entries;

/** A thing the issue of remedies names; where it is offered; what is typed by hand. */
type Row = readonly [key: string, verdict: VerdictKey, edits: Edits, byHand: ByHand];

const mm = 1e-3;
const parts = failing.converter.parts;
const designed = (over: Partial<typeof parts>, more: Partial<Design['converter']> = {}): Edits => ({
  converter: { kind: 'designed', parts: { ...parts, ...over }, ...more },
});
const restless: Edits = {
  amplifier: {
    biasTracking: 'nothing',
    quiescentCurrent: 3,
    thresholdDrift: 0.006,
    transconductance: 4,
  },
};
const listening: Edits = {
  amplifier: { biasInReceive: true, quiescentCurrent: 1.2 },
  service: { transmitShare: 0.3 },
};
const fanned = (sink: Partial<Design['sink']>): Edits => ({ sink: { fan: 'along', ...sink } });
const fixed =
  (entries: Entries): ByHand =>
  () =>
    entries;

/** Minutes and seconds of an over and of its pause. */
function cycleOf({ title }: Remedy): number {
  const units: Readonly<Record<string, number>> = { h: 3600, min: 60, s: 1 };
  return [...title.matchAll(/([\d.]+)\s(h|min|s)\b/g)].reduce(
    (sum, [, count, unit]) => sum + Number(count) * units[unit!]!,
    0,
  );
}

const duties: readonly Row[] = [
  ['duty', 'keyDown', {}, ([share]) => ({ 'service.transmitShare': share! / 100 })],
  ['overs', 'keyDown', {}, (_, remedy) => ({ 'service.cycle': cycleOf(remedy) })],
  ['power', 'keyDown', {}, ([watts]) => ({ 'amplifier.pep': watts })],
  [
    'speech',
    'ssb',
    {},
    (_, { title }) => ({ 'service.speechKind': /relaxed/.test(title) ? 'relaxed' : 'unprocessed' }),
  ],
  ['biasReceive', 'keyDown', listening, fixed({ 'amplifier.biasInReceive': false })],
  ['biasKeyed', 'cw', { amplifier: { quiescentCurrent: 1 } }, fixed({ 'amplifier.biasKeyed': true })],
];

const biasAndRail: readonly Row[] = [
  [
    'bias',
    'ssb',
    { amplifier: { quiescentCurrent: 1 } },
    ([current], { title }) => ({ 'amplifier.quiescentCurrent': /mA/.test(title) ? current! * mm : current }),
  ],
  [
    'biasSensor',
    'keyDown',
    restless,
    (_, { title }) => ({ 'amplifier.biasTracking': /case/.test(title) ? 'case' : 'plate' }),
  ],
  ['biasResistor', 'keyDown', restless, ([ohms]) => ({ 'amplifier.biasResistance': ohms })],
  [
    'rail',
    'keyDown',
    { converter: { outputVoltage: 56 } },
    ([volts]) => ({ 'converter.outputVoltage': volts }),
  ],
  [
    'railUp',
    'supply',
    { converter: { outputVoltage: 40 } },
    ([volts]) => ({ 'converter.outputVoltage': volts }),
  ],
  [
    'transformer',
    'keyDown',
    { converter: { outputVoltage: 80 } },
    ([secondary, primary]) => ({ 'amplifier.turnsRatio': Number((secondary! / primary!).toPrecision(10)) }),
  ],
  ['match', 'keyDown', { amplifier: { swr: 2 } }, fixed({ 'amplifier.swr': 1 })],
];

const padWords: readonly (readonly [RegExp, string])[] = [
  [/mica/, 'mica'],
  [/polyimide/, 'polyimide'],
  [/alumin(a|ium oxide)/i, 'alumina'],
  [/nitride/, 'aluminiumNitride'],
];

const mounting: readonly Row[] = [
  [
    'pad',
    'keyDown',
    { device: { pad: 'siliconePad' } },
    (_, { title }) => ({ 'device.pad': padWords.find(([words]) => words.test(title))?.[1] }),
  ],
  ['grease', 'keyDown', { device: { pad: 'mica' } }, fixed({ 'device.pad': 'grease' })],
  ['greaseDry', 'keyDown', { device: { pad: 'bare' } }, fixed({ 'device.pad': 'grease' })],
  [
    'spreader',
    'keyDown',
    {},
    ([width, length, thickness]) => ({
      'device.spreader': true,
      'device.spreaderWidth': width! * mm,
      'device.spreaderLength': length! * mm,
      'device.spreaderThickness': thickness! * mm,
      'device.spreaderMetal': 'copper',
      'device.spreaderPad': 'grease',
    }),
  ],
  ['devices', 'keyDown', {}, ([count]) => ({ 'device.count': count, 'device.places': [] })],
];

const sink: readonly Row[] = [
  ['upright', 'keyDown', { sink: { position: 'finsDown' } }, fixed({ 'sink.position': 'upright' })],
  ['finish.painted', 'keyDown', {}, fixed({ 'sink.finish': 'painted' })],
  ['finish.anodised', 'keyDown', {}, fixed({ 'sink.finish': 'anodised' })],
  ['clearance', 'keyDown', {}, fixed({ 'sink.backExposed': true, 'sink.backShare': 0.7 })],
  ['outside', 'keyDown', { sink: { placement: 'inside' } }, fixed({ 'sink.placement': 'outside' })],
  [
    'vents',
    'keyDown',
    { sink: { placement: 'inside' } },
    ([area]) => ({ 'surroundings.caseVents': 'vented', 'surroundings.ventArea': area! * 1e-4 }),
  ],
  [
    'fan',
    'keyDown',
    {},
    ([, , flow, pressure]) => ({
      'sink.fan': 'along',
      'sink.fanFlow': flow! * 1e-3,
      'sink.fanPressure': pressure,
      'sink.fanMiddleFlow': null,
      'sink.fanMiddlePressure': null,
      'sink.fanVoltageShare': 1,
    }),
  ],
  [
    'fanVoltage',
    'keyDown',
    fanned({ fanVoltageShare: 0.4 }),
    ([share]) => ({ 'sink.fanVoltageShare': share! / 100 }),
  ],
  ['duct', 'keyDown', fanned({ fanPath: 'open', fanFlow: 0.005 }), fixed({ 'sink.fanPath': 'duct' })],
  ['longer', 'keyDown', {}, ([length]) => ({ 'sink.length': length! * mm })],
  ['taller', 'keyDown', {}, ([height]) => ({ 'sink.finHeight': height! * mm })],
  [
    'wider',
    'keyDown',
    {},
    // The title gives whole millimetres; the pitch of the fins gives the rest.
    ([, fins], __, design) => ({
      'sink.finCount': fins,
      'sink.width':
        Math.round(
          (design.sink.width +
            ((fins! - design.sink.finCount) * (design.sink.width - design.sink.finThickness)) /
              (design.sink.finCount - 1)) *
            1e4,
        ) / 1e4,
    }),
  ],
  [
    'converterOff.outside',
    'keyDown',
    { converter: { heatTo: 'amplifierSink' } },
    fixed({ 'converter.heatTo': 'outside' }),
  ],
  [
    'converterOff.caseAir',
    'keyDown',
    { converter: { heatTo: 'amplifierSink' } },
    fixed({ 'converter.heatTo': 'caseAir' }),
  ],
];

/** "A supply 2 times as large": every rating of it. */
const larger =
  (...keys: readonly string[]): ByHand =>
  ([factor], _, design) =>
    Object.fromEntries(
      keys.map((path) => {
        const [section, key] = path.split('.') as ['source' | 'converter', string];
        const value = (design[section] as unknown as Record<string, number | null>)[key]!;
        const times = key === 'internalResistance' ? 1 / factor! : factor!;
        return [path, value === null ? null : Number((value * times).toPrecision(10))];
      }),
    );

const supply: readonly Row[] = [
  [
    'wire',
    'supply',
    { wiring: { size: '1.5 mm2' } },
    (_, { title }) => ({ 'wiring.size': `${/Run ([\d.]+) mm²/.exec(title)![1]} mm2` }),
  ],
  ['run', 'supply', { wiring: { length: 6 } }, ([length]) => ({ 'wiring.length': length })],
  [
    'connector.0',
    'supply',
    { wiring: { path: [{ ...part('connector', 2), connector: 'lighter' }] } },
    (_, { edits }) => ({
      'wiring.path.0.connector': edits[0]!.value,
      'wiring.path.0.aged': false,
      'wiring.path.0.resistance': null,
      'wiring.path.0.rating': null,
    }),
  ],
  [
    'aged.0',
    'supply',
    { wiring: { path: [{ ...part('connector', 8), aged: true }] } },
    fixed({ 'wiring.path.0.aged': false }),
  ],
  [
    'diode.0',
    'supply',
    { wiring: { path: [{ ...part('diode'), drop: 0.8 }] } },
    fixed({ 'wiring.path.0.kind': 'transistor', 'wiring.path.0.resistance': null }),
  ],
  [
    'apart',
    'supply',
    { wiring: { together: 24, size: '1.5 mm2', length: 0.3 } },
    fixed({ 'wiring.together': 2 }),
  ],
  [
    'copper',
    'supply',
    { wiring: { material: 'copperClad', length: 2.2 } },
    fixed({ 'wiring.material': 'plain' }),
  ],
  [
    'fusePlace',
    'supply',
    { wiring: { fuseDistance: 0.5 } },
    ([distance]) => ({ 'wiring.fuseDistance': distance! * mm }),
  ],
  ['fuseRating', 'supply', { wiring: { fuseRating: 10 } }, fixed({ 'wiring.fuseRating': null })],
  [
    'fuse.bladeMedium',
    'supply',
    { wiring: { fuse: 'glassQuick' } },
    fixed({ 'wiring.fuse': 'bladeMedium', 'wiring.fuseRating': null }),
  ],
  [
    'insulation',
    'supply',
    { wiring: { insulationLimit: 343.15, size: '1.5 mm2', length: 0.4 } },
    fixed({ 'wiring.insulationLimit': 378.15 }),
  ],
  [
    'source',
    'supply',
    { source: { continuousCurrent: 15, peakCurrent: 16 } },
    larger('source.internalResistance', 'source.continuousCurrent', 'source.peakCurrent'),
  ],
  [
    'module',
    'supply',
    { converter: { inputCurrentLimit: 15 } },
    larger('converter.inputCurrentLimit', 'converter.outputCurrentLimit', 'converter.powerLimit'),
  ],
  ['moduleAir', 'supply', { converter: { powerLimit: 300 } }, fixed({ 'converter.powerShare': 1 })],
  [
    'inputCapacitor',
    'supply',
    { converter: { inputCapacitance: 1e-5 }, wiring: { length: 1 } },
    ([microfarads]) => ({ 'converter.inputCapacitance': microfarads! * 1e-6 }),
  ],
  ['phases', 'supply', designed({}), ([phases]) => ({ 'converter.parts.phases': phases })],
  [
    'synchronous',
    'supply',
    designed({ switchResistance: 0.006 }),
    fixed({ 'converter.parts.rectifier': 'synchronous', 'converter.parts.rectifierResistance': 0.006 }),
  ],
];

const people: readonly Row[] = [
  ['guard', 'people', {}, fixed({ 'limits.touchedBy': 'nobody' })],
  [
    'distance',
    'people',
    { antenna: { nearestPerson: 1 } },
    ([distance]) => ({ 'antenna.nearestPerson': distance }),
  ],
];

/** The numbers of a title: "12 %", "5 : 2", "1000 µF". */
const numbersIn = (title: string) => [...title.matchAll(/\d+(?:\.\d+)?/g)].map(([text]) => Number(text));

/** The file of a design with places typed over by hand, read as any file is. */
function typedInto(design: Design, entries: Entries): Design {
  const raw = JSON.parse(JSON.stringify(design)) as Record<string, unknown>;
  for (const [path, value] of Object.entries(entries)) {
    const steps = path.split('.');
    const last = steps.pop()!;
    const place = steps.reduce((node, step) => node[step] as Record<string, unknown>, raw);
    expect(Object.keys(place), path).toContain(last);
    place[last] = value;
  }
  const parsed = parseDesign(JSON.stringify(raw));
  if (!parsed.ok) throw new Error(parsed.faults.map((fault) => `${fault.path}: ${fault.message}`).join('; '));
  return parsed.design;
}

function offered(design: Design, verdict: VerdictKey, key: string): Remedy {
  const list = remedies(design, { verdict });
  const found = list.remedies.find((remedy) => remedy.key === key);
  if (!found) throw new Error(`${key} is not among ${list.remedies.map((one) => one.key).join(', ')}`);
  return found;
}

/** What the remedy promises for every verdict, against a design typed by hand and solved afresh. */
function keepsItsWord(remedy: Remedy, before: Design, after: Design, verdict: VerdictKey): void {
  const solution = solve(after);
  const was = solve(before);
  expect(remedy.effects.map(({ key }) => key)).toEqual(solution.verdicts.map(({ key }) => key));
  for (const effect of remedy.effects) {
    const found = solution.verdicts.find(({ key }) => key === effect.key)!;
    expect(effect.after, effect.key).toBe(found.state);
    expect(effect.headline, effect.key).toBe(found.headline);
    expect(effect.before, effect.key).toBe(was.verdicts.find(({ key }) => key === effect.key)!.state);
  }
  const own = remedy.effects.find(({ key }) => key === verdict)!;
  expect(remedy.enough).toBe(own.after === 'fine');
  expect(own.change).toBe('better');
  const known = new Set(was.cautions.map(({ key }) => key));
  const fresh = solution.cautions.filter(({ key }) => !known.has(key)).map(({ key }) => key);
  expect(remedy.newCautions.map(({ key }) => key)).toEqual(expect.arrayContaining(fresh));
}

describe.each([
  ['duty, overs, power, speech', duties],
  ['bias, rail, match', biasAndRail],
  ['mounting', mounting],
  ['sink and air', sink],
  ['12 V side and converter', supply],
  ['people', people],
])('%s', (_what, rows) => {
  it.each(rows)('%s does for %s what a file edited by hand does', (key, verdict, edits, byHand) => {
    const design = change(failing, edits);
    const remedy = offered(design, verdict, key);
    const typed = typedInto(design, byHand(numbersIn(remedy.title), remedy, design));
    keepsItsWord(remedy, design, typed, verdict);
  });
});

describe('moving the parts on the plate', () => {
  const heaped = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => ({
    x: 0.02 + 0.025 * (k % 4),
    y: 0.02 + 0.025 * Math.floor(k / 4),
  }));

  it.each([
    ['two devices in a corner', 2, heaped.slice(0, 2)],
    ['eight devices heaped on one side', 8, heaped],
    ['sixteen devices in even rows', 16, []],
  ])('%s: cooler at the places that are named, all on the plate', (_name, count, places) => {
    const design = change(failing, {
      device: { count, places },
      sink: { baseThickness: 0.003 },
      service: { transmitShare: 1 },
    });
    const remedy = offered(design, 'keyDown', 'places');
    const named = remedy.edits.find(({ path }) => path === 'device.places')!
      .value as Design['device']['places'];
    expect(named).toHaveLength(count);
    for (const { x, y } of named) {
      expect(x).toBeGreaterThan(design.device.contactWidth / 2);
      expect(x).toBeLessThan(design.sink.width - design.device.contactWidth / 2);
      expect(y).toBeGreaterThan(design.device.contactLength / 2);
      expect(y).toBeLessThan(design.sink.length - design.device.contactLength / 2);
    }
    const typed = typedInto(design, { 'device.places': named });
    keepsItsWord(remedy, design, typed, 'keyDown');
    const peak = (one: Design) => solve(one).values['keyDown.junctionPeak']!;
    expect(peak(typed)).toBeLessThan(peak(design) - 0.5);
  });

  it('names a place for the converter that stands on the plate too', () => {
    const design = change(failing, {
      device: { count: 8, places: heaped },
      converter: { heatTo: 'amplifierSink' },
      sink: { baseThickness: 0.003 },
    });
    const remedy = offered(design, 'keyDown', 'places');
    const entries = Object.fromEntries(remedy.edits.map(({ path, value }) => [path, value]));
    expect(Object.keys(entries)).toEqual(['device.places', 'sink.converterPart.x', 'sink.converterPart.y']);
    keepsItsWord(remedy, design, typedInto(design, entries), 'keyDown');
  });
});
