import { For } from 'solid-js';
import { examples } from '../../../shared/design/examples.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { HeadPanel } from '../parts/HeadPanel.tsx';
import { openFiles } from '../state/openSave.ts';
import { saveFile } from '../state/saveFile.ts';
import { useSheet } from '../state/sheet.ts';
import { nameOfCopy } from '../state/shelfWords.ts';
import './designs.css';
import { KeptDesigns } from './KeptDesigns.tsx';
import { ShareLink } from './ShareLink.tsx';

/** Everything about designs as a whole: those kept here, new ones, files and the link. */
export function DesignsPanel(props: { at: 'designs' | 'share'; onClose: () => void }) {
  return (
    <HeadPanel title="Designs" class="designs" takesFocus={props.at === 'designs'} onClose={props.onClose}>
      <div class="designs-columns">
        <KeptDesigns />
        <div class="designs-more">
          <Beginnings />
          <Files />
          <ShareLink focus={props.at === 'share'} />
        </div>
      </div>
    </HeadPanel>
  );
}

/** A new design, from typical values or from an example. What stood on the sheet stays in the list. */
function Beginnings() {
  const { designs } = useSheet();
  const fresh = () => {
    const taken = designs
      .list()
      .flatMap(({ found }) => (found.kind === 'kept' ? [found.entry.design.name] : []));
    const { name } = startDesign;
    designs.bringIn([{ ...startDesign, name: taken.includes(name) ? nameOfCopy(name, taken) : name }]);
  };
  return (
    <section>
      <h3 class="column-title">Begin a new one</h3>
      <ul class="beginnings">
        <li>
          <button type="button" class="plain-button" onClick={fresh}>
            A fresh sheet
          </button>
          <span class="row-note">typical values to be replaced by yours</span>
        </li>
        <For each={examples}>
          {(example) => (
            <li>
              <button type="button" class="plain-button" onClick={() => designs.bringIn([example.design])}>
                {example.title}
              </button>
              <span class="row-note">example: {example.about}</span>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function Files() {
  const { store, designs, notices } = useSheet();
  let chooser!: HTMLInputElement;
  async function openChosen(): Promise<void> {
    const files = [...(chooser.files ?? [])];
    chooser.value = '';
    await openFiles(files, designs, notices);
  }
  return (
    <section>
      <h3 class="column-title">Files</h3>
      <p class="row-actions">
        <button type="button" class="plain-button" onClick={() => chooser.click()}>
          Open files
        </button>
        <button type="button" class="plain-button" onClick={() => saveFile(store.design())}>
          Save as a file
        </button>
      </p>
      <p class="row-note">Files dropped anywhere on the sheet open, too; several at once.</p>
      <input
        ref={chooser}
        class="only-read"
        type="file"
        multiple
        accept=".json,application/json"
        tabindex="-1"
        aria-label="Design files"
        onChange={() => void openChosen()}
      />
    </section>
  );
}
