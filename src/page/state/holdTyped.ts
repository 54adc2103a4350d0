import { onCleanup, onMount } from 'solid-js';

/** What the reader moves the page with. */
const ownMoves = ['wheel', 'touchstart', 'pointerdown'] as const;

/**
 * So long after an entry or a change of height a scroll may be the browser's own, which looks for the caret; later it is
 * the reader's, who may drag the bar of the window, ms.
 */
const settling = 500;

/** Less than this nobody sees move, px. */
const unseen = 1;

/**
 * Keeps the field that is being typed in where it is on the screen while plots and figures above it come or go, such as
 * when an entry has no result. The browser does this for most things that arrive, but not when what it held on to goes.
 */
export function holdTyped(): void {
  let field: Element | null = null;
  let top = 0;
  let settledAt = 0;
  const settle = () => {
    settledAt = performance.now() + settling;
  };

  const topOf = (element: Element) => element.getBoundingClientRect().top;
  /** Before the entry has changed anything, so that asking costs no layout. */
  function hold(event: Event): void {
    field = event.target instanceof Element && event.target.closest('main') ? event.target : null;
    if (field) top = topOf(field);
    settle();
  }
  function letGo(): void {
    field = null;
  }
  /** The browser's own search for the caret ends with the field in sight; who leaves it behind is the reader. */
  function isLeft(element: Element): boolean {
    const { top: upper, bottom } = element.getBoundingClientRect();
    return bottom < 0 || upper > innerHeight;
  }
  function seeScroll(): void {
    if (field && (performance.now() > settledAt || isLeft(field))) letGo();
  }
  function moveBack(): void {
    if (!field || document.activeElement !== field) return;
    settle();
    const moved = topOf(field) - top;
    if (Math.abs(moved) > unseen) scrollBy({ top: moved, behavior: 'instant' });
  }

  onMount(() => {
    if (typeof ResizeObserver === 'undefined') return;
    const resized = new ResizeObserver(moveBack);
    resized.observe(document.body);
    const capture = { capture: true };
    const passive = { passive: true };
    addEventListener('beforeinput', hold, capture);
    addEventListener('change', hold, capture);
    addEventListener('scroll', seeScroll, passive);
    for (const move of ownMoves) addEventListener(move, letGo, passive);
    onCleanup(() => {
      resized.disconnect();
      removeEventListener('beforeinput', hold, capture);
      removeEventListener('change', hold, capture);
      removeEventListener('scroll', seeScroll);
      for (const move of ownMoves) removeEventListener(move, letGo);
    });
  });
}
