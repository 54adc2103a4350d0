import { onCleanup, onMount } from 'solid-js';
import type { SheetStore } from './store.ts';

type TextBox = HTMLInputElement | HTMLTextAreaElement;

function textBoxOf(target: EventTarget | null): TextBox | undefined {
  if (target instanceof HTMLTextAreaElement) return target;
  const typed = target instanceof HTMLInputElement && ['text', 'search'].includes(target.type);
  return typed ? target : undefined;
}

/**
 * Control-Z and Control-Y step through the design. In a text box whose text was changed since it was entered they are
 * the browser's own, so that typing is taken back letter by letter as everywhere; before and after that they step
 * through the design there, too.
 */
export function undoByKeyboard(store: SheetStore): void {
  let box: TextBox | undefined;
  let textThen = '';
  const enter = (target: EventTarget | null) => {
    box = textBoxOf(target);
    textThen = box?.value ?? '';
  };

  function onKey(event: KeyboardEvent): void {
    if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    const forth = key === 'y' || (key === 'z' && event.shiftKey);
    if (!forth && key !== 'z') return;
    const target = textBoxOf(event.target);
    if (target !== undefined && (target !== box || target.value !== textThen || target.readOnly)) return;
    if (target !== undefined && !(forth ? store.canRedo() : store.canUndo())) return;
    event.preventDefault();
    if (forth) store.redo();
    else store.undo();
    enter(event.target);
  }

  onMount(() => {
    const onEnter = (event: FocusEvent) => enter(event.target);
    document.addEventListener('focusin', onEnter);
    document.addEventListener('keydown', onKey);
    onCleanup(() => {
      document.removeEventListener('focusin', onEnter);
      document.removeEventListener('keydown', onKey);
    });
  });
}
