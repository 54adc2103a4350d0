import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { services } from '../../../shared/solution.ts';
import { ratingCurve, solve, sweep, warmUp } from '../../../src/engine/index.ts';
import { dutyPlot, ratingPlot, warmUpPlot } from '../../../src/page/stations/plots.ts';

const each = <T>(find: (service: (typeof services)[number]) => T) =>
  Object.fromEntries(services.map((service) => [service, find(service)])) as Record<
    (typeof services)[number],
    T
  >;

describe.each(examples.map((example) => [example.key, example.design] as const))(
  'the plots of %s',
  (_key, design) => {
    const solution = solve(design);
    const duty = dutyPlot(
      design,
      solution,
      each((service) => sweep(design, service)),
    );

    it('draw the junction temperature inside the axes, in degrees Celsius', () => {
      expect(duty).toBeDefined();
      const [low, high] = duty!.data.yRange;
      for (const limit of duty!.data.limits) expect(limit.value > low && limit.value < high).toBe(true);
      for (const series of duty!.data.series) expect(series.values.length).toBe(duty!.data.x.length);
      expect(
        duty!.data.series.some((series) => series.values.some((value) => value !== null && value > 20)),
      ).toBe(true);
    });

    it('start the cursor at the planned duty', () => {
      expect(duty!.data.x[duty!.start]).toBeCloseTo(design.service.transmitShare * 100, 0);
    });

    it('tell the same safe duty as the solution, never rounded up', () => {
      for (const service of services) {
        const result = solution.services[service];
        if (!result.ok || result.value.safeDuty >= 1 || result.value.safeDuty <= 0.01) continue;
        expect(duty!.finding.replaceAll('\u202f', ' ')).toContain(
          `up to ${Math.floor(result.value.safeDuty * 100 + 1e-6)} %`,
        );
      }
    });

    it('draw warming up and rating where there is something to draw', () => {
      const warm = warmUpPlot(
        solution,
        each((service) => warmUp(design, service)),
        'keyDown',
      );
      expect(warm?.data.series.map((series) => series.key)).toEqual(['junction', 'plate']);
      expect(warm?.data.marks[0]?.label).toBe('off');
      const [touchable] = warm?.data.marks.filter(({ label }) => label.startsWith('touchable after')) ?? [];
      expect(warm?.finding).toMatch(
        touchable ? /Switched off, the plate is below 48/ : /plate stays (below|above) 48/,
      );
      const rating = ratingCurve(design);
      expect(rating.ok && ratingPlot(rating.value)?.finding).toContain('no single rating');
    });
  },
);
