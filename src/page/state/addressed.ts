import { onCleanup, onMount } from 'solid-js';

/** What the reader moves the page with: from then on it stays where it was moved. */
const ownMoves = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;

/** Drawings and plots may come this long after a jump and push its place down, ms. */
const holdsFor = 5000;

/**
 * Keeps the place that the address names at the top while what stands above it still arrives. Gives back the way to go
 * there: a link may have been followed before its place was there.
 */
export function holdAddressed(): () => void {
  let until = Number.POSITIVE_INFINITY;
  const go = () => {
    if (location.hash.length < 2 || performance.now() > until) return;
    document.getElementById(location.hash.slice(1))?.scrollIntoView();
  };
  const hold = () => {
    until = performance.now() + holdsFor;
  };
  const letGo = () => {
    until = 0;
  };
  onMount(() => {
    const grown = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(go);
    grown?.observe(document.body);
    globalThis.addEventListener('hashchange', hold);
    for (const move of ownMoves) globalThis.addEventListener(move, letGo, { passive: true });
    onCleanup(() => {
      grown?.disconnect();
      globalThis.removeEventListener('hashchange', hold);
      for (const move of ownMoves) globalThis.removeEventListener(move, letGo);
    });
  });
  return () => {
    if (until === Number.POSITIVE_INFINITY) hold();
    go();
  };
}
