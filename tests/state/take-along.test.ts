import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { runJob } from '../../src/exchange/pack/job';
import { madeSounds } from '../../src/exchange/wav/pcm';
import { toggled } from '../../src/state/take-along/choices';
import type { OpenFile, TakeAlongPorts } from '../../src/state/take-along/ports';
import { createTakeAlong } from '../../src/state/take-along/take-along';
import { chartText, deskBench } from './desk-fixture';

/** A disk in memory. `file` is there only once it was closed. */
function disk(refuseAfter = Number.POSITIVE_INFINITY) {
  const state = { open: 0, file: null as Uint8Array | null, name: '', aborted: 0 };
  let written: Uint8Array[] = [];
  const openFile = async (name: string): Promise<OpenFile> => {
    state.open += 1;
    written = [];
    return {
      write: async (bytes) => {
        if (written.length >= refuseAfter) throw Object.assign(new Error('quota'), { name: 'QuotaExceededError' });
        written.push(bytes);
      },
      close: async () => {
        state.file = new Uint8Array(Buffer.concat(written));
        state.name = name;
      },
      abort: async () => {
        state.aborted += 1;
      },
    };
  };
  return { state, openFile };
}

async function bench(more: Partial<TakeAlongPorts> = {}) {
  const { desk, settle } = deskBench();
  await desk.restore();
  desk.run({ kind: 'type', text: chartText('Low Tide') });
  await settle();
  const device = disk();
  const takeAlong = createTakeAlong(desk.desk, {
    make: async function* (job, pages, onProgress, signal) {
      for await (const piece of runJob(job, pages, onProgress)) {
        signal.throwIfAborted();
        yield piece as Uint8Array<ArrayBuffer>;
      }
    },
    draw: async () => [{ width: 100, height: 100, marks: [] }],
    openFile: device.openFile,
    sounds: async () => madeSounds(),
    fonts: async () => [],
    now: () => Date.UTC(2026, 10, 25),
    ...more,
  });
  return { desk, takeAlong, disk: device.state, work: () => takeAlong.store.getState().work };
}

describe('Take-along', () => {
  it.each([
    ['sheet', /\.pdf$/, '%PDF'],
    ['midi', /\.mid$/, 'MThd'],
    ['musicxml', /\.musicxml$/, '<?xm'],
    ['mxl', /\.mxl$/, 'PK\u0003\u0004'],
    ['wav', /_half-\d+_without-piano\.wav$/, 'RIFF'],
    ['pack', /_pack\.zip$/, 'PK\u0003\u0004'],
  ] as const)('saves the %s and says so', async (kind, name, first) => {
    const { takeAlong, disk: saved, work } = await bench();
    takeAlong.choose({ kinds: ['sheet', 'midi', 'musicxml'] });
    await takeAlong.save(kind);
    expect(Buffer.from(saved.file ?? []).toString('latin1', 0, 4)).toBe(first);
    expect(saved.name).toMatch(name);
    expect(work()).toEqual({ kind: 'done', what: kind, name: saved.name, bytes: saved.file?.length });
  });

  it('cancelled half-way leaves nothing and says so; another file can be made after', async () => {
    const { takeAlong, disk: saved, work } = await bench();
    takeAlong.choose({ playAlongs: ['full'] });
    const stopAt = takeAlong.store.subscribe(({ work: now }) => {
      if (now.kind === 'working' && now.share > 0.3) takeAlong.cancel();
    });
    await takeAlong.save('pack');
    stopAt();
    expect(work()).toEqual({ kind: 'cancelled', what: 'pack' });
    expect([saved.file, saved.aborted]).toEqual([null, 1]);
    await takeAlong.save('midi');
    expect(work().kind).toBe('done');
  });

  it('tells of a disk that refuses, with its reason, and leaves nothing', async () => {
    const { openFile, state } = disk(1);
    const { takeAlong, work } = await bench({ openFile });
    await takeAlong.save('wav');
    expect(work()).toEqual({ kind: 'disk refused', what: 'wav', reason: 'the disk is full' });
    expect([state.file, state.aborted]).toEqual([null, 1]);
  });

  it('tells of recordings that could not be had, and makes no file of other sounds', async () => {
    const { takeAlong, disk: saved, work } = await bench({ sounds: () => Promise.reject(new Error('clave.mp3 could not be fetched')) });
    await takeAlong.save('wav');
    expect(work()).toEqual({ kind: 'no sounds', what: 'wav', reason: 'clave.mp3 could not be fetched' });
    expect([saved.file, saved.aborted]).toEqual([null, 1]);
  });

  it('does nothing when the person closes the question, and only one thing at a time', async () => {
    const closed = await bench({ openFile: async () => null });
    await closed.takeAlong.save('wav');
    expect(closed.work()).toEqual({ kind: 'idle' });
    const two = await bench();
    await Promise.all([two.takeAlong.save('musicxml'), two.takeAlong.save('midi')]);
    expect(two.disk.open).toBe(1);
  });

  it('offers the twelve keys, each once, and foretells the pack within a tenth', async () => {
    const { takeAlong, disk: saved } = await bench();
    const keys = takeAlong.keys().map(({ key }) => key.tonic);
    expect(new Set(keys).size).toBe(12);
    takeAlong.choose({ keys: [0, 3], kinds: ['wav', 'midi'], playAlongs: ['full'] });
    const estimate = takeAlong.estimate();
    await takeAlong.save('pack');
    expect(estimate?.files).toBe(1 + 2 * (1 + 1));
    expect(Math.abs((estimate?.bytes ?? 0) / (saved.file?.length ?? 1) - 1)).toBeLessThan(0.1);
    takeAlong.choose({ keys: [] });
    expect(takeAlong.estimate()).toBeNull();
  });

  it('makes nothing without music', async () => {
    const { desk } = deskBench();
    const empty = createStore(() => ({ ...desk.desk.getState(), music: null }));
    const device = disk();
    const { takeAlong: real } = await bench();
    expect(real.keys()).toHaveLength(12);
    const takeAlong = createTakeAlong(empty, { openFile: device.openFile, now: () => 0 } as unknown as TakeAlongPorts);
    await takeAlong.save('midi');
    expect([device.state.open, takeAlong.keys()]).toEqual([0, []]);
  });

  it('keeps the order of what is offered when boxes are ticked', () => {
    expect(toggled(['a', 'b', 'c'], ['c'], 'a')).toEqual(['a', 'c']);
    expect(toggled(['a', 'b', 'c'], ['a', 'c'], 'c')).toEqual(['a']);
  });
});
