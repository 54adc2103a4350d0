import { fireEvent, render, waitFor } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { supplyCurves } from '../../../src/engine/index.ts';
import { fieldId } from '../../../src/page/parts/fieldId.ts';
import { PathList } from '../../../src/page/parts/PathList.tsx';
import { ConverterPlots, FusePlot } from '../../../src/page/parts/SupplyPlots.tsx';
import { WireTable } from '../../../src/page/parts/WireTable.tsx';
import { SheetProvider } from '../../../src/page/state/sheet.ts';
import { ConverterStation } from '../../../src/page/stations/ConverterStation.tsx';
import { SourceStation } from '../../../src/page/stations/SourceStation.tsx';
import {
  currentWaves,
  efficiencyPlot,
  rippleWave,
  timeCurrentPlot,
} from '../../../src/page/stations/supplyPlots.ts';
import { engine, plainSpaces, renderInSheet, sheetAround } from '../support.tsx';

const designed: Design = {
  ...startDesign,
  amplifier: { ...startDesign.amplifier, pep: 40, ratedPep: 40, ratedRail: 28 },
  converter: { ...startDesign.converter, kind: 'designed', heatTo: 'ownSink' },
};

const button = (container: Element, name: string | RegExp) => {
  const found = [...container.querySelectorAll('button')].find((one) =>
    typeof name === 'string'
      ? (one.getAttribute('aria-label') ?? one.textContent) === name
      : name.test(one.getAttribute('aria-label') ?? one.textContent ?? ''),
  );
  if (!found) throw new Error(`no button ${name}`);
  return found;
};

describe('parts of the path', () => {
  it('can be added, moved and taken away, one step back each', () => {
    const { container, state } = renderInSheet(() => <PathList />);
    const kinds = () => state.store.design().wiring.path.map((piece) => piece.kind);
    expect(kinds()).toEqual(['fuse', 'connector', 'joint']);
    fireEvent.change(container.querySelector('select[aria-label="Kind of part to add"]')!, {
      target: { value: 'diode' },
    });
    fireEvent.click(button(container, 'add this part'));
    expect(kinds()).toEqual(['fuse', 'connector', 'joint', 'diode']);
    fireEvent.click(button(container, 'up: move part 4 nearer to the source'));
    expect(kinds()).toEqual(['fuse', 'connector', 'diode', 'joint']);
    fireEvent.click(button(container, 'take away part 2'));
    expect(kinds()).toEqual(['fuse', 'diode', 'joint']);
    state.store.undo();
    expect(kinds()).toEqual(['fuse', 'connector', 'diode', 'joint']);
  });

  it('asks of each part only what it has', () => {
    const { container, state } = renderInSheet(() => <PathList />);
    const asked = (index: number, name: string) =>
      container.querySelector(`#${fieldId(`wiring.path.${index}.${name}`)}`) !== null;
    expect([asked(1, 'connector'), asked(1, 'aged'), asked(1, 'drop'), asked(1, 'length')]).toEqual([
      true,
      true,
      false,
      false,
    ]);
    state.store.edit('wiring.path.1.kind', 'wire');
    expect([asked(1, 'connector'), asked(1, 'length'), asked(1, 'size')]).toEqual([false, true, true]);
  });
});

describe('source', () => {
  it('fills in typical figures of the chosen kind', () => {
    const { container, state } = renderInSheet(() => <SourceStation number={1} />);
    state.store.edit('source.kind', 'lithiumIronPhosphate');
    fireEvent.click(button(container, /typical figures/));
    expect(state.store.design().source).toMatchObject({ openVoltage: 13.2, chargingVoltage: 14.6 });
    state.store.edit('source.kind', 'other');
    expect(() => button(container, /typical figures/)).toThrow();
  });

  it('marks the thinnest wire that passes and says what the thinner ones fail', () => {
    const { container } = renderInSheet(() => <WireTable />);
    const details = container.querySelector('details')!;
    details.open = true;
    fireEvent(details, new Event('toggle'));
    const judged = [...container.querySelectorAll('tbody tr td:last-child')].map((cell) => cell.textContent);
    const first = judged.indexOf('the thinnest that passes everything');
    expect(first).toBeGreaterThanOrEqual(0);
    for (const words of judged.slice(0, first)) expect(words).not.toBe('passes');
  });
});

describe('converter from parts', () => {
  it('shows a suggestion where a part is left open, and takes it away when one is entered', () => {
    const { container, state } = renderInSheet(() => <ConverterStation number={2} />, designed);
    const field = () =>
      container.querySelector<HTMLInputElement>(`#${fieldId('converter.parts.inductance')}`)!;
    expect(field().placeholder).toMatch(/^suggested \d/);
    state.store.edit('converter.parts.inductance', 1e-5);
    expect(field().value).toBe('10');
    state.store.edit('converter.kind', 'module');
    expect(field()).toBeNull();
  });

  it('plots what it does, lists its losses, and speaks of ride-through and noise', async () => {
    const { container } = render(() => (
      <SheetProvider value={sheetAround(designed, { engine })}>
        <FusePlot />
        <ConverterPlots />
      </SheetProvider>
    ));
    const titles = () => [...container.querySelectorAll('.plot-title')].map((one) => one.textContent);
    await waitFor(() =>
      expect(titles()).toEqual([
        'Fuse, load and wire',
        'Converter efficiency against load',
        'Losses at PEP by part',
        'Currents over two periods at PEP',
        'Rail ripple over two periods at PEP',
      ]),
    );
    expect(container.querySelectorAll('.loss-bars tbody tr').length).toBeGreaterThan(5);
    const text = plainSpaces(container.textContent);
    expect(text).toMatch(/carry the rail through a syllable of SSB with 5 % of dip, .* would be needed/);
    expect(text).toMatch(/Converter noise on 20 m/);
  });
});

describe('plots of the supply', () => {
  const curves = supplyCurves(designed);

  it('time over current: logarithmic both ways, every load a mark', () => {
    const told = timeCurrentPlot(curves.timeCurrent!)!;
    const { data } = told;
    expect(data.series.map((one) => one.label)).toEqual(['fuse holds', 'fuse is open', 'wire bears']);
    expect(plainSpaces(data.writeX(1))).toBe('10.0 A');
    expect(plainSpaces(data.tickY(-2))).toBe('10 ms');
    expect(data.marks).toHaveLength(curves.timeCurrent!.loads.length);
    for (const mark of data.marks) {
      expect(mark.x).toBeGreaterThanOrEqual(data.xRange[0]);
      expect(mark.x).toBeLessThanOrEqual(data.xRange[1]);
    }
    expect(told.start).toBeLessThan(data.x.length);
  });

  it('efficiency for the lowest, the actual and the highest input', () => {
    const told = efficiencyPlot(curves.converter!)!;
    expect(told.data.series).toHaveLength(3);
    expect(told.data.yRange[1]).toBe(100);
  });

  it('waveforms with every value inside the axes', () => {
    const waves = curves.converter!.waveforms!;
    for (const told of [currentWaves(waves), rippleWave(waves)]) {
      const [low, high] = told.data.yRange;
      for (const series of told.data.series) {
        expect(series.values).toHaveLength(told.data.x.length);
        for (const value of series.values) {
          expect(value!).toBeGreaterThanOrEqual(low - 1e-9);
          expect(value!).toBeLessThanOrEqual(high + 1e-9);
        }
      }
    }
  });
});
