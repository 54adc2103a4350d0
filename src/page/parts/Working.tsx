import { createMemo, For, Show } from 'solid-js';
import type { Service } from '../../../shared/solution.ts';
import { takenFrom, validity } from '../../engine/catalogue/grounds.ts';
import { type QuantityEntry, quantities } from '../../engine/catalogue/index.ts';
import { sources } from '../../engine/catalogue/sources.ts';
import { writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { givenGroups } from '../state/given.ts';
import { useSheet } from '../state/sheet.ts';
import { parseFormula } from './formula.ts';
import { equationMath, expressionMath, figureMath, symbolMath, unitMath } from './mathml.ts';

const statusWords: Readonly<Record<string, string>> = {
  primary: 'read in the original',
  secondary: 'read in a work that quotes it',
  'from memory': 'from memory, not looked up',
  'common practice': 'common practice',
  'own choice': 'a choice of this sheet',
  'own computation': 'computed for this sheet',
};

/** Stands for a value that is not there. */
const unknown = '?';

/** Four figures in a working: enough to follow the sum, more than the result deserves. */
const workingDigits = 4;

/** The working behind a figure: formula, values put in, source. */
export function Working(props: { entry: QuantityEntry; service?: Service }) {
  const sheet = useSheet();
  const siOf = (name: string): number | undefined => {
    const values = sheet.results.solution()?.values ?? {};
    return (props.service && values[`${props.service}.${name}`]) ?? values[name];
  };
  const written = (name: string): string => {
    const value = siOf(name);
    const entry = quantities[name];
    if (value === undefined || !entry) return unknown;
    // Two devices are not 2.000 devices.
    if (entry.dimension === 'number' && Number.isInteger(value))
      return writeNumber(value, workingDigits, true);
    return writeQuantity(value, entry.dimension, undefined, workingDigits);
  };
  const tree = createMemo(() =>
    props.entry.formula === undefined ? undefined : parseFormula(props.entry.formula),
  );
  const formula = createMemo(() => {
    const expression = tree();
    if (!expression) return undefined;
    return equationMath([
      symbolMath(props.entry.symbol),
      expressionMath(expression, (name) => {
        const entry = quantities[name];
        return entry ? symbolMath(entry.symbol) : unitMath(name);
      }),
    ]);
  });
  const putIn = createMemo(() => {
    const expression = tree();
    if (!expression) return undefined;
    const filled = expressionMath(expression, (name) =>
      quantities[name] ? figureMath(written(name)) : unitMath(name),
    );
    return equationMath([symbolMath(props.entry.symbol), filled, figureMath(written(props.entry.key))]);
  });
  const inputs = createMemo(() =>
    namesIn(props.entry.formula ?? '').filter((name) => quantities[name] !== undefined),
  );

  return (
    // Formulas may be wider than the column: the region scrolls, so it must take the keyboard.
    // biome-ignore lint/a11y/useSemanticElements: a group of lines, not of form controls
    <div class="working" role="group" tabindex="0" aria-label={`Working of ${props.entry.label}`}>
      <Show when={props.entry.method}>
        {(method) => (
          <>
            <p>{method()}</p>
            <TakenFrom entry={props.entry} written={written} />
          </>
        )}
      </Show>
      <Show when={formula()}>
        <p class="working-formula">{formula()}</p>
        <p class="working-formula">{putIn()}</p>
        <ul class="working-names">
          <For each={inputs()}>
            {(name) => (
              <li>
                {symbolLine(quantities[name]!)} {quantities[name]!.label}
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={validity[props.entry.key]}>{(holds) => <p class="source-line">Holds: {holds()}</p>}</Show>
      <SourceOf name={props.entry.source} />
    </div>
  );
}

interface TakenRow {
  readonly label: string;
  readonly value: string;
  /** Of a quantity; entries of the design have none. */
  readonly symbol: string | null;
}

/** What a method takes: quantities and entries with their values; entries that do not apply are left out. */
function TakenFrom(props: { entry: QuantityEntry; written: (name: string) => string }) {
  const sheet = useSheet();
  const rows = createMemo((): readonly TakenRow[] => {
    const given = givenGroups(sheet.store.design(), sheet.preferences.unitOf).flatMap((group) => group.rows);
    return (takenFrom[props.entry.key] ?? []).flatMap((name): TakenRow[] => {
      const entry = quantities[name];
      const value = props.written(name);
      if (entry) return value === unknown ? [] : [{ label: entry.label, value, symbol: entry.symbol }];
      const row = given.find(({ path }) => path === name);
      if (!row || row.idle) return [];
      return [{ label: row.label, value: row.value, symbol: null }];
    });
  });
  return (
    <Show when={rows().length > 0}>
      <ul class="working-names">
        <For each={rows()}>
          {({ label, value, symbol }) => (
            <li>
              {symbol ? equationMath([symbolMath(symbol), figureMath(value)]) : `${value},`} {label}
            </li>
          )}
        </For>
      </ul>
    </Show>
  );
}

function symbolLine(entry: QuantityEntry): Element {
  return equationMath([symbolMath(entry.symbol)]);
}

function namesIn(formula: string): readonly string[] {
  return [...new Set(formula.match(/[A-Za-z_]\w*/g) ?? [])];
}

/** Where a formula or a caution comes from, and how well that is known. */
export function SourceOf(props: { name: string | undefined }) {
  const source = () => (props.name === undefined ? undefined : sources[props.name]);
  return (
    <Show when={source()}>
      {(found) => (
        <p class="source-line">
          Source: {[found().title, found().part, found().year].filter(Boolean).join(', ')} (
          {statusWords[found().status] ?? found().status}).
        </p>
      )}
    </Show>
  );
}
