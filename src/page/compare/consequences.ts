import { type Service, type Solution, services, type Verdict } from '../../../shared/solution.ts';
import { writeDegreesUp, writeDuration, writeQuantity, writeShareDown } from '../../engine/quantity/write.ts';

/** A difference of temperature smaller than this is not told, K. */
const leastStep = 0.5;
/** Two figures closer than this part of their size count as the same. */
const leastPart = 0.005;

/** One line of what follows from the differences: what it is about, and what is so. */
export interface Consequence {
  readonly about: string;
  readonly words: string;
}

function differs(one: number, other: number): boolean {
  return Math.abs(one - other) > leastPart * Math.max(Math.abs(one), Math.abs(other));
}

function junctionWords(mine: Solution, theirs: Solution, service: Service): readonly string[] {
  const here = mine.values[`${service}.junctionPeak`];
  const there = theirs.values[`${service}.junctionPeak`];
  if (here === undefined || there === undefined || Math.abs(here - there) < leastStep) return [];
  const step = writeQuantity(Math.round(Math.abs(here - there) * 10) / 10, 'temperatureDifference', 'K', 2);
  return [`the junction is ${here > there ? 'hotter' : 'cooler'} by ${step}`];
}

const hold = (seconds: number | null) => (seconds === null ? 'without limit' : writeDuration(seconds));

/** States that are held against each other: those of the table of verdicts, at the edge of the band or nominal for both. */
export interface JudgedStates {
  readonly mine: readonly Verdict[];
  readonly theirs: readonly Verdict[];
}

/** "close instead of fine", as the table of verdicts has it. */
function stateWords({ mine, theirs }: JudgedStates, key: Verdict['key']): readonly string[] {
  const here = mine.find((verdict) => verdict.key === key)?.state;
  const there = theirs.find((verdict) => verdict.key === key)?.state;
  return here === undefined || there === undefined || here === there ? [] : [`${here} instead of ${there}`];
}

function serviceWords(
  mine: Solution,
  theirs: Solution,
  states: JudgedStates,
  service: Service,
): readonly string[] {
  const here = mine.services[service];
  const there = theirs.services[service];
  if (!here.ok && !there.ok) return [];
  if (!here.ok) return [`not to be had here: ${here.reason.sentence}`];
  if (!there.ok) return [`only here; there: ${there.reason.sentence}`];
  const words = [...junctionWords(mine, theirs, service)];
  const shares = [here.value.safeDuty, there.value.safeDuty].map(writeShareDown);
  if (shares[0] !== shares[1]) words.push(`safe duty ${shares[0]} instead of ${shares[1]}`);
  const holds = [hold(here.value.holdTime), hold(there.value.holdTime)];
  if (holds[0] !== holds[1]) words.push(`held from cold ${holds[0]} instead of ${holds[1]}`);
  return [...words, ...stateWords(states, service)];
}

/** "11.1 A instead of 9.2 A" for a quantity that differs, after what it is called. */
function insteadOf(
  mine: Solution,
  theirs: Solution,
  key: string,
  name: string,
  write: (value: number) => string,
): readonly string[] {
  const here = mine.values[key];
  const there = theirs.values[key];
  if (here === undefined || there === undefined || !differs(here, there)) return [];
  const texts = [write(here), write(there)];
  return texts[0] === texts[1] ? [] : [`${name} ${texts[0]} instead of ${texts[1]}`];
}

const amperes = (value: number) => writeQuantity(value, 'current', 'A');

function supplyWords(mine: Solution, theirs: Solution): readonly string[] {
  return [
    ...insteadOf(mine, theirs, 'inputCurrentPep', 'draws at the peak', amperes),
    ...insteadOf(mine, theirs, 'fuseRating', 'fuse', amperes),
    ...insteadOf(mine, theirs, 'pathDropPep', 'drop', (value) => writeQuantity(value, 'voltage', 'V', 2)),
  ];
}

function peopleWords(mine: Solution, theirs: Solution, writeDistance: (metres: number) => string) {
  return [
    ...insteadOf(mine, theirs, 'touchTemperature', 'metal up to', writeDegreesUp),
    ...insteadOf(mine, theirs, 'exposureDistance', 'keep from the antenna at least', writeDistance),
  ];
}

/** What follows for this design, held against the other, in words; empty where nothing that counts differs. */
export function consequences(
  mine: Solution,
  theirs: Solution,
  states: JudgedStates,
  writeDistance: (metres: number) => string,
): readonly Consequence[] {
  const lines = [
    ...services.map((service) => ({
      about: mine.words[service].name,
      words: serviceWords(mine, theirs, states, service),
    })),
    { about: '12 V input', words: [...supplyWords(mine, theirs), ...stateWords(states, 'supply')] },
    {
      about: 'People',
      words: [...peopleWords(mine, theirs, writeDistance), ...stateWords(states, 'people')],
    },
  ];
  return lines.flatMap(({ about, words }) =>
    words.length === 0 ? [] : [{ about, words: `${words.join('; ').replace(/\.$/, '')}.` }],
  );
}
