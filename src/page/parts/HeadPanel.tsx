import './headPanel.css';
import { createUniqueId, type JSX, onCleanup, onMount } from 'solid-js';

/** A panel of the title block, opened by one of its buttons: Escape and “Close” give the keyboard back to that. */
export function HeadPanel(props: {
  title: string;
  class?: string;
  /** Whether the keyboard goes to the title; otherwise something inside takes it. */
  takesFocus: boolean;
  onClose: () => void;
  children: JSX.Element;
}) {
  const titleId = createUniqueId();
  let panel!: HTMLElement;
  let title!: HTMLHeadingElement;

  onMount(() => {
    if (props.takesFocus) title.focus();
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || !panel.contains(document.activeElement)) return;
      event.preventDefault();
      props.onClose();
    };
    document.addEventListener('keydown', onKey);
    onCleanup(() => document.removeEventListener('keydown', onKey));
  });

  return (
    <section ref={panel} class={`head-panel ${props.class ?? ''}`} aria-labelledby={titleId}>
      <div class="head-panel-title">
        <h2 ref={title} id={titleId} class="band-title" tabindex="-1">
          {props.title}
        </h2>
        <button type="button" class="plain-button" onClick={() => props.onClose()}>
          Close
        </button>
      </div>
      {props.children}
    </section>
  );
}
