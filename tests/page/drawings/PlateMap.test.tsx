import { fireEvent, screen, waitFor } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { PlateMap } from '../../../src/page/drawings/PlateMap.tsx';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

const station = examples.find((example) => example.key === 'field-station-60w')!.design;

function show(design: Design = station) {
  return renderInSheet(() => <PlateMap />, design, { engine });
}
const part = (name: RegExp) => screen.getByRole('button', { name });
const rows = () => screen.getAllByRole('row').map((row) => plainSpaces(row.textContent));

describe('the plate map', () => {
  it('shows isotherms, and every part with its place and temperatures', async () => {
    const { container } = show();
    await waitFor(() => expect(container.querySelectorAll('.warmth').length).toBeGreaterThan(4));
    expect(screen.getByRole('img', { name: /Isotherms from .* to .*°C/ })).toBeTruthy();
    expect(rows()[1]).toMatch(/1 device.*37\.5 mm, 50\.0 mm.*W.*°C.*°C/);
  });

  it('moves a part by the arrow keys, finely with Shift, and results follow', async () => {
    const { state } = show();
    const before = state.results.solution()!.values['keyDown.junctionPeak']!;
    for (let k = 0; k < 20; k += 1) fireEvent.keyDown(part(/^Device 1/), { key: 'ArrowLeft' });
    expect(state.store.design().device.places[0]).toEqual({ x: 0.018, y: 0.05 });
    fireEvent.keyDown(part(/^Device 1/), { key: 'ArrowUp', shiftKey: true });
    expect(state.store.design().device.places[0]).toEqual({ x: 0.018, y: 0.0501 });
    expect(state.results.solution()!.values['keyDown.junctionPeak']).not.toBe(before);
    await waitFor(() => expect(screen.getByText(/^Device 1 18.0 mm from the left/)).toBeTruthy());
  });

  it('turns the devices by a quarter with R and by a button, and results follow', async () => {
    const { state } = show();
    const { contactWidth, contactLength } = station.device;
    expect(contactWidth).not.toBe(contactLength);
    const before = state.results.solution()!.values['keyDown.junctionPeak']!;
    fireEvent.keyDown(part(/^Device 1/), { key: 'r' });
    expect(state.store.design().device).toMatchObject({
      contactWidth: contactLength,
      contactLength: contactWidth,
    });
    expect(screen.getByText('The devices turned by a quarter.')).toBeTruthy();
    expect(state.results.solution()!.values['keyDown.junctionPeak']).not.toBe(before);
    fireEvent.keyDown(part(/^Device 1/), { key: 'r', ctrlKey: true });
    expect(state.store.design().device.contactWidth).toBe(contactLength);
    fireEvent.click(screen.getByRole('button', { name: 'turn the devices' }));
    expect(state.store.design().device.contactWidth).toBe(contactWidth);
    state.store.undo();
    expect(state.store.design().device.contactWidth).toBe(contactLength);
  });

  it('takes a row of steps back in one, and spreads the parts evenly again', () => {
    const { state } = show();
    for (let k = 0; k < 5; k += 1) fireEvent.keyDown(part(/^Device 2/), { key: 'ArrowRight' });
    state.store.commit();
    state.store.undo();
    expect(state.store.design().device.places).toEqual([]);
    fireEvent.keyDown(part(/^Device 2/), { key: 'ArrowRight' });
    fireEvent.click(screen.getByRole('button', { name: 'spread evenly' }));
    expect(state.store.design().device.places).toEqual([]);
  });

  it('keeps parts on the plate, and names parts that overlap', () => {
    const places = [
      { x: 0.01, y: 0.05 },
      { x: 0.02, y: 0.05 },
    ];
    const { state } = show({ ...station, device: { ...station.device, places } });
    expect(screen.getByText('Device 1 and device 2 overlap on the plate.')).toBeTruthy();
    for (let k = 0; k < 30; k += 1) fireEvent.keyDown(part(/^Device 1/), { key: 'ArrowLeft' });
    expect(state.store.design().device.places[0]!.x).toBeCloseTo(station.device.contactWidth / 2, 9);
  });

  it('suggests places that cool the hottest junction and says by how much', async () => {
    const places = [
      { x: 0.02, y: 0.02 },
      { x: 0.04, y: 0.02 },
    ];
    const { state } = show({ ...station, device: { ...station.device, places } });
    const before = state.results.solution()!.values['keyDown.junctionPeak']!;
    fireEvent.click(screen.getByRole('button', { name: 'suggest places' }));
    await waitFor(() => expect(screen.getByText(/The hottest junction is .* cooler there/)).toBeTruthy());
    expect(state.results.solution()!.values['keyDown.junctionPeak']!).toBeLessThan(before - 0.5);
  });
});
