import { describe, expect, it } from 'vitest';
import { createHabits, DEFAULT_HABITS, habitsFrom } from '../../../src/state/habits/habits';
import { memoryStorage } from '../memory-storage';

describe('habits', () => {
  it('come back as they were left', async () => {
    const { storage } = memoryStorage();
    const first = await createHabits(storage);
    first.mapPedal('forward', 'ArrowRight');
    first.markSeen('touch a note');
    first.markSeen('touch a note');
    first.change({ percussionRows: 'always', strip: false, knownCharts: ['last-ferry'] });
    const { habits } = await createHabits(storage);
    expect(habits.getState()).toEqual({
      pedals: { forward: 'ArrowRight', back: null, 'play or stop': null },
      seen: ['touch a note'],
      percussionRows: 'always',
      strip: false,
      knownCharts: ['last-ferry'],
    });
  });

  it('give a key to one action only, and no key that moves the focus or leaves a panel', async () => {
    const { habits, mapPedal } = await createHabits(memoryStorage().storage);
    expect(mapPedal('forward', 'b')).toBe(true);
    expect(mapPedal('back', 'b')).toBe(true);
    expect(habits.getState().pedals).toEqual({ forward: null, back: 'b', 'play or stop': null });
    expect(mapPedal('back', 'Tab')).toBe(false);
    expect(mapPedal('back', 'Escape')).toBe(false);
    expect(habits.getState().pedals.back).toBe('b');
  });

  it('take the good fields of a damaged record, and put aside what is no record', async () => {
    const text = JSON.stringify({
      record: 'habits',
      version: 1,
      body: { pedals: { forward: 7 }, seen: ['press play', 'x'], strip: 'no', knownCharts: 'all' },
    });
    expect(habitsFrom(text)).toEqual({ ...DEFAULT_HABITS, seen: ['press play'] });
    const { kept, storage } = memoryStorage({ habits: 'not a record' });
    const { change } = await createHabits(storage);
    change({ strip: false });
    expect(kept.get('quarantine/habits')).toBe('not a record');
    expect(habitsFrom(kept.get('habits') ?? '')?.strip).toBe(false);
  });
});
