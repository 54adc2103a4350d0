import { For } from 'solid-js';
import { type GivenRow, givenGroups } from '../state/given.ts';
import { useSheet } from '../state/sheet.ts';

interface Line {
  readonly label: string;
  readonly value: string;
}

function linesOf({ label, value, list }: GivenRow): readonly Line[] {
  if (!list) return [{ label, value }];
  return list.items.map((item, index) => ({ label: `${list.noun} ${index + 1}`, value: item }));
}

/** Every given value that says something, in the builder's units. */
export function BuildGiven() {
  const sheet = useSheet();
  const groups = () =>
    givenGroups(sheet.store.design(), sheet.preferences.unitOf)
      .map(({ title, rows }) => ({ title, lines: rows.filter((row) => !row.idle).flatMap(linesOf) }))
      .filter(({ lines }) => lines.length > 0);
  return (
    <section class="build-given">
      <h2>
        Given <small>what is empty, none, no or nought is left out</small>
      </h2>
      <div class="build-columns">
        <For each={groups()}>
          {({ title, lines }) => (
            <p>
              <strong>{title}.</strong>{' '}
              <For each={lines}>
                {({ label, value }, index) => (
                  <>
                    {index() > 0 ? '; ' : ''}
                    {label} <b>{value}</b>
                  </>
                )}
              </For>
            </p>
          )}
        </For>
      </div>
    </section>
  );
}
