import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { startDesign } from '../../../shared/design/start.ts';
import { dutyWords, serviceWords } from '../../../src/engine/couple/serviceWords.ts';
import { solve } from '../../../src/engine/index.ts';
import { anyDesign } from './designArbitrary.ts';
import { change } from './designs.ts';
import { watched } from './watched.ts';

const plain = (text: string) => text.replace(/[\u202f\u00a0]/g, ' ');

describe('what the services are called and what they mean', () => {
  it('states the three of a new sheet', () => {
    const words = serviceWords(startDesign);
    expect([words.ssb.name, words.cw.name, words.keyDown.name]).toEqual(['SSB', 'CW', 'key-down']);
    expect(plain(words.ssb.definition)).toContain('average of 20 % of PEP');
    expect(plain(words.cw.definition)).toContain('key down 44 % of it');
    expect(words.keyDown.definition).toContain('unbroken carrier at PEP');
    expect(plain(dutyWords(startDesign))).toContain('a cycle of 5 min');
  });

  it.each([
    ['FT8', 'FT8', /12\.64 s of every 15 s/],
    ['am', 'AM', /quarter of PEP/],
    ['phaseShiftIdle', 'phase-shift idle', /like two tones/],
    ['rtty', 'RTTY', /shifts its frequency/],
  ] as const)('a mode under key-down gives the curve its name: %s', (keyDownMode, name, definition) => {
    const design = change(startDesign, { service: { keyDownMode } });
    const { words, verdicts } = solve(design);
    expect(words.keyDown.name).toBe(name);
    expect(plain(words.keyDown.definition)).toMatch(definition);
    expect(verdicts.find((one) => one.key === 'keyDown')?.name.toLowerCase()).toBe(name.toLowerCase());
  });

  it('holds the marks of text and slots for the drawing', () => {
    const { cw, keyDown, ssb } = serviceWords(change(startDesign, { service: { keyDownMode: 'FT4' } }));
    expect(cw.marks).toHaveLength(28);
    expect(keyDown.marks?.map((mark) => mark.on)).toEqual([true, false]);
    expect(ssb.marks).toBeNull();
  });

  it('hang on the service, the class and how the bias is keyed alone, by which they are kept', () => {
    const read = new Set<string>();
    fc.assert(
      fc.property(anyDesign, (design) => {
        const amplifier = watched(design.amplifier, 'amplifier.', read);
        serviceWords(watched({ ...design, amplifier }, '', read));
      }),
    );
    const allowed = ['amplifier', 'amplifier.biasKeyed', 'amplifier.class', 'service'];
    expect([...read].sort()).toEqual(allowed);
  });
});
