import { screen } from '@solidjs/testing-library';
import { describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
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
    const onward = steps.map((step, index) => {
      const next = steps[index + 1];
      return next ? next.powerIn - next.added : step.powerOut;
    });
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

  const straight: Design = {
    ...structuredClone(design),
    converter: { ...design.converter, kind: 'none' },
  };

  it.each([...examples.map((one) => [one.key, one.design] as const), ['no converter', straight] as const])(
    'adds up for a reader: source and drive are antenna, heat and boards (%s)',
    (_, shown) => {
      const { container } = renderInSheet(() => <PowerPath />, shown);
      const text = plainSpaces(container.querySelector('.power-path-sum')?.textContent);
      const watts = (words: RegExp) => {
        const [, figure = '0', milli] = text.match(words) ?? [];
        return Number(figure) * (milli ? 1e-3 : 1);
      };
      const antenna = watts(/^([\d.]+) (m?)W of/);
      const source = watts(/of ([\d.]+) (m?)W reach the antenna/);
      const heat = watts(/([\d.]+) (m?)W become heat/);
      const boards = watts(/([\d.]+) (m?)W feed other boards/);
      const drive = watts(/([\d.]+) (m?)W of drive counted in/);
      expect(boards).toBeCloseTo(shown.boards.transmitPower, 2);
      // Each figure is rounded to three digits.
      expect(Math.abs(source + drive - antenna - heat - boards)).toBeLessThan(0.01 * source);
      if (shown === design) {
        expect(text).toBe(
          '60.0 W of 146 W reach the antenna, 41 %; 80.6 W become heat, 7.00 W feed other boards, 1.20 W of drive counted in.',
        );
      }
    },
  );

  it('runs down on a narrow screen, with the same watts and the same links', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    const { container } = renderInSheet(() => <PowerPath />, design);
    vi.unstubAllGlobals();
    expect(container.querySelectorAll('.falling li')).toHaveLength(steps.length);
    expect(screen.getAllByRole('link')).toHaveLength(steps.length);
    expect(container.querySelector('.branch-boards')).not.toBeNull();
  });
});
