import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { readLink } from '../../../shared/design/link.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { DesignsPanel } from '../../../src/page/designs/DesignsPanel.tsx';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

const mine = { ...startDesign, name: 'Mine' };

function show(at: 'designs' | 'share' = 'designs') {
  const onClose = vi.fn();
  const shown = renderInSheet(() => <DesignsPanel at={at} onClose={onClose} />, mine);
  const rows = () => [...shown.container.querySelectorAll<HTMLElement>('.kept-row')];
  const row = (name: string) => rows().find((each) => each.textContent?.includes(name))!;
  const press = (label: string, within_ = shown.container as HTMLElement) =>
    fireEvent.click(within(within_).getByRole('button', { name: label }));
  return { ...shown, rows, row, press, onClose };
}

describe('the list of designs', () => {
  it('shows the design on the sheet even before anything of it is kept', () => {
    const { rows } = show();
    expect(rows()).toHaveLength(1);
    expect(rows()[0]!.textContent).toContain('Mine on the sheet');
  });

  it('names what each is, when it was changed, and its verdicts', async () => {
    const { row, press, state } = show();
    press(examples[2]!.title);
    expect(state.store.design()).toEqual(examples[2]!.design);
    const found = row(examples[2]!.title);
    expect(plainSpaces(found.textContent)).toContain('100 W, class AB, on 50 V');
    expect(found.textContent).toContain(String(new Date().getFullYear()));
    const expected = engine.solve(examples[2]!.design).verdicts.filter(({ state: each }) => each === 'over');
    await waitFor(() => expect(found.textContent).toContain(`over: ${expected[0]!.name}`));
    expect(found.getAttribute('aria-current')).toBe('true');
  });

  it('begins a fresh sheet under a name that is free', () => {
    const { press, state, row } = show();
    press('A fresh sheet');
    expect(state.store.design().name).toBe(startDesign.name);
    state.store.edit('amplifier.pep', 12);
    state.designs.keepNow();
    press('A fresh sheet');
    expect(state.store.design()).toEqual({ ...startDesign, name: `${startDesign.name} (2)` });
    expect(row('12')).toBeDefined();
  });

  it('renames in place: Enter takes it, Escape leaves it, an empty name is none', () => {
    const { press, state, row, onClose } = show();
    press(examples[1]!.title);
    const title = examples[1]!.title;
    const rename = (text: string) => {
      press('Rename', row(state.store.design().name));
      const box = screen.getByLabelText<HTMLInputElement>('New name');
      fireEvent.input(box, { target: { value: text } });
      return box;
    };
    fireEvent.keyDown(rename('Nothing'), { key: 'Escape' });
    expect(state.store.design().name).toBe(title);
    expect(onClose).not.toHaveBeenCalled();
    fireEvent.submit(rename('   ').closest('form')!);
    expect(state.store.design().name).toBe(title);
    fireEvent.submit(rename('  Roof ').closest('form')!);
    expect(state.store.design().name).toBe('Roof');
    expect(screen.queryByLabelText('New name')).toBeNull();
  });

  it('deletes and brings back', () => {
    const { press, state, row, container } = show();
    press(examples[1]!.title);
    state.store.edit('name', 'Roof');
    press('A fresh sheet');
    press('Delete', row('Roof'));
    expect(row('Roof')).toBeUndefined();
    expect(container.querySelector('.removed')?.textContent).toContain('“Roof” is deleted');
    press('Bring it back');
    expect(row('Roof')).toBeDefined();
    expect(container.querySelector('.removed')).toBeNull();
  });

  it.each(['Bring it back', 'undo'])('tells of a deleted design until it is back: %s', (way) => {
    const { press, state, row, container } = show();
    press('A fresh sheet');
    state.store.edit('name', 'Roof');
    state.store.commit();
    press('Delete', row('Roof'));
    expect(container.querySelector('.removed')?.textContent).toContain('“Roof” is deleted');
    if (way === 'undo') state.store.undo();
    else press(way);
    expect(state.store.design().name).toBe('Roof');
    expect(container.querySelector('.removed')).toBeNull();
    state.designs.keepNow();
    expect(row('Roof')).toBeDefined();
    expect(container.querySelector('.removed')).toBeNull();
  });

  it('gives the keyboard back to Rename, whether the name was taken or left', () => {
    const { press, state, row } = show();
    press('A fresh sheet');
    const renamed = (end: (box: HTMLInputElement) => void) => {
      press('Rename', row(state.store.design().name));
      const box = screen.getByLabelText<HTMLInputElement>('New name');
      box.focus();
      fireEvent.input(box, { target: { value: 'Roof' } });
      end(box);
      state.designs.keepNow();
      return document.activeElement;
    };
    const button = () => within(row(state.store.design().name)).getByRole('button', { name: 'Rename' });
    expect(renamed((box) => fireEvent.keyDown(box, { key: 'Escape' }))).toBe(button());
    expect(renamed((box) => fireEvent.submit(box.closest('form')!))).toBe(button());
    expect(state.store.design().name).toBe('Roof');
  });

  it('takes the keyboard and gives it back', () => {
    const { onClose, press } = show();
    expect(document.activeElement?.textContent).toBe('Designs');
    fireEvent.keyDown(document.activeElement!, { key: 'Escape' });
    expect(onClose).toHaveBeenCalledTimes(1);
    press('Close');
    expect(onClose).toHaveBeenCalledTimes(2);
  });
});

describe('the link', () => {
  it('is of the design as it stands, with its length', async () => {
    const { state, container } = show('share');
    const line = screen.getByLabelText<HTMLInputElement>('Link to this design');
    await waitFor(() => expect(line.value).toContain('#d1.'));
    expect(document.activeElement).toBe(line);
    const first = line.value;
    state.store.edit('amplifier.pep', 17);
    await waitFor(() => expect(line.value).not.toBe(first));
    const read = await readLink(line.value.slice(line.value.indexOf('#')));
    expect(read.ok && read.design.amplifier.pep).toBe(17);
    expect(container.textContent).toContain(`${line.value.length} characters`);
  });
});
