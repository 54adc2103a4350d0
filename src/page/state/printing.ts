import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js';

/** Entries folded away on the screen belong on paper: they open while the page is printed. */
export function openForPrint(): void {
  onMount(() => {
    let opened: HTMLDetailsElement[] = [];
    const before = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>('.given details.more:not([open])')];
      for (const details of opened) details.open = true;
    };
    const after = () => {
      for (const details of opened) details.open = false;
      opened = [];
    };
    globalThis.addEventListener('beforeprint', before);
    globalThis.addEventListener('afterprint', after);
    onCleanup(() => {
      globalThis.removeEventListener('beforeprint', before);
      globalThis.removeEventListener('afterprint', after);
    });
  });
}

/** Whether the page is being printed just now: a canvas gives way to its line drawing then. */
export function createPrinting(): Accessor<boolean> {
  const [printing, setPrinting] = createSignal(false);
  onMount(() => {
    const before = () => setPrinting(true);
    const after = () => setPrinting(false);
    globalThis.addEventListener('beforeprint', before);
    globalThis.addEventListener('afterprint', after);
    onCleanup(() => {
      globalThis.removeEventListener('beforeprint', before);
      globalThis.removeEventListener('afterprint', after);
    });
  });
  return printing;
}
