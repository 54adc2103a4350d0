import { screen } from '@solidjs/testing-library';
import { describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { PowerPath } from '../../../src/page/drawings/PowerPath.tsx';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

const { design } = examples[0]!;
const steps = engine.solve(design).powerPath.pep;
const number = (element: Element, name: string) => Number(element.getAttribute(name));

describe('the power path', () => {
  it('is as wide at each station as what flows on, to one scale', () => {
    const { container } = renderInSheet(() => <PowerPath />, design);
    const bodies = [...container.querySelectorAll('rect.stream-body')];
    expect(bodies).toHaveLength(steps.length);
    const onward = steps.map((step, index) => steps[index + 1]?.powerIn ?? step.powerOut);
    const perWatt = bodies.map((body, index) => number(body, 'height') / onward[index]!);
    for (const scale of perWatt) expect(scale).toBeCloseTo(perWatt[0]!, 9);
  });

  it('leads from each station to its place, and says what comes in and what leaves as heat', () => {
    renderInSheet(() => <PowerPath />, design);
    const links = screen.getAllByRole('link');
    expect(links.map((link) => link.getAttribute('href'))).toEqual(
      expect.arrayContaining(['#source', '#converter', '#amplifier', '#people']),
    );
    const final = links.find((link) => link.textContent?.startsWith('final'));
    expect(plainSpaces(final?.textContent)).toBe('final 124 W 56.3 W heat ');
  });

  it('adds up: what reaches the antenna, and all the heat', () => {
    const { container } = renderInSheet(() => <PowerPath />, design);
    const heat = steps.reduce((sum, step) => sum + step.heat, 0);
    const text = plainSpaces(container.querySelector('.power-path-sum')?.textContent);
    expect(text).toBe(`60.0 W of 146 W reach the antenna, 41 %; ${heat.toPrecision(3)} W become heat.`);
  });

  it('runs down on a narrow screen, with the same watts and the same links', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    const { container } = renderInSheet(() => <PowerPath />, design);
    vi.unstubAllGlobals();
    expect(container.querySelectorAll('.falling li')).toHaveLength(steps.length);
    expect(screen.getAllByRole('link')).toHaveLength(steps.length);
    expect(container.querySelector('.branch-boards')).not.toBeNull();
  });
});
