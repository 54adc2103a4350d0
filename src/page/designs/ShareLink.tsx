import { createEffect, createSignal, onMount, Show } from 'solid-js';
import { writeLink } from '../../../shared/design/link.ts';
import { useSheet } from '../state/sheet.ts';

/** Longer links are cut by some mail and chat programs, characters. */
const longLink = 2000;

/** The design as a link: it is in the address itself, behind the #, which browsers never send to a server. */
export function ShareLink(props: { focus: boolean }) {
  const { store } = useSheet();
  const [said, setSaid] = createSignal('');
  const [link, setLink] = createSignal<string>();
  // No resource: the panel would be taken away while the link of an edit is made.
  createEffect(() => {
    const design = store.design();
    void writeLink(design).then((code) => {
      if (design !== store.design()) return;
      setLink(addressWithout() + code);
      setSaid('');
    });
  });
  let line!: HTMLInputElement;
  onMount(() => createEffect(() => props.focus && line.focus()));

  async function copy(): Promise<void> {
    const text = link();
    if (text === undefined) return;
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      line.focus();
      line.select();
      setSaid('The browser does not let the page copy. The link is selected: copy it from there.');
    }
  }

  return (
    <section>
      <h3 class="column-title">Share</h3>
      <label class="share-line">
        <span>Link to this design</span>
        <input ref={line} type="text" readOnly value={link() ?? ''} onFocus={() => line.select()} />
      </label>
      <p class="row-actions">
        <button
          type="button"
          class="plain-button"
          disabled={link() === undefined}
          onClick={() => void copy()}
        >
          Copy the link
        </button>
        <span class="row-note" role="status">
          {said()}
        </span>
      </p>
      <p class="row-note">
        {link()?.length ?? 0} characters. The whole design is in the link and goes to no server; who opens it
        gets a design of their own.
        <Show when={(link()?.length ?? 0) > longLink}>
          {' '}
          This one is long: some mail and chat programs cut it. A file is surer.
        </Show>
      </p>
    </section>
  );
}

function addressWithout(): string {
  return location.href.split('#', 1)[0] ?? '';
}
