import { For } from 'solid-js';
import { Field } from './Field.tsx';

/** Fields one under the other. */
export function Fields(props: { paths: readonly string[] }) {
  return <For each={props.paths}>{(path) => <Field path={path} />}</For>;
}
