import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/engine/index.ts';
import { AnswersStation } from '../../../src/page/answers/AnswersStation.tsx';
import { exampleOf } from '../../engine/couple/designs.ts';
import { plainSpaces, renderInSheet } from '../support.tsx';

/** The answers are computed in pieces beside the test. */
const arriving = { timeout: 60_000 };
const slow = { timeout: 90_000 };
const design = exampleOf('data-final-100w');

function show() {
  const shown = renderInSheet(() => <AnswersStation number={10} />, design);
  fireEvent.click(screen.getByLabelText('the nominal figure'));
  return shown;
}

describe('what to change', () => {
  it(
    'is offered for the worst verdict, and one action makes a change that undo takes back',
    slow,
    async () => {
      const { state } = show();
      const verdict = screen.getByLabelText<HTMLSelectElement>('So that it becomes fine');
      expect(verdict.value).toBe('keyDown');
      fireEvent.click(screen.getByText('Find what to change'));
      const list = await screen.findByRole('list', { name: 'Changes for Key-down' }, arriving);
      const rows = [...list.querySelectorAll(':scope > li')];
      expect(rows.length).toBeGreaterThan(8);
      expect(plainSpaces(rows[0]!.textContent)).toMatch(/Transmit \d+ % of the time.*a setting.*enough/);
      expect(rows[0]!.querySelectorAll('.remedy-effects li')).toHaveLength(5);
      expect(plainSpaces(list.textContent)).toMatch(/not enough: the junction is [\d.]+ K above/);
      expect(plainSpaces(list.textContent)).toMatch(/New caution: Fan/);

      fireEvent.click(within(rows[0] as HTMLElement).getByRole('button'));
      const share = state.store.design().service.transmitShare;
      expect(share).toBeLessThan(0.2);
      expect(solve(state.store.design()).verdicts.find((one) => one.key === 'keyDown')!.state).toBe('fine');
      expect(screen.getByText(/edited since/)).toBeTruthy();
      fireEvent.click(screen.getByText('take it back'));
      expect(state.store.design()).toEqual(design);
    },
  );

  it('makes a change of several values one step back, with their typed texts', slow, async () => {
    const { state } = show();
    state.store.edit('sink.fanFlow', 0.01, { text: '10 L/s', unit: 'L/s' });
    state.store.commit();
    fireEvent.click(screen.getByText('Find what to change'));
    const list = await screen.findByRole('list', { name: 'Changes for Key-down' }, arriving);
    const fan = [...list.querySelectorAll('li')].find((row) => row.textContent?.includes('Blow along'))!;
    const before = state.store.design();
    fireEvent.click(within(fan).getByRole('button'));
    expect(state.store.design().sink.fan).toBe('along');
    expect(state.store.typed('sink.fanFlow')).toBeUndefined();
    state.store.undo();
    expect(state.store.design()).toEqual(before);
    expect(state.store.typed('sink.fanFlow')?.text).toBe('10 L/s');
  });

  it('can be stopped', slow, async () => {
    show();
    fireEvent.click(screen.getByText('Find what to change'));
    fireEvent.click(await screen.findByText('stop', {}, arriving));
    expect(screen.getByText('Find what to change')).toBeTruthy();
  });
});

describe('any value as the unknown', () => {
  it('is asked under the labels of the sheet and put in by one action', slow, async () => {
    const { state } = show();
    const unknown = screen.getByLabelText<HTMLSelectElement>('The unknown');
    const labels = [...unknown.options].map((option) => option.textContent);
    expect(labels).toContain('Length along the fins');
    expect(labels).toContain('Wire size');
    expect(labels).not.toContain('Emissivity (own value)');
    fireEvent.change(screen.getByLabelText('becomes'), { target: { value: '15 %' } });
    fireEvent.input(screen.getByLabelText('becomes'), { target: { value: '15 %' } });
    fireEvent.click(screen.getByText('Find the value'));
    await waitFor(() => expect(document.body.textContent).toMatch(/There are 2 values/), arriving);
    const put = screen.getAllByText('put it in');
    expect(put).toHaveLength(2);
    fireEvent.click(put[0]!);
    expect(solve(state.store.design()).values['keyDown.safeDuty']).toBeCloseTo(0.15, 3);
  });

  it('says why there is no value', slow, async () => {
    show();
    fireEvent.click(screen.getByText('Find the value'));
    await waitFor(
      () =>
        expect(document.body.textContent).toMatch(
          /No value of “Length along the fins”.*Even that is not enough/,
        ),
      arriving,
    );
  });

  it('does not ask with a target that cannot be read', () => {
    show();
    fireEvent.input(screen.getByLabelText('becomes'), { target: { value: '5 mm' } });
    expect(screen.getByText<HTMLButtonElement>('Find the value').disabled).toBe(true);
    expect(screen.getByText(/expected; mm is a length/)).toBeTruthy();
  });
});

describe('what matters and the map', () => {
  it('ranks values with links to their fields', slow, async () => {
    show();
    fireEvent.click(screen.getByText('Show what matters'));
    const table = await screen.findByLabelText('What matters most, ranked', {}, arriving);
    const links = [...table.querySelectorAll('a')];
    expect(links.length).toBe(12);
    expect(links.some((link) => link.getAttribute('href') === '#field-amplifier-efficiency')).toBe(true);
  });

  it('draws the limit line of each service, with a table of values', slow, async () => {
    show();
    fireEvent.click(screen.getByText('Draw the map'));
    await waitFor(() => expect(document.querySelector('.plot-title')).not.toBeNull(), arriving);
    expect(document.querySelector('.plot-title')!.textContent).toBe(
      'Output power (PEP) against room temperature, warmest day',
    );
    expect(document.querySelector('.plot-finding')!.textContent).toMatch(/SSB as drawn/);
    expect(document.querySelectorAll('.plot-line').length).toBeGreaterThan(1);
  });
});
