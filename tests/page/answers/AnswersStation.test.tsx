import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/engine/index.ts';
import { AnswersStation } from '../../../src/page/answers/AnswersStation.tsx';
import { change, exampleOf } from '../../engine/couple/designs.ts';
import { plainSpaces, renderInSheet } from '../support.tsx';

/** The answers are computed in pieces beside the test. */
const arriving = { timeout: 60_000 };
const slow = { timeout: 90_000 };
const design = exampleOf('data-final-100w');

function show(shownDesign = design) {
  const shown = renderInSheet(() => <AnswersStation number={10} />, shownDesign);
  fireEvent.click(screen.getByLabelText('the nominal figures'));
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
      const rowsNow = () => [...list.querySelectorAll(':scope > li')];
      const reach = rowsNow().map((row) => row.querySelector('.remedy-reach')!.textContent);
      expect(reach.filter((words) => words !== 'enough')).toHaveLength(4);
      const before = rowsNow().length;
      fireEvent.click(screen.getByText(/^show all \d+$/));
      const rows = rowsNow();
      expect(rows.length).toBeGreaterThan(8);
      expect(rows[before]!.contains(document.activeElement)).toBe(true);
      expect(screen.queryByText(/^show all/)).toBeNull();
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
    fireEvent.click(screen.getByText(/^show all/));
    const fan = [...list.querySelectorAll('li')].find((row) => row.textContent?.includes('Blow along'))!;
    const before = state.store.design();
    fireEvent.click(within(fan).getByRole('button'));
    expect(state.store.design().sink.fan).toBe('along');
    expect(state.store.typed('sink.fanFlow')).toBeUndefined();
    state.store.undo();
    expect(state.store.design()).toEqual(before);
    expect(state.store.typed('sink.fanFlow')?.text).toBe('10 L/s');
  });

  it('is kept as a short list for paper until the design is edited', slow, async () => {
    const { state } = show();
    expect(document.querySelector('.fit-list')).toBeNull();
    fireEvent.click(screen.getByText('Find what to change'));
    await screen.findByRole('list', { name: 'Changes for Key-down' }, arriving);
    const paper = () => document.querySelector('.fit-list');
    const text = plainSpaces(paper()?.textContent);
    expect(text).toMatch(/What would make it fit: Key-down/);
    expect(text).toMatch(/1 of \d+ changes makes Key-down fine.*Judged by the nominal figures/);
    const lines = [...(paper()?.querySelectorAll('li') ?? [])].map((line) => plainSpaces(line.textContent));
    expect(lines.length).toBeLessThanOrEqual(5);
    expect(lines[0]).toMatch(/^Transmit \d+ % of the time instead of 90 % \(a setting, [\d.]+ K cooler\)\.$/);
    state.store.edit('service.transmitShare', 0.5);
    expect(paper()).toBeNull();
  });

  it('is not offered to another design', slow, async () => {
    const { state } = show();
    fireEvent.click(screen.getByText('Find what to change'));
    await screen.findByRole('list', { name: 'Changes for Key-down' }, arriving);
    state.store.open({ id: 'two', design: exampleOf('class-a-panel-8w'), typed: {} });
    expect(screen.queryByRole('list', { name: 'Changes for Key-down' })).toBeNull();
    expect(screen.queryByText(/edited since/)).toBeNull();
    state.store.undo();
    expect(screen.getByRole('list', { name: 'Changes for Key-down' })).toBeTruthy();
  });

  it('says by how far when nothing is enough', slow, async () => {
    show(change(design, { surroundings: { ambient: 343.15 }, limits: { designJunction: 343.5 } }));
    fireEvent.change(screen.getByLabelText('So that it becomes fine'), { target: { value: 'keyDown' } });
    fireEvent.click(screen.getByText('Find what to change'));
    await screen.findByRole('list', { name: 'Changes for Key-down' }, arriving);
    expect(plainSpaces(document.querySelector('.answer-sentence')?.textContent)).toMatch(
      /Nothing here is enough for Key-down\. .* this is left: the junction is [\d.]+ K above its design limit/,
    );
    expect(plainSpaces(document.querySelector('.fit-list')?.textContent)).toMatch(/not enough: the junction/);
  });

  it('puts two together that do it above the changes that are not enough alone', slow, async () => {
    show(
      change(design, {
        amplifier: { biasInReceive: true, quiescentCurrent: 1.2 },
        service: { transmitShare: 0.3 },
      }),
    );
    fireEvent.change(screen.getByLabelText('So that it becomes fine'), { target: { value: 'keyDown' } });
    fireEvent.click(screen.getByText('Find what to change'));
    await screen.findByRole('list', { name: 'Two changes together' }, arriving);
    const lists = [...document.querySelectorAll('.remedies')];
    expect(lists.map((list) => list.getAttribute('aria-label'))).toEqual([
      'Two changes together',
      'Changes for Key-down',
    ]);
    expect(lists[0]!.querySelector('.remedy-reach')!.textContent).toBe('enough');
    expect(lists[1]!.querySelectorAll(':scope > li')).toHaveLength(4);
    expect(screen.getByText('One alone, not enough')).toBeTruthy();
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

  const second = () => fireEvent.click(screen.getByText('and also …'));
  const choose = (label: string, value: string) =>
    fireEvent.change(screen.getByLabelText(label), { target: { value } });
  const type = (label: string, value: string) =>
    fireEvent.input(screen.getByLabelText(label), { target: { value } });
  const says = (words: RegExp) =>
    waitFor(() => expect(plainSpaces(document.body.textContent)).toMatch(words), arriving);

  it('takes a second target, and says what each asks for when they contradict each other', slow, async () => {
    show(exampleOf('field-station-60w'));
    second();
    choose('and also', 'sinkMass');
    type('keeps', '300 g');
    fireEvent.click(screen.getByText('Find the value'));
    await says(
      /The targets contradict each other: 50\.0 % of “Safe duty \(key-down\)” asks for [\d.]+ mm; 300 g/,
    );
    type('keeps', '5 kg');
    fireEvent.click(screen.getByText('Find the value'));
    await says(/gives 50\.0 % for “Safe duty \(key-down\)” and [\d.]+ g for “Mass of the sink”/);
    expect(plainSpaces(document.querySelector('#answers .aside')?.textContent)).toMatch(
      /Judged by the nominal figures/,
    );
    fireEvent.click(screen.getByText('without the second'));
    expect(screen.queryByLabelText('and also')).toBeNull();
  });

  it('names what fixes the unknown already, and says when it does nothing', slow, async () => {
    const { state } = show(change(exampleOf('field-station-60w'), { sink: { fan: 'along' } }));
    choose('The unknown', 'sink.fanFlow');
    state.store.edit('sink.fan', 'none');
    fireEvent.click(screen.getByText('Find the value'));
    await says(/has no effect while “Fan” is “.*”\. Choose “.*blows along the fins.*” first/);
    choose('The unknown', 'antenna.gain');
    fireEvent.click(screen.getByText('Find the value'));
    await says(/“.*” from .* does not change “Safe duty \(key-down\)”\. It is [\d.]+ %/);
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

  it('ranks what is not known, with what to measure', slow, async () => {
    show();
    fireEvent.change(screen.getByLabelText('Ranked by'), { target: { value: 'doubt' } });
    fireEvent.click(screen.getByText('Show what matters'));
    const table = await screen.findByLabelText('What is not known, ranked', {}, arriving);
    expect(plainSpaces(table.textContent)).toMatch(/Measure supply current and output at full power\./);
    expect(plainSpaces(table.querySelector('tbody tr')?.textContent)).toMatch(/\d %.*±[\d.]+ K/);
    expect(plainSpaces(document.querySelector('.matters-words')?.textContent)).toMatch(
      /in nine of ten cases \d+ °C to \d+ °C/,
    );
    fireEvent.change(screen.getByLabelText('For'), { target: { value: 'exposureDistance' } });
    fireEvent.click(screen.getByText('Show what matters'));
    await waitFor(() => expect(document.body.textContent).toMatch(/knows no doubt of/), arriving);
  });

  it('draws the map over typed ranges, in the units that are typed', slow, async () => {
    show();
    const [up, right] = screen.getAllByLabelText<HTMLInputElement>('to');
    expect(up?.value).toMatch(/200\sW/);
    fireEvent.input(right!, { target: { value: '140 °F' } });
    fireEvent.input(up!, { target: { value: '0.15 kW' } });
    expect(plainSpaces(document.querySelector('#map-x-to-note')?.textContent)).toBe('= 60 °C');
    fireEvent.click(screen.getByText('Draw the map'));
    await waitFor(() => expect(document.querySelector('.plot-title')).not.toBeNull(), arriving);
    fireEvent.click(screen.getByText('values as table'));
    const rows = document.querySelectorAll('.plot-table tbody tr');
    expect(plainSpaces(rows[rows.length - 1]?.querySelector('th')?.textContent)).toBe('60 °C');
    expect(document.querySelectorAll('.plot-table thead th').length).toBeGreaterThan(2);
  });

  it('says so where no line lies in the range', slow, async () => {
    show();
    fireEvent.input(screen.getAllByLabelText<HTMLInputElement>('to')[1]!, { target: { value: '31' } });
    fireEvent.input(screen.getAllByLabelText<HTMLInputElement>('from')[1]!, { target: { value: '30' } });
    fireEvent.input(screen.getAllByLabelText<HTMLInputElement>('from')[0]!, { target: { value: '110' } });
    fireEvent.input(screen.getAllByLabelText<HTMLInputElement>('to')[0]!, { target: { value: '120' } });
    fireEvent.click(screen.getByText('Draw the map'));
    await waitFor(() => expect(document.body.textContent).toMatch(/No line lies in this range/), arriving);
    expect(document.querySelector('.plot-title')).toBeNull();
  });

  it('does not draw with a range that is none, and can be stopped', slow, async () => {
    show();
    const up = screen.getAllByLabelText<HTMLInputElement>('to')[0]!;
    fireEvent.input(up, { target: { value: '99 MW' } });
    expect(plainSpaces(document.querySelector('#map-y-to-note')?.textContent)).toMatch(
      /^Between .* and .* W\.$/,
    );
    expect(screen.getByText<HTMLButtonElement>('Draw the map').disabled).toBe(true);
    fireEvent.input(up, { target: { value: '300' } });
    fireEvent.click(screen.getByText('Draw the map'));
    expect(screen.getByRole('progressbar', { name: 'Draw the map' })).toBeTruthy();
    fireEvent.click(screen.getByText('stop'));
    expect(screen.getByText('Draw the map')).toBeTruthy();
    expect(document.querySelector('.plot-title')).toBeNull();
  });

  it('draws the limit line of each service, with a table of values', slow, async () => {
    show();
    fireEvent.click(screen.getByText('Draw the map'));
    await waitFor(() => expect(document.querySelector('.plot-title')).not.toBeNull(), arriving);
    expect(document.querySelector('.plot-title')!.textContent).toBe(
      'Output power (PEP) against room temperature, warmest day',
    );
    expect(document.querySelector('.plot-finding')!.textContent).toMatch(/^Limit of the junction in SSB, /);
    expect(document.querySelectorAll('.plot-line').length).toBeGreaterThan(1);
  });
});
