import { describe, expect, it } from 'vitest';
import { checkDesign } from '../../shared/design/file.ts';
import { designVersion } from '../../shared/design/schema.ts';
import { startDesign } from '../../shared/design/start.ts';
import { migrate, type Steps } from '../../shared/design/versions.ts';

type Raw = Record<string, unknown>;

/** Two invented versions before today's: the first called the sink "cooler", the second had no fuse place. */
const today = 3;
const ways: Steps = {
  1: ({ cooler, ...rest }) => ({ ...rest, sink: cooler }),
  2: (raw) => ({ ...raw, wiring: { ...(raw.wiring as Raw), fuseDistance: 0.1 } }),
};

function firstVersion(): Raw {
  const { sink, ...rest } = structuredClone(startDesign) as unknown as Raw;
  const { fuseDistance: _later, ...wiring } = rest.wiring as Raw;
  return { ...rest, wiring, cooler: sink, version: 1 };
}

describe('a design of an older version', () => {
  it('is raised step by step until it is one of today, every value kept', () => {
    const old = firstVersion();
    const raised = migrate(old, today, ways);
    if (!raised.ok) throw new Error(raised.message);
    expect(raised.raw.version).toBe(today);
    expect(old.version).toBe(1);
    const found = checkDesign({ ...raised.raw, version: designVersion });
    expect(found.ok && found.design).toEqual({
      ...startDesign,
      wiring: { ...startDesign.wiring, fuseDistance: 0.1 },
    });
  });

  it('is raised from any version between', () => {
    const { cooler, ...rest } = firstVersion();
    const raised = migrate({ ...rest, sink: cooler, version: 2 }, today, ways);
    expect(raised.ok && raised.raw).toMatchObject({ version: 3, wiring: { fuseDistance: 0.1 } });
  });

  it('of today is left as it is', () => {
    const raw = { ...firstVersion(), version: today };
    expect(migrate(raw, today, ways)).toEqual({ ok: true, raw });
  });

  it.each([
    ['newer than today', 4, /newer/],
    ['without a way up', 0, /unknown/],
    ['half', 1.5, /whole number/],
    ['text', '1', /whole number/],
    ['none', undefined, /missing/],
  ])('that is %s is refused in words', (_what, version, words) => {
    const raised = migrate({ version }, today, ways);
    expect(raised.ok ? '' : raised.message).toMatch(words);
  });

  it('has a way up from every version there ever was', () => {
    for (let version = 1; version < designVersion; version += 1) {
      expect(migrate({ version }).ok, `version ${version}`).toBe(true);
    }
    expect(migrate({ version: designVersion }).ok).toBe(true);
  });
});
