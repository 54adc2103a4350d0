import '../export/paper.css';
import './paper.css';
import { Show } from 'solid-js';
import { services } from '../../../shared/solution.ts';
import { SheetProvider, useSheet } from '../state/sheet.ts';
import { BuildSheet } from './BuildSheet.tsx';
import { printJob } from './job.ts';
import { LabelList } from './LabelList.tsx';

/** Everything that goes on paper: the build sheet, the labels on pages of their own, or both. */
export function Paper() {
  const sheet = useSheet();
  /** The service whose temperatures the drawings show: the hardest one there is. */
  const service = () => {
    const solution = sheet.results.solution();
    return [...services].reverse().find((each) => solution?.services[each].ok) ?? 'keyDown';
  };
  return (
    <SheetProvider value={{ ...sheet, service, focused: () => null }}>
      <div class="print-paper on-paper">
        <Show when={printJob() !== 'labels'}>
          <BuildSheet />
        </Show>
        <Show when={printJob() !== 'build'}>
          <section class="paper-labels">
            <LabelList />
            <p class="label-name">{sheet.store.view.name}</p>
          </section>
        </Show>
      </div>
    </SheetProvider>
  );
}
