import { screen } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { NumberField } from '../../../src/page/parts/NumberField.tsx';
import { More } from '../../../src/page/parts/Station.tsx';
import { renderInSheet } from '../support.tsx';

const path = 'sink.mass';

function show() {
  const { container, state } = renderInSheet(
    () => (
      <More label="Mass" paths={[path]}>
        <NumberField path={path} />
      </More>
    ),
    startDesign,
  );
  return { state, group: container.querySelector('details')! };
}

describe('a group of further entries', () => {
  it('stays open while somebody types in it, or anywhere else', () => {
    const { state, group } = show();
    expect(group.open).toBe(false);
    group.open = true;
    state.store.edit(path, 0.6);
    expect(group.open).toBe(true);
    state.store.edit('amplifier.pep', 31);
    expect(group.open).toBe(true);
  });

  it('opens by itself for a wrong entry and is not shut when that is mended', () => {
    const { state, group } = show();
    state.store.refuse(path, { text: 'heavy', reason: 'no number', unit: 'g' });
    expect(group.open).toBe(true);
    expect(screen.getByDisplayValue('heavy')).toBeDefined();
    state.store.edit(path, 0.6);
    expect(group.open).toBe(true);
  });
});
