import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createNotices } from '../../../src/page/state/notices.ts';
import { keepOffline, keptOffline } from '../../../src/page/state/offline.ts';

/** What the page sees of the browser's side, with the turns a test gives it. */
class Side extends EventTarget {
  controller: object | null;
  readonly registration = Object.assign(new EventTarget(), {
    active: null as object | null,
    waiting: null as { postMessage: (message: unknown) => void } | null,
    installing: null as EventTarget | null,
  });
  register = vi.fn(async () => this.registration);
  constructor(controller: object | null) {
    super();
    this.controller = controller;
  }
  /** A newer edition has been fetched. */
  async fetched(): Promise<ReturnType<typeof vi.fn>> {
    const installing = new EventTarget();
    this.registration.installing = installing;
    this.registration.dispatchEvent(new Event('updatefound'));
    const postMessage = vi.fn();
    this.registration.waiting = { postMessage };
    installing.dispatchEvent(new Event('statechange'));
    return postMessage;
  }
}

const reload = vi.fn();

beforeEach(() => {
  reload.mockClear();
  vi.spyOn(location, 'reload').mockImplementation(reload);
});

afterEach(() => {
  vi.restoreAllMocks();
});

async function begin(side: Side | undefined) {
  const notices = createNotices();
  const keepNow = vi.fn();
  await keepOffline({ notices, designs: { keepNow } }, side as unknown as ServiceWorkerContainer);
  const press = () => notices.list()[0]!.actions![0]!.run();
  return { notices, keepNow, press };
}

describe('keeping the sheet for times without a network', () => {
  it('asks for its script beside the page', async () => {
    const side = new Side(null);
    side.registration.active = {};
    await begin(side);
    expect(String(side.register.mock.calls.flat()[0])).toMatch(/\/offline\.js$/);
    expect(keptOffline()).toBe(true);
  });

  it('says nothing at the first visit', async () => {
    const side = new Side(null);
    const { notices } = await begin(side);
    await side.fetched();
    side.dispatchEvent(new Event('controllerchange'));
    expect(notices.list()).toEqual([]);
    expect(reload).not.toHaveBeenCalled();
  });

  it('offers a newer edition, and writes what was typed before it takes over', async () => {
    const side = new Side({});
    const { notices, keepNow, press } = await begin(side);
    const postMessage = await side.fetched();
    expect(notices.list()[0]).toMatchObject({ news: true, title: expect.stringContaining('newer version') });
    expect(postMessage).not.toHaveBeenCalled();
    press();
    expect(keepNow).toHaveBeenCalledTimes(1);
    expect(postMessage).toHaveBeenCalledWith('take over');
    expect(reload).not.toHaveBeenCalled();
    side.dispatchEvent(new Event('controllerchange'));
    expect(reload).toHaveBeenCalledTimes(1);
  });

  it('does not reload a tab that did not ask, but offers it', async () => {
    const side = new Side({});
    const { notices, keepNow, press } = await begin(side);
    side.dispatchEvent(new Event('controllerchange'));
    expect(reload).not.toHaveBeenCalled();
    expect(notices.list()).toHaveLength(1);
    press();
    expect(keepNow).toHaveBeenCalled();
    expect(reload).toHaveBeenCalledTimes(1);
  });

  it('is no matter where the browser cannot or refuses', async () => {
    const side = new Side(null);
    side.register = vi.fn(() => Promise.reject(new Error('refused')));
    expect((await begin(side)).notices.list()).toEqual([]);
    expect((await begin(undefined)).notices.list()).toEqual([]);
  });
});
