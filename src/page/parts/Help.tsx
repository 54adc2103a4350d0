import { createSignal } from 'solid-js';

/** Whether the help of a field stands open. */
export function createHelp() {
  const [open, setOpen] = createSignal(false);
  return { open, toggle: () => setOpen((now) => !now) };
}

/** A small question mark that opens one sentence of help in place. */
export function HelpButton(props: { about: string; id: string; open: boolean; toggle: () => void }) {
  return (
    <button
      type="button"
      class="help-button"
      aria-label={`About ${props.about}`}
      aria-expanded={props.open}
      aria-controls={props.id}
      onClick={() => props.toggle()}
    >
      ?
    </button>
  );
}

/** The sentence itself. It is always in the page, so that the field can name it as its description. */
export function HelpText(props: { id: string; open: boolean; text: string }) {
  return (
    <p id={props.id} class="help" hidden={!props.open}>
      {props.text}
    </p>
  );
}
