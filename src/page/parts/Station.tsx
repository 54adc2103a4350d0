import { createEffect, createMemo, createSignal, type JSX, Show } from 'solid-js';
import { usePace } from '../state/pace.ts';
import { useSheet } from '../state/sheet.ts';
import { Place } from './Place.tsx';
import { StationReasons } from './StationReasons.tsx';

interface StationProps {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  /** What the builder enters. */
  readonly given: JSX.Element;
  /** A drawing or a small plot. */
  readonly sketch?: JSX.Element;
  readonly found: JSX.Element;
  /** Wide things under the three columns. */
  readonly wide?: JSX.Element;
}

/** One band across the sheet: given, sketch, found. On a phone the three stand under one another. */
export function Station(props: StationProps) {
  const heading = () => `${props.id}-title`;
  return (
    <section class="station" id={props.id} aria-labelledby={heading()}>
      <h2 class="station-title" id={heading()}>
        <span class="station-number">{props.number}</span> {props.title}
      </h2>
      <div class="given">
        <h3 class="column-title">Given</h3>
        {props.given}
      </div>
      <Place class="sketch">
        <h3 class="column-title">Sketch</h3>
        {props.sketch}
      </Place>
      <Place class="found-column" ofFigures>
        <FoundTitle />
        <StationReasons station={props.id} />
        {props.found}
      </Place>
      {/* Not asked by its value: each look at it makes its plots and tables anew. */}
      <Show when={'wide' in props}>
        <Place class="wide">{props.wide}</Place>
      </Show>
    </section>
  );
}

function FoundTitle() {
  const sheet = useSheet();
  return (
    <h3 class="column-title">
      Found
      <Show when={sheet.older().length > 0}>
        <span class="older-word"> with the last good entries</span>
      </Show>
    </h3>
  );
}

/** Something few need at first sight; it is not even made before it is asked for. */
export function Folded(props: { label: string; children: JSX.Element }) {
  const [opened, setOpened] = createSignal(false);
  return (
    <details class="more" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{props.label}</summary>
      <Show when={opened()}>{props.children}</Show>
    </details>
  );
}

/**
 * Inputs with sensible values already in them, opened on demand. Opens by itself when one of them is wrong. They are
 * made when the page has nothing else to do, at the latest when they are opened or printed.
 */
export function More(props: {
  label: string;
  paths?: readonly string[];
  /** The start of the paths inside, where they are many. */
  below?: string;
  children: JSX.Element;
}) {
  const sheet = useSheet();
  const pace = usePace();
  const [made, setMade] = createSignal(false);
  const isInside = (path: string) =>
    props.paths?.includes(path) === true || (props.below !== undefined && path.startsWith(props.below));
  const wrongInside = createMemo(() => sheet.store.wrong().some(isInside));
  let group!: HTMLDetailsElement;
  // Opened for a wrong entry, never shut by the sheet: somebody may be typing in it.
  createEffect(() => {
    if (wrongInside()) group.open = true;
  });
  pace.last(() => setMade(true));
  return (
    <details ref={group} class="more" onToggle={(event) => event.currentTarget.open && setMade(true)}>
      <summary>{props.label}</summary>
      <div class="more-body">
        <Show when={made() || wrongInside()}>{props.children}</Show>
      </div>
    </details>
  );
}
