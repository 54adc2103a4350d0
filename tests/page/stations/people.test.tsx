import { fireEvent, screen, waitFor, within } from '@solidjs/testing-library';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { PeopleDrawing } from '../../../src/page/drawings/PeopleDrawing.tsx';
import { ExposureTable, PeopleTables } from '../../../src/page/parts/PeopleTables.tsx';
import { printJob, usualJob } from '../../../src/page/print/job.ts';
import { LabelSheet } from '../../../src/page/print/LabelSheet.tsx';
import { Cautions } from '../../../src/page/stations/Cautions.tsx';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

const first = examples[0]!.design;
const withAntenna = (edit: Partial<Design['antenna']>): Design => ({
  ...first,
  antenna: { ...first.antenna, ...edit },
});

describe('distance by band', () => {
  it('lists every band with limit, power, distance and the US rule', () => {
    renderInSheet(() => <ExposureTable />, first);
    const rows = screen.getAllByRole('row').slice(1);
    expect(rows).toHaveLength(11);
    const chosen = rows.find((row) => row.classList.contains('chosen'))!;
    const cells = [...chosen.children].map((cell) => plainSpaces(cell.textContent));
    const found = engine.solve(first).exposure.find((row) => row.chosen)!;
    expect(cells[0]).toBe('20 m (yours)');
    expect(cells).toContain('14.35 MHz');
    expect(cells).toContain(`${found.distance} m`);
    expect(cells.at(-1)).toBe('exempt from routine evaluation');
  });

  it('leaves the US rule out under other limits, and says where there is no number', () => {
    const { container } = renderInSheet(
      () => <ExposureTable />,
      withAntenna({ limitSet: 'icnirp2020', kind: 'other' }),
    );
    expect(container.textContent).not.toContain('US rule');
    expect(container.textContent).toContain('no number');
    expect(container.textContent).toContain('none');
  });
});

describe('the plan', () => {
  it('says every band to those who do not see it', () => {
    renderInSheet(() => <PeopleDrawing />, first);
    const said = plainSpaces(screen.getByRole('img').getAttribute('aria-label'));
    expect(said).toMatch(/On 20 m people stay at least [\d.]+ m away from every part of it/);
    for (const band of ['40 m', '15 m', '6 m']) expect(said).toContain(band);
  });

  it('shows people where they were said to come, or that they are beyond it', () => {
    const near = renderInSheet(
      () => <PeopleDrawing />,
      withAntenna({ nearestPerson: 0.4, exposureModeFactor: 1 }),
    );
    expect(near.container.querySelector('circle.part')).not.toBeNull();
    near.unmount();
    const far = renderInSheet(() => <PeopleDrawing />, withAntenna({ nearestPerson: 50 }));
    expect(plainSpaces(far.container.textContent)).toContain('people at 50 m: beyond this drawing');
  });

  it('gives the reason instead for an antenna without a formula', () => {
    const { container } = renderInSheet(() => <PeopleDrawing />, withAntenna({ kind: 'other' }));
    expect(container.querySelector('svg')).toBeNull();
    expect(container.textContent).toContain('no formula holds');
  });
});

describe('burns and contact currents', () => {
  it('mark the surface chosen and say how long each takes', () => {
    const design = { ...first, limits: { ...first.limits, surface: 'plastic' as const } };
    renderInSheet(() => <PeopleTables />, design);
    const burns = within(screen.getByRole('region', { name: 'Burn thresholds' }));
    const chosen = burns.getAllByRole('row').find((row) => row.classList.contains('chosen'))!;
    expect(plainSpaces(chosen.textContent)).toMatch(/^plastic85 °C71 °C60 °C48 °C43 °C/);
    const currents = within(screen.getByRole('region', { name: 'RF current through a hand' }));
    expect(currents.getAllByRole('row').length).toBe(1 + engine.solve(design).contacts.length);
  });
});

describe('cautions and labels', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it('each caution shows its figure beside its severity', () => {
    const { container } = renderInSheet(() => <Cautions number={9} />, first);
    const shown = [...container.querySelectorAll('.caution-figure')].map((each) => each.textContent);
    expect(shown).toEqual(engine.solve(first).cautions.map((each) => each.figure));
  });

  it('prints the labels alone, by a button the keyboard reaches', async () => {
    const printed: string[] = [];
    vi.stubGlobal('print', () => printed.push(printJob()));
    const { container } = renderInSheet(() => <LabelSheet />, first);
    const headings = [...container.querySelectorAll('.label-heading')].map((each) => each.textContent);
    expect(headings).toEqual(engine.solve(first).labels.map((each) => each.heading));
    const button = await waitFor(() => screen.getByRole('button', { name: 'Print labels' }));
    button.focus();
    expect(document.activeElement).toBe(button);
    fireEvent.click(button);
    await waitFor(() => expect(printed).toEqual(['labels']));
    usualJob();
  });
});
