import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js';

/** Things this close to the screen count as seen: a reader who scrolls finds them current. */
const margin = '20%';

/** Whether something stands on the screen or close by; so taken until the browser says otherwise. */
export function createNear(thing: () => Element): Accessor<boolean> {
  const [near, setNear] = createSignal(true);
  onMount(() => onCleanup(watchNear(thing(), setNear)));
  return near;
}

/** Tells whenever something comes near the screen or leaves it; returns the way to stop that. */
export function watchNear(thing: Element, tell: (near: boolean) => void): () => void {
  if (typeof IntersectionObserver === 'undefined') return () => {};
  const observer = new IntersectionObserver((entries) => tell(entries.at(-1)?.isIntersecting ?? true), {
    rootMargin: `${margin} 0px`,
  });
  observer.observe(thing);
  return () => observer.disconnect();
}

/** Calls back once, as soon as something comes near the screen; returns the way to take that back. */
export function whenNear(thing: Element, begin: () => void): () => void {
  if (typeof IntersectionObserver === 'undefined') {
    begin();
    return () => {};
  }
  const stop = watchNear(thing, (near) => {
    if (!near) return;
    stop();
    begin();
  });
  return stop;
}
