import { createSignal } from 'solid-js';

/** What goes on paper. */
export type PrintJob = 'build' | 'labels' | 'both';

const [job, setJob] = createSignal<PrintJob>('build');
const loads = new Set<() => Promise<unknown>>();

/** What the next print puts on paper; a print that the browser's own menu starts is a build sheet. */
export const printJob = job;
export const usualJob = () => setJob('build');

/** Names what must have arrived before anything can be printed; gives back how to take that back. */
export function neededForPrint(load: () => Promise<unknown>): () => void {
  loads.add(load);
  return () => loads.delete(load);
}

/** Prints the build sheet, the labels, or both. */
export async function printAs(next: PrintJob): Promise<void> {
  await Promise.allSettled([...loads].map((load) => load()));
  setJob(next);
  globalThis.print();
}
