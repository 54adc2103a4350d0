import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync('src/page/tokens.css', 'utf8');

/** The colours of one block of the style sheet, by name. */
function colours(block: string): Record<string, string> {
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map((match) => [match[1]!, match[2]!]),
  );
}

const blocks = css.split('}').map((block) => block.trim());
const light = colours(blocks.find((block) => block.includes('--ink: #15'))!);
const auto = colours(blocks.find((block) => block.includes('prefers-color-scheme: dark'))!);
const chosen = colours(blocks.find((block) => block.startsWith(':root[data-theme="dark"]'))!);

/** Relative luminance and contrast ratio, WCAG 2.2. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe.each([
  ['by day', light],
  ['by night', chosen],
])('the colours %s', (_when, tones) => {
  it.each(['ink', 'ink-soft', 'copper', 'fine', 'close', 'over', 'ssb', 'cw', 'key-down'])(
    '%s can be read on the paper',
    (name) => {
      expect(contrast(tones[name]!, tones.paper!)).toBeGreaterThanOrEqual(4.5);
    },
  );
  it('the copper can be read on the wash of a field in use', () => {
    expect(contrast(tones.copper!, tones['copper-wash']!)).toBeGreaterThanOrEqual(4.5);
  });
  it('has three different tones for the services', () => {
    expect(new Set([tones.ssb, tones.cw, tones['key-down']]).size).toBe(3);
  });
});

it('is the same night whether chosen or taken from the system', () => {
  expect(auto).toEqual(chosen);
  expect(Object.keys(auto).length).toBeGreaterThan(10);
});
