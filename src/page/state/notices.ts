import { type Accessor, createSignal } from 'solid-js';

/** Something the builder must know about the sheet itself: a file that does not open, a store that is full. */
export interface Notice {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
}

export interface Notices {
  readonly list: Accessor<readonly Notice[]>;
  readonly show: (notice: Notice) => void;
  readonly dismiss: (key: string) => void;
}

/** One notice for each key; a new one takes the place of the old. */
export function createNotices(): Notices {
  const [list, setList] = createSignal<readonly Notice[]>([]);
  const dismiss = (key: string) => setList((all) => all.filter((notice) => notice.key !== key));
  return {
    list,
    dismiss,
    show: (notice) => setList((all) => [...all.filter((each) => each.key !== notice.key), notice]),
  };
}
