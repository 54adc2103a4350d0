import { For, Show } from 'solid-js';
import { StateWord, stateKey } from '../parts/StateWord.tsx';
import { labelAt } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';

/** The verdicts, with both edges where the band is there; and what they do not follow. */
export function BuildVerdicts() {
  const sheet = useSheet();
  const band = () => sheet.results.band();
  const verdicts = () => band()?.verdicts ?? sheet.results.solution()?.verdicts ?? [];
  const wrong = () => sheet.store.wrong().map(labelAt);
  return (
    <section class="build-verdicts">
      <h2>
        Verdicts{' '}
        <small>
          {band() ? 'nine of ten; judged at the pessimistic edge' : 'nominal figures, no band yet'}
        </small>
      </h2>
      <Show when={wrong().length > 0}>
        <p class="build-alert">Older figures: they stand on the last good value of {wrong().join(', ')}.</p>
      </Show>
      <table>
        <tbody>
          <For each={verdicts()}>
            {(verdict) => (
              <tr>
                <th scope="row">{verdict.name}</th>
                <td>
                  <StateWord state={verdict.state} />
                </td>
                <td>
                  <strong>{verdict.headline}.</strong> {verdict.sentence}
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="build-key">{stateKey}</p>
      <For each={sheet.results.solution()?.reasons ?? []}>
        {(reason) => <p class="build-alert">{reason.sentence}</p>}
      </For>
    </section>
  );
}
