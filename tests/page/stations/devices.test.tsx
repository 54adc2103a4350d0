import { fireEvent, screen } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { DeviceStation } from '../../../src/page/stations/HeatStations.tsx';
import { plainSpaces, renderInSheet } from '../support.tsx';

const offer = () => screen.queryByRole('button', { name: /^usual face of this package/ });

describe('contact face of a package', () => {
  it('is offered once the package is changed, put in by one action, and undo takes it back', () => {
    const { state } = renderInSheet(() => <DeviceStation number={4} />);
    const { store } = state;
    expect(offer()).toBeNull();
    store.edit('device.package', 'largeTab');
    expect(plainSpaces(offer()?.textContent)).toBe('usual face of this package: 18 × 14 mm');
    expect(plainSpaces(offer()?.parentElement?.textContent)).toContain('Contact face 15 × 10 mm');
    const before = store.design();
    fireEvent.click(offer()!);
    expect(store.design().device).toMatchObject({ contactLength: 0.018, contactWidth: 0.014 });
    expect(offer()).toBeNull();
    store.undo();
    expect(store.design()).toEqual(before);
    expect(offer()).not.toBeNull();
  });

  it('is not offered for a package without a usual one', () => {
    const { state } = renderInSheet(() => <DeviceStation number={4} />);
    state.store.edit('device.package', 'other');
    expect(offer()).toBeNull();
  });
});
