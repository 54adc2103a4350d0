/** Runs work that is done in steps to its end. */
export function lastOf<T>(steps: Generator<number, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** News of a part of the work as news of the whole: its share goes from `from` to `to`. */
export function* within<T>(steps: Generator<number, T>, from: number, to: number): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
