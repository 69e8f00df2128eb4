import { describe, expect, it } from 'vitest';
import { createWakeLock } from '../../src/device/wake-lock';

/** A page that can be hidden, and a lock that the browser lets go with it. */
function bench(refuses = false) {
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  const locks: EventTarget[] = [];
  let released = 0;
  const request = async () => {
    if (refuses) throw new Error('not allowed');
    const lock = Object.assign(new EventTarget(), {
      release: async () => {
        released += 1;
        lock.dispatchEvent(new Event('release'));
      },
    });
    locks.push(lock);
    return lock;
  };
  const wakeLock = createWakeLock(page as unknown as Document, { request } as unknown as WakeLock);
  return { page, locks, wakeLock, released: () => released };
}
const turn = () => new Promise((resolve) => setTimeout(resolve));

describe('The wake lock', () => {
  it('is held while it is wanted, and let go after', async () => {
    const { locks, wakeLock, released } = bench();
    wakeLock.want(true);
    await turn();
    wakeLock.want(false);
    await turn();
    expect([locks.length, released()]).toEqual([1, 1]);
  });

  it('is asked for again when the page comes back', async () => {
    const { page, locks, wakeLock } = bench();
    wakeLock.want(true);
    await turn();
    locks[0]?.dispatchEvent(new Event('release'));
    page.dispatchEvent(new Event('visibilitychange'));
    await turn();
    expect(locks).toHaveLength(2);
  });

  it('takes a refusal quietly, and a browser without it', async () => {
    const { wakeLock } = bench(true);
    wakeLock.want(true);
    await turn();
    createWakeLock(new EventTarget() as unknown as Document, undefined).want(true);
    await turn();
  });
});
