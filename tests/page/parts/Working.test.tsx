import { describe, expect, it } from 'vitest';
import { quantities } from '../../../src/engine/catalogue/index.ts';
import { Working } from '../../../src/page/parts/Working.tsx';
import { plainSpaces, renderInSheet } from '../support.tsx';

function workingOf(key: string): string {
  const { container } = renderInSheet(() => <Working entry={quantities[key]!} service="cw" />);
  return plainSpaces(container.textContent);
}

describe('the working of a figure', () => {
  it('found by an expression: the expression, the same with values, what the symbols are, source', () => {
    const text = workingOf('inputVoltagePep');
    expect(text).toMatch(/W.*V/);
    expect(text).toContain('Source:');
  });

  it('found by a method: the words, the quantities it takes with their values, where it holds', () => {
    const text = workingOf('plateMean');
    expect(text).toContain('Periodic steady state of the sink');
    expect(text).toMatch(/=\s*[\d.]+\s*J\/K/);
    expect(text).toMatch(/K\/W/);
  });

  it('writes what is counted without decimals', () => {
    const text = workingOf('loadPerDevice');
    expect(text).toMatch(/=\s*2\s*Number of devices/);
  });

  it('takes entries of the design in the words and units of their fields, and leaves out what does not apply', () => {
    const text = workingOf('ratingHeat');
    expect(text).toMatch(/\d+ mm, Length along the fins/);
    expect(text).toContain('Holds: ');
    expect(workingOf('wireResistance20')).not.toContain('Fins');
    expect(workingOf('fanFlow')).not.toMatch(/Free air flow|\?/);
  });
});
