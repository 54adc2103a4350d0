import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { band } from '../../../src/engine/index.ts';
import { ComparePanel } from '../../../src/page/compare/ComparePanel.tsx';
import type { Engine } from '../../../src/page/state/results.ts';
import { figuresOnly, plainSpaces, renderInSheet } from '../support.tsx';

const first = examples[0]!.design;

async function panel(engine: Engine = figuresOnly) {
  const close = vi.fn();
  const shown = renderInSheet(() => <ComparePanel onClose={close} engine={engine} />, first, { engine });
  const chooser = screen.getByLabelText('This design beside');
  fireEvent.change(chooser, { target: { value: 'example data-final-100w' } });
  await waitFor(() => screen.getByText('What follows here'));
  return { ...shown, close };
}

const differences = () =>
  within(screen.getByRole('region', { name: 'Values given differently' })).getAllByRole('row').length - 1;

describe('the compare panel', () => {
  it('shows consequences, both verdicts, what differs and the figures', async () => {
    const { container } = await panel();
    const text = plainSpaces(container.textContent);
    expect(text).toContain(`Here: ${first.name}. There: ${examples[2]!.design.name}.`);
    expect(text).toMatch(/key-downthe junction is cooler by \d+ K/);
    expect(screen.getByRole('region', { name: 'Verdicts of both' })).toBeDefined();
    expect(text).toContain('▲ better');
    expect(differences()).toBeGreaterThan(20);
  });

  it('says which states follow: nominal for both until both bands are there, as in the table', async () => {
    const { container } = await panel();
    const text = plainSpaces(container.textContent);
    expect(text).toContain('figures nominal, states nominal');
    expect(text).toContain('nominal until the bands of both are there');
  });

  it('says the states of the band as soon as the table shows them', { timeout: 60_000 }, async () => {
    const { container } = await panel({ ...figuresOnly, band: (design) => band(design, { samples: 32 }) });
    await waitFor(
      () => expect(plainSpaces(container.textContent)).toContain('states at the pessimistic edge'),
      { timeout: 30_000 },
    );
    const rows = within(screen.getByRole('region', { name: 'Verdicts of both' }))
      .getAllByRole('row')
      .slice(1);
    const statesOf = (row: HTMLElement) =>
      [...row.querySelectorAll('td')].map((cell) => /fine|close|over/.exec(cell.textContent ?? '')?.[0]);
    const differing = rows.map(statesOf).filter(([here, there]) => here !== there);
    const said = plainSpaces(container.querySelector('.compare-follows')?.textContent);
    expect(differing.length).toBeGreaterThan(0);
    expect(said.match(/(fine|close|over) instead of (fine|close|over)/g)).toEqual(
      differing.map(([here, there]) => `${here} instead of ${there}`),
    );
  });

  it('takes one value of theirs, then all; undo brings mine back', async () => {
    const { state } = await panel();
    const before = differences();
    fireEvent.click(screen.getByRole('button', { name: /^take theirs: Width across the fins/ }));
    expect(state.store.design().sink.width).toBe(0.2);
    expect(differences()).toBe(before - 1);
    fireEvent.click(screen.getByRole('button', { name: 'Take all of theirs' }));
    expect(state.store.design()).toEqual({ ...examples[2]!.design, name: first.name });
    expect(screen.queryByRole('region', { name: 'Values given differently' })).toBeNull();
    state.store.undo();
    state.store.undo();
    expect(state.store.design()).toEqual(first);
  });

  it('swaps the two', async () => {
    const { state, container } = await panel();
    fireEvent.click(screen.getByRole('button', { name: 'Swap the two' }));
    expect(state.store.design().name).toBe(examples[2]!.design.name);
    await waitFor(() =>
      expect(container.textContent).toContain(`Here: ${examples[2]!.design.name}. There: ${first.name}.`),
    );
  });
});
