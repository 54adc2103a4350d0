import { fireEvent, screen, waitFor } from '@solidjs/testing-library';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { NumberField } from '../../../src/page/parts/NumberField.tsx';
import { plainSpaces, renderInSheet } from '../support.tsx';

const label = 'Width across the fins';
const input = () => screen.getByLabelText<HTMLInputElement>(label);

function type(text: string): void {
  fireEvent.input(input(), { target: { value: text } });
}

/** The words the field gives a screen reader besides its label. */
function description(): string {
  const ids = (input().getAttribute('aria-describedby') ?? '').split(' ');
  return plainSpaces(
    ids.map((id) => document.getElementById(id)?.textContent ?? `missing ${id}`).join(' | '),
  );
}

describe('a number field', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('shows the value in the unit of the field and names its help', () => {
    renderInSheet(() => <NumberField path="sink.width" />);
    expect(input().value).toBe('100');
    expect(input().inputMode).toBe('decimal');
    expect(description()).toContain('Caliper or ruler');
  });

  it('says with an entry that cannot be read what counts instead: the start of it, if that was a good value', () => {
    renderInSheet(() => <NumberField path="sink.width" />);
    for (const text of ['9', '90', '90 ', '90 k', '90 kg']) type(text);
    vi.advanceTimersByTime(1000);
    expect(description()).toContain('Until then 90 mm counts.');
  });

  it('says how a share is written where a bare ratio was typed', () => {
    const { state, container } = renderInSheet(() => <NumberField path="service.transmitShare" />);
    const field = container.querySelector('input')!;
    fireEvent.input(field, { target: { value: '0.25' } });
    expect(state.store.design().service.transmitShare).toBeCloseTo(0.0025, 12);
    expect(plainSpaces(container.textContent)).toContain('= 0.25 %; for 25 % write 25');
    fireEvent.input(field, { target: { value: '25' } });
    expect(container.textContent).not.toContain('write');
    fireEvent.input(field, { target: { value: '0.25 %' } });
    expect(container.textContent).not.toContain('write');
  });

  it('reads what is typed, keeps it as typed and echoes what was understood', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    type('100 mm + 1/4 in');
    expect(state.store.design().sink.width).toBeCloseTo(0.10635, 12);
    expect(input().value).toBe('100 mm + 1/4 in');
    expect(description()).toContain('= 106.35 mm');
    fireEvent.blur(input());
    expect(input().value).toBe('100 mm + 1/4 in');
  });

  it('echoes nothing where the text says it all', () => {
    renderInSheet(() => <NumberField path="sink.width" />);
    type('120');
    expect(description()).not.toContain('=');
  });

  it('says what is wrong only when typing rests, and keeps the last good value', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    type('12 k');
    expect(input().getAttribute('aria-invalid')).toBe('false');
    type('12 kg');
    vi.advanceTimersByTime(700);
    expect(input().getAttribute('aria-invalid')).toBe('true');
    expect(description()).toContain('kg is a mass');
    expect(state.store.design().sink.width).toBe(startDesign.sink.width);
    expect(state.store.wrong()).toEqual(['sink.width']);
    type('12 cm');
    expect(state.store.design().sink.width).toBeCloseTo(0.12, 12);
    expect(description()).not.toContain('mass');
  });

  it('says so at once when the field is left', () => {
    renderInSheet(() => <NumberField path="sink.width" />);
    type('abc');
    fireEvent.blur(input());
    expect(input().getAttribute('aria-invalid')).toBe('true');
  });

  it('keeps the length when the unit changes and shows it anew', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    type('127,0');
    fireEvent.change(screen.getByLabelText(`Unit of ${label}`), { target: { value: 'in' } });
    expect(state.store.design().sink.width).toBeCloseTo(0.127, 12);
    expect(input().value).toBe('5');
  });

  it('follows the family of units of the sheet', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    state.preferences.setSystem('inch');
    expect(input().value).toBe('3.937');
  });

  it('steps with the arrow keys, finer with shift, and stops at the ends', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    fireEvent.keyDown(input(), { key: 'ArrowUp' });
    expect(state.store.design().sink.width).toBeCloseTo(0.11, 12);
    fireEvent.keyDown(input(), { key: 'ArrowDown', shiftKey: true });
    expect(state.store.design().sink.width).toBeCloseTo(0.109, 12);
    type('1 m');
    fireEvent.keyDown(input(), { key: 'ArrowUp' });
    expect(state.store.design().sink.width).toBe(1);
  });

  it('names itself while it is edited, so that a drawing can light up', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    fireEvent.focus(input());
    expect(state.focused()).toBe('sink.width');
    fireEvent.blur(input());
    expect(state.focused()).toBeNull();
  });

  it('opens its help on the button', () => {
    renderInSheet(() => <NumberField path="sink.width" />);
    const button = screen.getByRole('button', { name: `About ${label}` });
    expect(button.getAttribute('aria-expanded')).toBe('false');
    fireEvent.click(button);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    expect(document.getElementById(button.getAttribute('aria-controls') ?? '')?.hidden).toBe(false);
  });

  it('leaves an unknown value empty and takes one away again', () => {
    const { state } = renderInSheet(() => <NumberField path="device.junctionTime" />);
    const field = screen.getByLabelText<HTMLInputElement>('Junction time constant');
    expect(field.value).toBe('');
    fireEvent.input(field, { target: { value: '30' } });
    expect(state.store.design().device.junctionTime).toBeCloseTo(0.03, 12);
    fireEvent.input(field, { target: { value: '' } });
    expect(state.store.design().device.junctionTime).toBeNull();
  });

  it('is out of sight where it has no meaning', () => {
    const { state } = renderInSheet(() => <NumberField path="sink.emissivity" />);
    expect(screen.queryByLabelText('Emissivity (own value)')).toBeNull();
    state.store.edit('sink.finish', 'own');
    expect(screen.queryByLabelText('Emissivity (own value)')).not.toBeNull();
  });
});

describe('a product typed into a number field', () => {
  it('is worked out beside the page; without a worker the field says what to do', async () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    vi.stubGlobal('Worker', undefined);
    type('2 * 60 mm');
    fireEvent.blur(input());
    await waitFor(() => expect(description()).toContain('type the result'));
    expect(state.store.design().sink.width).toBe(startDesign.sink.width);
    vi.unstubAllGlobals();
  });

  it('arrives in the design when the worker answers, unless the text has changed meanwhile', async () => {
    const { state } = renderInSheet(() => <NumberField path="sink.width" />);
    const asked: { id: number; text: string }[] = [];
    class FakeWorker {
      onmessage: ((event: { data: unknown }) => void) | null = null;
      postMessage(question: { id: number; text: string }) {
        asked.push(question);
        const value = question.text.startsWith('2') ? 0.12 : 0.18;
        const outcome = { ok: true, notes: [], value: { value, echo: '' } };
        setTimeout(() => this.onmessage?.({ data: { id: question.id, outcome } }), 5);
      }
    }
    vi.stubGlobal('Worker', FakeWorker);
    type('2 * 60 mm');
    type('3 * 60 mm');
    await waitFor(() => expect(state.store.design().sink.width).toBe(0.18));
    expect(asked.map((question) => question.text)).toContain('3 * 60 mm');
    expect(description()).toContain('= 180 mm');
    vi.unstubAllGlobals();
  });
});
