import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { ComparePanel } from '../../../src/page/compare/ComparePanel.tsx';
import { figuresOnly, plainSpaces, renderInSheet } from '../support.tsx';

const first = examples[0]!.design;

async function panel() {
  const close = vi.fn();
  const shown = renderInSheet(() => <ComparePanel onClose={close} engine={figuresOnly} />, first);
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
