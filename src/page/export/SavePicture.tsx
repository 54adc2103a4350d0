import { createSignal, Show } from 'solid-js';
import { useSheet } from '../state/sheet.ts';
import { saveBlob, stemOf } from './files.ts';
import { asPng, type Draw, takePicture } from './picture.ts';

type Kind = 'svg' | 'png';

/** Saves a drawing or plot as a file, named after the design and the plot. */
export function SavePicture(props: { title: string; draw: Draw }) {
  const sheet = useSheet();
  const [trouble, setTrouble] = createSignal(false);

  async function save(kind: Kind): Promise<void> {
    setTrouble(false);
    const design = sheet.store.view.name;
    try {
      const picture = takePicture(props.draw, { title: props.title, design });
      const blob = kind === 'png' ? await asPng(picture) : new Blob([picture.svg], { type: 'image/svg+xml' });
      saveBlob(blob, `${stemOf(design)}.${stemOf(props.title)}.${kind}`);
    } catch {
      setTrouble(true);
    }
  }

  return (
    <span class="save-picture">
      Save picture
      <button
        type="button"
        class="plain-button"
        aria-label={`SVG: save the picture of ${props.title}`}
        onClick={() => void save('svg')}
      >
        SVG
      </button>
      <button
        type="button"
        class="plain-button"
        aria-label={`PNG: save the picture of ${props.title}`}
        onClick={() => void save('png')}
      >
        PNG
      </button>
      <Show when={trouble()}>
        <span role="alert">This browser does not hand out the picture.</span>
      </Show>
    </span>
  );
}
