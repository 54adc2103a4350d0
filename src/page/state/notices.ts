import { type Accessor, createSignal } from 'solid-js';

/** Something the builder can do about a notice. The notice goes with it unless it says otherwise. */
export interface NoticeAction {
  readonly label: string;
  readonly run: () => void;
  /** The notice stays, since what it tells of stays too. */
  readonly stays?: boolean;
}

/** Something the builder must know about the sheet itself: a file that does not open, a store that is full. */
export interface Notice {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
  readonly actions?: readonly NoticeAction[];
  /** News needs no remedy and is said without urgency. */
  readonly news?: boolean;
  /** It asks for a choice and cannot be put away without one. */
  readonly asks?: boolean;
}

export interface Notices {
  readonly list: Accessor<readonly Notice[]>;
  readonly show: (notice: Notice) => void;
  readonly dismiss: (key: string) => void;
}

/** One notice for each key; a new one takes the place of the old. */
export function createNotices(): Notices {
  const [list, setList] = createSignal<readonly Notice[]>([]);
  const dismiss = (key: string) =>
    setList((all) =>
      all.some((notice) => notice.key === key) ? all.filter((each) => each.key !== key) : all,
    );
  return {
    list,
    dismiss,
    show: (notice) =>
      setList((all) =>
        all.some((each) => each.key === notice.key)
          ? all.map((each) => (each.key === notice.key ? notice : each))
          : [...all, notice],
      ),
  };
}
