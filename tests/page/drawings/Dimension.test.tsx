import { expect, it } from 'vitest';
import { SinkDrawing } from '../../../src/page/drawings/SinkDrawing.tsx';
import { plainSpaces, renderInSheet } from '../support.tsx';

it('a dimension line is written anew only where its distance changes', async () => {
  const { container, state } = renderInSheet(() => <SinkDrawing />);
  const written: Element[] = [];
  const watcher = new MutationObserver((records) => {
    for (const { target } of records) if (target instanceof Element) written.push(target);
  });
  const lineOf = (figure: string) =>
    [...container.querySelectorAll('.dimension')].find((line) => plainSpaces(line.textContent) === figure);
  const { finHeight, width, finCount } = state.store.design().sink;
  const millimetres = (length: number) => `${Math.round(length * 1e4) / 10} mm`;
  expect(lineOf(millimetres(width))).toBeDefined();
  watcher.observe(container, { subtree: true, attributes: true });

  state.store.edit('sink.finCount', finCount - 2);
  await Promise.resolve();
  expect(written.filter((each) => each.matches('.dimension > *'))).toEqual([]);

  state.store.edit('sink.finHeight', finHeight * 0.8);
  await Promise.resolve();
  const lines = new Set(written.map((each) => each.closest('.dimension')).filter((each) => each !== null));
  expect(lines).toContain(lineOf(millimetres(finHeight * 0.8)));
});
