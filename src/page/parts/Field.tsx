import { knownField } from '../state/fields.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { FlagField } from './FlagField.tsx';
import { NumberField } from './NumberField.tsx';
import { TextField } from './TextField.tsx';

/** The control for a field of the design, whatever its kind. Label, range and help come from the design schema. */
export function Field(props: { path: string; label?: string }) {
  const kind = knownField(props.path).kind;
  if (kind === 'choice') return <ChoiceField path={props.path} />;
  if (kind === 'flag') return <FlagField path={props.path} />;
  if (kind === 'text') return <TextField path={props.path} />;
  return <NumberField path={props.path} {...(props.label === undefined ? {} : { label: props.label })} />;
}
