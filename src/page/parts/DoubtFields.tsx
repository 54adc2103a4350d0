import { createUniqueId, For, Show } from 'solid-js';
import { type Doubt, doubtfulPaths } from '../../../shared/design/doubtSchema.ts';
import { instruments } from '../../../shared/design/instruments.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import { applies } from '../state/applies.ts';
import { knownField, leafAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { createHelp, HelpButton, HelpText } from './Help.tsx';

/** Plus-minus offered beside the instruments, as shares of the value. */
const shares = [0.02, 0.05, 0.1, 0.3] as const;

/** How each uncertain entry was measured; "usual" is what the sheet takes without being told. */
export function DoubtFields() {
  const { store } = useSheet();
  const shown = () =>
    doubtfulPaths.filter((path) => applies(store.view, path) && leafAt(store.view, path) !== null);
  return (
    <>
      <p class="doubt-note">
        How far each may be off, nine times of ten. “As usual” is what the sheet takes without being told:
        caliper for what is thin, ruler for the rest.
      </p>
      <For each={shown()}>{(path) => <DoubtField path={path} />}</For>
    </>
  );
}

function DoubtField(props: { path: string }) {
  const { store, preferences, setFocused } = useSheet();
  const id = createUniqueId();
  const help = createHelp();
  const spec = knownField(props.path) as NumberField;
  const isLength = spec.dimension === 'length';
  const doubt = () => store.view.doubts[props.path];
  const value = () => leafAt(store.view, props.path) as number;
  const unit = () => preferences.unitOf(props.path, spec);
  const chosen = () => {
    const now = doubt();
    if (now === undefined) return 'usual';
    return typeof now === 'number' ? 'own' : now;
  };

  function choose(word: string): void {
    const share = Number(word);
    const next: Doubt | undefined =
      word === 'usual' ? undefined : word in instruments ? (word as Doubt) : share * Math.abs(value());
    store.change((design) => {
      const { [props.path]: _gone, ...rest } = design.doubts;
      return { ...design, doubts: next === undefined ? rest : { ...rest, [props.path]: next } };
    });
  }

  return (
    <div class="field field-choice">
      <label class="field-label" for={id}>
        {spec.label}
      </label>
      <HelpButton about={spec.label} id={`${id}-help`} open={help.open()} toggle={help.toggle} />
      <span class="field-line">
        <select
          id={id}
          class="field-select"
          aria-describedby={`${id}-help`}
          value={chosen()}
          onFocus={() => setFocused(props.path)}
          onBlur={() => setFocused(null)}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value="usual">as usual</option>
          <Show when={isLength}>
            <option value="caliper">{instruments.caliper}</option>
            <option value="ruler">{instruments.ruler}</option>
          </Show>
          <option value="guess">{instruments.guess}</option>
          <For each={shares}>{(share) => <option value={share}>±{Math.round(share * 100)} %</option>}</For>
          <Show when={chosen() === 'own'}>
            <option value="own">±{writeEcho(doubt() as number, differenceOf(spec), unit())}</option>
          </Show>
        </select>
      </span>
      <HelpText id={`${id}-help`} open={help.open()} text={spec.help} />
    </div>
  );
}

function differenceOf(spec: NumberField): NumberField['dimension'] {
  return spec.dimension === 'temperature' ? 'temperatureDifference' : spec.dimension;
}
