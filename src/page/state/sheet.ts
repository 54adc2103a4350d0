import { type Accessor, createContext, createSignal, type Setter, useContext } from 'solid-js';
import type { Service } from '../../../shared/solution.ts';
import type { Designs } from './designs.ts';
import type { Notices } from './notices.ts';
import type { Preferences } from './preferences.ts';
import type { Results } from './results.ts';
import type { SheetStore } from './store.ts';

/** Everything the parts of the page share. */
export interface SheetState {
  readonly store: SheetStore;
  readonly preferences: Preferences;
  readonly results: Results;
  /** Paths of entries that cannot be used as typed: the figures stand on their last good values. */
  readonly older: Accessor<readonly string[]>;
  readonly notices: Notices;
  /** The designs kept in this browser. */
  readonly designs: Designs;
  /** Path of the field being edited: its dimension line in the drawing lights up. */
  readonly focused: Accessor<string | null>;
  readonly setFocused: Setter<string | null>;
  /** The service whose temperatures the drawings show. */
  readonly service: Accessor<Service>;
  readonly setService: Setter<Service>;
  /** What a service is called in this design: “SSB”, “two-tone”, “key-down”, “FT8”. */
  readonly nameOf: (service: Service) => string;
  /** The sheet that this one follows where it is in sight; undefined where it is the sheet itself. */
  readonly followed?: SheetState;
}

const SheetContext = createContext<SheetState>();
export const SheetProvider = SheetContext.Provider;

export function useSheet(): SheetState {
  const sheet = useContext(SheetContext);
  if (sheet === undefined) throw new Error('This part stands outside the sheet.');
  return sheet;
}

/** Puts the pieces together; each can be replaced in a test. */
export function createSheetState(
  pieces: Pick<SheetState, 'store' | 'preferences' | 'results' | 'notices' | 'designs'>,
): SheetState {
  const [focused, setFocused] = createSignal<string | null>(null);
  const [service, setService] = createSignal<Service>('keyDown');
  const nameOf = (service: Service) =>
    pieces.results.solution()?.words[service].name ?? serviceNames[service];
  const older = pieces.store.wrong;
  return { ...pieces, older, focused, setFocused, service, setService, nameOf };
}

/** The services as they stand on the page before the first figures. */
const serviceNames: Readonly<Record<Service, string>> = { ssb: 'SSB', cw: 'CW', keyDown: 'key-down' };
