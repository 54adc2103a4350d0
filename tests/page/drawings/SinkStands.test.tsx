import { screen } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { SinkStands } from '../../../src/page/drawings/SinkStands.tsx';
import { plainSpaces, renderInSheet } from '../support.tsx';

const withSink = (edits: Partial<typeof startDesign.sink>) => ({
  ...startDesign,
  sink: { ...startDesign.sink, ...edits },
});

describe('how the sink stands', () => {
  it.each([
    ['upright', 'plate and fins upright'],
    ['crosswise', 'plate upright with level fins'],
    ['finsUp', 'plate level with the fins up'],
    ['finsDown', 'plate level with the fins down'],
    ['tilted', 'fins leaning from upright'],
  ] as const)('%s is drawn and said', (position, words) => {
    renderInSheet(() => <SinkStands />, withSink({ position }));
    expect(screen.getByRole('img', { name: new RegExp(words) })).toBeTruthy();
  });

  it('draws every shape in every position with numbers only', () => {
    for (const shape of ['fins', 'finsBothSides', 'pins', 'panel', 'tunnel'] as const) {
      for (const position of ['upright', 'crosswise', 'finsUp', 'finsDown', 'tilted'] as const) {
        const { container, unmount } = renderInSheet(() => <SinkStands />, withSink({ shape, position }));
        expect(container.innerHTML, `${shape} ${position}`).not.toMatch(/NaN|undefined|Infinity/);
        unmount();
      }
    }
  });

  it('lights the angle up while its field is edited', () => {
    const { container, state } = renderInSheet(() => <SinkStands />, withSink({ position: 'tilted' }));
    expect(plainSpaces(container.querySelector('.dimension')?.textContent)).toContain('30°');
    state.setFocused('sink.tilt');
    expect(container.querySelector('.dimension.lit')).toBeTruthy();
  });

  it('says that a fan blows', () => {
    renderInSheet(() => <SinkStands />, withSink({ fan: 'along' }));
    expect(screen.getByRole('img', { name: /a fan blowing along the fins/ })).toBeTruthy();
  });
});
