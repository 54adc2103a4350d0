import { fireEvent, screen } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import type { PlotData } from '../../../../src/page/parts/plot/data.ts';
import { Plot } from '../../../../src/page/parts/plot/Plot.tsx';
import { renderInSheet } from '../../support.tsx';

const data: PlotData = {
  x: [0, 50, 100],
  xLabel: 'duty',
  yLabel: 'junction',
  xRange: [0, 100],
  yRange: [0, 200],
  xTicks: [0, 50, 100],
  yTicks: [0, 100, 200],
  writeX: (value) => `${value} %`,
  writeY: (value) => `${value} °C`,
  tickX: String,
  tickY: String,
  series: [
    { key: 'ssb', label: 'SSB', values: [30, 80, 110], tone: '--ssb', dash: [9, 4] },
    { key: 'cw', label: 'CW', values: [30, 90, null], tone: '--cw', dash: [3, 3] },
  ],
  limits: [{ label: 'design limit', value: 125, tone: '--close' }],
  bands: [{ from: 125, to: 150, tone: '--close' }],
  marks: [{ x: 40, label: 'planned', tone: '--ink' }],
};

function show() {
  return renderInSheet(() => (
    <Plot
      title="Temperature against duty"
      finding="SSB at any duty."
      cursorLabel="Duty to read at"
      data={data}
      start={1}
    />
  ));
}

describe('a plot', () => {
  it('says its finding in words and reads at the cursor', () => {
    show();
    expect(screen.getByText('SSB at any duty.')).toBeTruthy();
    const cursor = screen.getByLabelText('Duty to read at');
    expect(cursor.getAttribute('aria-valuetext')).toBe('at 50 %: SSB 80 °C, CW 90 °C');
    fireEvent.input(cursor, { target: { value: '2' } });
    expect(screen.getByText('at 100 %: SSB 110 °C')).toBeTruthy();
  });

  it('gives its values as a table on demand', () => {
    show();
    expect(screen.queryByRole('table')).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'values as table' }));
    const cells = [...screen.getByRole('table').querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent),
    );
    expect(cells).toEqual([
      ['0 %', '30 °C', '30 °C'],
      ['50 %', '80 °C', '90 °C'],
      ['100 %', '110 °C', '–'],
    ]);
    fireEvent.click(screen.getByRole('button', { name: 'hide the table' }));
    expect(screen.queryByRole('table')).toBeNull();
  });

  it('is drawn as lines with their own dash and name where there is no canvas', () => {
    const { container } = show();
    const lines = [...container.querySelectorAll('.plot-line')];
    expect(lines.map((line) => line.getAttribute('stroke-dasharray'))).toEqual(['9 4', '3 3']);
    expect(lines[0]!.getAttribute('d')).toMatch(/^M58\.0 .*L.*L624\.0/);
    const names = [...container.querySelectorAll('.plot-name')].map((name) => name.textContent);
    expect(names).toEqual(expect.arrayContaining(['SSB', 'CW', 'design limit', 'planned']));
  });
});
