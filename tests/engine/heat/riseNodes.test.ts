import { describe, expect, it } from 'vitest';
import { isNeeded, margin, tabulateNodes } from '../../../src/engine/heat/riseNodes.ts';
import { expectClose } from '../closeTo.ts';

describe('nodes of a heat law', () => {
  it('hold heat over rise, with exact slopes for a laminar law', () => {
    const nodes = tabulateNodes((rise) => 3 * rise ** 1.25, 20);
    expect(nodes.values).toHaveLength(20 + 2 * margin);
    for (let i = margin; i < 20; i++) {
      expectClose(nodes.slopes[i]!, nodes.values[i + 1]! - nodes.values[i]!, 1e-9);
    }
  });

  it('are needed where their law is the smallest', () => {
    const low = tabulateNodes((rise) => rise, 20);
    const high = tabulateNodes((rise) => 2 * rise, 20);
    const crossing = tabulateNodes((rise) => 0.1 * rise ** 1.5, 20);
    expect(isNeeded(low, [low, high])).toBe(true);
    expect(isNeeded(high, [low, high])).toBe(false);
    expect(isNeeded(low, [low, crossing]) && isNeeded(crossing, [low, crossing])).toBe(true);
  });
});
