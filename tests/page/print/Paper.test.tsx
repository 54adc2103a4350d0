import { fireEvent, waitFor } from '@solidjs/testing-library';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { disclaimer } from '../../../shared/standing.ts';
import { sources } from '../../../src/engine/catalogue/sources.ts';
import { BuildSheet, dateOf } from '../../../src/page/print/BuildSheet.tsx';
import { printAs, usualJob } from '../../../src/page/print/job.ts';
import { PaperPlace } from '../../../src/page/print/PaperPlace.tsx';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

afterEach(() => {
  vi.unstubAllGlobals();
  usualJob();
});

describe.each(examples)('the build sheet of $key', ({ design }) => {
  const solution = engine.solve(design);
  const shown = () => plainSpaces(renderInSheet(() => <BuildSheet />, design).container.textContent);
  const flat = (text: string) => plainSpaces(text).replace(/\s+/g, ' ');

  it('has name, date, verdicts, every caution with its figure and deed, what was assumed, sources', () => {
    const text = flat(shown());
    expect(text).toContain(design.name);
    expect(text).toContain(dateOf(new Date()));
    for (const { name, headline, sentence } of solution.verdicts) {
      expect(text).toContain(name);
      expect(text).toContain(flat(headline));
      expect(text).toContain(flat(sentence));
    }
    for (const { title, figure, sentence, action, source } of solution.cautions) {
      expect(text).toContain(flat(`${title}: ${figure}.`));
      expect(text).toContain(flat(sentence));
      expect(text).toContain(flat(action));
      expect(text).toContain(flat(sources[source]!.title));
    }
    for (const note of solution.notes) expect(text).toContain(flat(note.sentence));
    expect(text).toContain(flat(disclaimer));
  });

  it('draws power path, sink and ladder', () => {
    const { container } = renderInSheet(() => <BuildSheet />, design);
    expect(container.querySelectorAll('.stream, .drawing').length).toBe(3);
    expect(container.querySelectorAll('.dimension').length).toBeGreaterThan(3);
  });

  it('lists what was given in the builder’s units and leaves out what says nothing', () => {
    const { container, state } = renderInSheet(() => <BuildSheet />, design);
    const given = () => plainSpaces(container.querySelector('.build-given')?.textContent);
    expect(given()).toContain(`Width across the fins ${Math.round(design.sink.width * 1000)} mm`);
    expect(given()).not.toMatch(/ –;| no;|null|undefined|NaN/);
    state.preferences.setSystem('inch');
    expect(given()).toMatch(/Width across the fins [\d.]+ in/);
  });
});

describe('the browser’s own print', () => {
  const paper = () => document.querySelector('.print-paper');
  const ready = () =>
    waitFor(() => {
      fireEvent(window, new Event('beforeprint'));
      expect(paper()).not.toBeNull();
    });
  const render = () => renderInSheet(() => <PaperPlace />, examples[0]!.design);

  it('makes the build sheet when asked and takes it away after that', async () => {
    vi.stubGlobal('requestIdleCallback', (work: () => void) => work());
    render();
    await ready();
    expect(document.documentElement.getAttribute('data-print')).toBe('build');
    expect(paper()!.querySelector('.build-sheet')).not.toBeNull();
    expect(paper()!.querySelector('.label')).toBeNull();
    fireEvent(window, new Event('afterprint'));
    expect(paper()).toBeNull();
    expect(document.documentElement.hasAttribute('data-print')).toBe(false);
  });

  it.each([
    ['labels', false, true],
    ['both', true, true],
  ] as const)('of %s', async (job, build, labels) => {
    vi.stubGlobal('requestIdleCallback', () => {});
    render();
    let seen = {};
    vi.stubGlobal('print', () => {
      fireEvent(window, new Event('beforeprint'));
      seen = {
        build: paper()?.querySelector('.build-sheet') !== null,
        labels: paper()?.querySelector('.label') !== null,
      };
      fireEvent(window, new Event('afterprint'));
    });
    await printAs(job);
    expect(seen).toEqual({ build, labels });
    expect(paper()).toBeNull();
  });
});
